/**
 * Samples of an animal: what was taken, where it went, what was found, and what the results say about infections.
 *
 * <p><b>Words.</b> A <em>sample</em> is something taken from an animal once. A <em>step</em> is what became of it: sent,
 * received, lost, unusable. A <em>result</em> is what one method found in it: negative, positive, equivocal or unusable.
 * Its <em>outcome</em> is what all its standing results come to: pending until one stands, positive where any is,
 * otherwise equivocal where any is, otherwise negative. An <em>agent</em> is what a result may name; a <em>group</em> is
 * agents that tests find alike, which figures are made of. <em>Fresh hours</em> are the whole hours between passing and
 * taking; where nobody knows, they stay unknown.
 *
 * <p><b>Always.</b> Nothing is changed or removed: a correction supersedes. Steps and results belong to the first of a
 * sample's corrections, so that they survive them. An equivocal result never counts as a negative one, an unusable one
 * counts for nothing. A result is <em>known</em> from the day it was reported: that is the day of the event, and the
 * day the sample was taken goes with it. Until that day nobody kept anything apart because of it, so everybody in the
 * same air and tools was exposed until then, and a clock set back to the day of taking would run too short.
 *
 * <p>How probable freedom is after negatives is worked out for clinicians only, always with what it assumes. Whatever is
 * assumed comes from {@code shared/reference/sampling.yaml} or from the organisation's own settings, which are kept with
 * their history. None of it says how an animal is.
 *
 * <p>Uses {@code animal}, {@code infection} and {@code platform}. Other features read {@link
 * varanid.intake.sample.Samples} and listen to {@link varanid.intake.sample.AgentFound} and {@link
 * varanid.intake.sample.ResultCorrected}.
 */
@NullMarked
package varanid.intake.sample;

import org.jspecify.annotations.NullMarked;
