@NullMarked
package varanid.intake.page.worklist;

import org.jspecify.annotations.NullMarked;
