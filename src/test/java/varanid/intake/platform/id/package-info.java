@NullMarked
package varanid.intake.platform.id;

import org.jspecify.annotations.NullMarked;
