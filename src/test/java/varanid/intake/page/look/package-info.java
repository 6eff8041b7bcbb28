@NullMarked
package varanid.intake.page.look;

import org.jspecify.annotations.NullMarked;
