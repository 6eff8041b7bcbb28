@NullMarked
package varanid.intake.weight;

import org.jspecify.annotations.NullMarked;
