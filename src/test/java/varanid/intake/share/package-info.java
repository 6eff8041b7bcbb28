@NullMarked
package varanid.intake.share;

import org.jspecify.annotations.NullMarked;
