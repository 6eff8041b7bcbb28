/**
 * Scores and assessments: a look at an animal goes in, a decision that explains itself comes out.
 *
 * <p>A <em>score</em> is worked out and forgotten. An <em>assessment</em> is one person's look at one registered animal
 * at one time, kept for ever as it was then: answers, conditions, checklist version and digest, and the whole result as
 * canonical text, which is served byte for byte. A correction is a new assessment that supersedes the old one; the old
 * one stays readable.
 *
 * <p>What a look leaves open and the animal's records know is filled in before it is scored, and the assessment says
 * from where: the weight trend, from its weighings. What a person answered always stands. Answers that the surroundings
 * of the day may explain are named as less certain; they keep their points.
 *
 * <p>What always holds: nothing here changes or removes an assessment, and the database refuses it too; a condition
 * excuses a finding of an animal once a day; an assessment is scored by a checklist with the digest that this
 * organisation first used under that version.
 *
 * <p>A look <em>stands</em> until it is superseded; only those are told to other features ({@link
 * varanid.intake.assessment.Looks}), read back from what was kept and by the version it was scored by. A
 * <em>comparison</em> sets two looks beside each other: what was not seen is never better.
 *
 * <p>Uses {@code scoring}, {@code checklist}, {@code animal}, {@code measures}, {@code weight},
 * {@code enclosure} and {@code platform}.
 */
@NullMarked
package varanid.intake.assessment;

import org.jspecify.annotations.NullMarked;
