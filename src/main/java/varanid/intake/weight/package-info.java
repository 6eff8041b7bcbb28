/**
 * Weight over time: what changed between weighings, how surely, and whether a threshold is passed.
 *
 * <p><b>Words.</b> A <em>weighing</em> is one reading of one scale. A <em>reference</em> is an earlier weighing that the
 * latest one is compared with. A reading <em>may be heavy</em> when the animal had eaten within 72 hours before or was
 * wet. A <em>pair</em> is the same animal on two scales on one day; it carries a comparison over a change of scale. A
 * threshold is <em>past</em> only when the whole interval is past it; else it is <em>not past</em> or <em>cannot be
 * told</em>, with what would help.
 *
 * <p><b>Always.</b> An interval of a change holds every change that the two displays allow. A reading that may be heavy
 * leaves its side of the interval open: a loss measured against a fed animal is never asserted, a loss measured with a
 * fed animal still stands. Readings of scales that no pair links are never compared. Nothing here adds points: the trend
 * answers the checklist's own measured finding.
 *
 * <p>Thresholds are data in {@code shared/reference/weight-thresholds.yaml}, each with its source.
 *
 * <p>Weighings are kept as they were given and in grams, and never changed: a correction supersedes one, or a weight of
 * the registration by its place there. The weights of the registration are weighings too, of an animal of which nobody
 * knows when it had last eaten. {@code WeightTrends} and {@code Weighings} are what other features may ask.
 *
 * <p>May use: {@code animal}, {@code condition}, {@code measures}, {@code platform}. Pure within it: what makes a
 * {@code WeightTrend} of {@code Weighing}s.
 */
@NullMarked
package varanid.intake.weight;

import org.jspecify.annotations.NullMarked;
