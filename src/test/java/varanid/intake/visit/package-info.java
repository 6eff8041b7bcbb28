@NullMarked
package varanid.intake.visit;

import org.jspecify.annotations.NullMarked;
