/**
 * What was noticed about an animal from day to day, in seconds: whether it ate, drank and passed anything, where it was,
 * how it bore people, what was cleaned, whether mites were looked for.
 *
 * <p><b>Words.</b> An <em>entry</em> is what one person noticed or did at one time. <em>Demeanour</em> is how the animal
 * bears people, from calm to frantic; <em>dull</em> is not on that scale. <em>Known to be none</em> is a day on which
 * somebody said no and nobody said yes; a day without a word is unknown.
 *
 * <p><b>Always.</b> Everything in an entry is optional, and something is in it. What was not said stays unknown. Entries
 * are added and read, never changed; a superseded one counts for nothing and stays readable. Nothing here adds points or
 * urgency: demeanour steers housing, and what looks like illness asks for a look.
 *
 * <p>Words, advice and limits are data in {@code shared/reference/demeanour.yaml}, each with its source.
 *
 * <p>May use: {@code animal}, {@code assessment} (whether the last look found a sign) and {@code platform}. Pure within
 * it: {@code DemeanourTrend}, {@code SinceLast}, {@code DemeanourRules}, the entry and its words.
 */
@NullMarked
package varanid.intake.diary;

import org.jspecify.annotations.NullMarked;
