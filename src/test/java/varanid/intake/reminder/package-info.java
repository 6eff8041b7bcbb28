@NullMarked
package varanid.intake.reminder;

import org.jspecify.annotations.NullMarked;
