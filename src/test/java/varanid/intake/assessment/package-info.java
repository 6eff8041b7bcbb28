/** Tests of scores and assessments over HTTP, and of what the database refuses. */
@NullMarked
package varanid.intake.assessment;

import org.jspecify.annotations.NullMarked;
