@NullMarked
package varanid.intake.page.room;

import org.jspecify.annotations.NullMarked;
