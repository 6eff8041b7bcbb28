@NullMarked
package varanid.intake.cagecard;

import org.jspecify.annotations.NullMarked;
