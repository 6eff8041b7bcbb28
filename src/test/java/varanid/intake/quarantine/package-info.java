@NullMarked
package varanid.intake.quarantine;

import org.jspecify.annotations.NullMarked;
