/**
 * The two pages at the core: the look, where the questions of the checklist are answered, and the decision, which says
 * what that came to.
 *
 * <p>The look is one form that works without a script. What it sends becomes the same JSON that a program sends and is
 * read by the same service; {@code look.js} asks one question at a time and shows the result while it is made. What is
 * asked, and every word about a finding, comes from the checklist.
 *
 * <p><b>Always.</b> Nothing is answered beforehand, not even with the answer of the last look; only where a look is
 * corrected its own answers stand in the form. Whoever could not see says so as easily as no.
 *
 * <p>May use: {@code animal}, {@code assessment}, {@code checklist}, {@code scoring}, {@code vet}, {@code visit},
 * {@code platform}.
 */
@NullMarked
package varanid.intake.page.look;

import org.jspecify.annotations.NullMarked;
