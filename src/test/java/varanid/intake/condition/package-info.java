@NullMarked
package varanid.intake.condition;

import org.jspecify.annotations.NullMarked;
