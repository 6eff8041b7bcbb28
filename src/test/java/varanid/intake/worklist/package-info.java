/** Tests of the work list. */
@NullMarked
package varanid.intake.worklist;

import org.jspecify.annotations.NullMarked;
