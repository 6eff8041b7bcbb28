/**
 * Surroundings: warmth, moisture and light where the animal is kept, beside what is published and what keepers do.
 *
 * <p><b>Words.</b> A <em>quantity</em> is one thing measured at one place. A <em>range</em> is what a source says about
 * it for a species and life stage; a <em>published</em> range and <em>common practice</em> are shown side by side where
 * they disagree. A <em>sign</em> is the code of something about the surroundings that deserves advice. A <em>fact</em> is
 * how the enclosure is set up, a <em>size</em> a length of it. A <em>reading</em> is what somebody measured and saw on one
 * round; it <em>stands</em> until another supersedes it. A reading is <em>stale</em> when it is older than such a reading
 * speaks: it is shown and marked, and explains no answer.
 *
 * <p><b>Always.</b> Out of range never adds points of illness: it becomes advice, and the answers it may explain are
 * named as less certain. A value is out of range only where it is so by every source that applies. Figures of one species
 * are never used for another: without figures there is no judgement. One humidity is meaningless without the temperature
 * beside it. A probable mistake of unit is asked about, never converted. Readings are kept as they were typed and never
 * changed. Surroundings are worked out whenever they are asked for, from the latest standing reading of each quantity, fact
 * and size; fresh ones are judged beside fresh ones alone.
 *
 * <p>Ranges, signs, advice and cautions are data in {@code shared/reference/husbandry.yaml}, with source and date.
 *
 * <p>May use: {@code animal}, {@code measures}, {@code platform}. Pure within it: {@code EnclosureReading}, {@code
 * Husbandry*} but {@code HusbandryReference}, {@code LatestReadings}, {@code MoistAir}, {@code Quantity}, {@code
 * Surroundings}, {@code SurroundingsFinder}, {@code UvZones}.
 */
@NullMarked
package varanid.intake.enclosure;

import org.jspecify.annotations.NullMarked;
