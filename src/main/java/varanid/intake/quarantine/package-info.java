/**
 * Quarantine: how long newcomers are kept apart, what sets the time back, what is to be done on which day, and what
 * speaks for and against ending it.
 *
 * <p><b>Words.</b> A <em>space</em> is one air and one set of tools; it has one <em>clock</em> for everybody in it. A
 * <em>restart</em> begins its days again, a <em>pause</em> keeps days from counting until a vet has spoken, a <em>hold</em>
 * waits for the end of a treatment. The <em>floor</em> is the least number of days the policy allows; only a vet's
 * recorded decision goes below it. A <em>task</em> is one thing to do on certain days. A <em>condition</em> of release is
 * met, unmet or unknown.
 *
 * <p><b>Always.</b> Days are local dates of the organisation; the day the clock starts is day 0, and the earliest release
 * is the day by which the needed days have passed. A clock is read from its events, never stored: the same events give
 * the same date, whatever order those of one day were written in (of two decisions of a vet on one day the one written
 * later stands). One more restart never makes release earlier. Nothing here ends a quarantine and nothing says that an
 * animal is well.
 *
 * <p>Minima, causes, schedules and hygiene are data: {@code shared/reference/quarantine-policy.yaml}.
 *
 * <p>Pure, but for the reader of that file.
 */
@NullMarked
package varanid.intake.quarantine;

import org.jspecify.annotations.NullMarked;
