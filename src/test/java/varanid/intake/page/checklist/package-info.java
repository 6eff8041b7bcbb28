@NullMarked
package varanid.intake.page.checklist;

import org.jspecify.annotations.NullMarked;
