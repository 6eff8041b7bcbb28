/**
 * Mass against length: whether an animal is lighter or heavier than its genus would lead one to expect.
 *
 * <p><b>Words.</b> A <em>line</em> is a published equation of mass from snout-vent length. The <em>genus-wide band</em>
 * is what all lines span, times and divided by the scatter between species. <em>Relative condition</em> (Kn) is mass over
 * the mass that a line expects. The <em>scaled mass index</em> is the mass an animal would have at a reference length.
 *
 * <p><b>Always.</b> A question, never a verdict: results are codes for which the data has a question to ask, and none
 * reaches the score. The lines run between species; half the expected mass is within what healthy species differ by. The
 * looked-at condition decides, and the animal's own earlier record says more than any line.
 *
 * <p>Lines, scatter and words are data in {@code shared/reference/body-condition.yaml}, with their sources.
 *
 * <p>Lengths are kept as they were given and in millimetres, and never changed: a correction supersedes one, or a length
 * of the registration by its place there.
 *
 * <p>May use: {@code animal}, {@code measures}, {@code platform}. Pure within it: {@code MassForLength}, {@code
 * MassLine}, {@code ScaledMassIndex}, {@code LogLogFit}, {@code Reading}.
 */
@NullMarked
package varanid.intake.condition;

import org.jspecify.annotations.NullMarked;
