@NullMarked
package varanid.intake.animal;

import org.jspecify.annotations.NullMarked;
