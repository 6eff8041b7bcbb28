@NullMarked
package varanid.intake.platform.time;

import org.jspecify.annotations.NullMarked;
