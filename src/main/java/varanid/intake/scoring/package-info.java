/**
 * The arithmetic of a weighted checklist: from answers to how urgent, how apart, and why.
 *
 * <p>Words: a <em>finding</em> is one thing looked for, a <em>level</em> what was seen, a <em>floor</em> the least
 * outcome a level allows, a <em>family</em> findings with one cause of which the heaviest counts, a <em>look</em> one
 * person's answers under given conditions, a <em>sign</em> a finding seen at another than its reassuring level.
 * Outcomes and isolation are ordered by the checklist, never by this package:
 * it knows nothing of lizards, vets or urgency codes, and scores any chart that the format can express.
 *
 * <p>What always holds: a worse answer never makes an outcome milder; an unanswered finding stands for everything it
 * could be; the bounds are exact, and each comes with a completion that scores to it; the same checklist and look give
 * the same result.
 *
 * <p>Uses the JDK alone.
 */
@NullMarked
package varanid.intake.scoring;

import org.jspecify.annotations.NullMarked;
