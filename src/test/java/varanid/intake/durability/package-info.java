/** Tests that what was acknowledged survives the death of the service. */
@NullMarked
package varanid.intake.durability;

import org.jspecify.annotations.NullMarked;
