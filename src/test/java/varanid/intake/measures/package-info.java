@NullMarked
package varanid.intake.measures;

import org.jspecify.annotations.NullMarked;
