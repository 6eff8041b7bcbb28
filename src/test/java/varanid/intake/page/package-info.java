@NullMarked
package varanid.intake.page;

import org.jspecify.annotations.NullMarked;
