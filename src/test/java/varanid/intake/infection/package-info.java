@NullMarked
package varanid.intake.infection;

import org.jspecify.annotations.NullMarked;
