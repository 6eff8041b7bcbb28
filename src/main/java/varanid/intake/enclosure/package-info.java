/**
 * Surroundings: warmth, moisture and light where the animal is kept, beside what is published and what keepers do.
 *
 * <p><b>Words.</b> A <em>quantity</em> is one thing measured at one place. A <em>range</em> is what a source says about
 * it for a species and life stage; a <em>published</em> range and <em>common practice</em> are shown side by side where
 * they disagree. A <em>sign</em> is the code of something about the surroundings that deserves advice. A <em>fact</em> is
 * how the enclosure is set up.
 *
 * <p><b>Always.</b> Out of range never adds points of illness: it becomes advice, and the answers it may explain are
 * named as less certain. A value is out of range only where it is so by every source that applies. Figures of one species
 * are never used for another: without figures there is no judgement. One humidity is meaningless without the temperature
 * beside it. A probable mistake of unit is asked about, never converted.
 *
 * <p>Ranges, signs, advice and cautions are data in {@code shared/reference/husbandry.yaml}, with source and date.
 *
 * <p>May use: {@code measures}. Pure within it: all but {@code HusbandryReference}.
 */
@NullMarked
package varanid.intake.enclosure;

import org.jspecify.annotations.NullMarked;
