@NullMarked
package varanid.intake.enclosure;

import org.jspecify.annotations.NullMarked;
