/** Checks samples, and what their results say, over HTTP. */
@NullMarked
package varanid.intake.sample;

import org.jspecify.annotations.NullMarked;
