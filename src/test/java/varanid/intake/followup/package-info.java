/** Stories across features: animals followed from the day they arrive. */
@NullMarked
package varanid.intake.followup;

import org.jspecify.annotations.NullMarked;
