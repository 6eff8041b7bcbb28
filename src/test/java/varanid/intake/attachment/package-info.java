@NullMarked
package varanid.intake.attachment;

import org.jspecify.annotations.NullMarked;
