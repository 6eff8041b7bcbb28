@NullMarked
package varanid.intake.vet;

import org.jspecify.annotations.NullMarked;
