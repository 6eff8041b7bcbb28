/**
 * Quarantine: how long newcomers are kept apart, what sets the time back, what is to be done on which day, and what
 * speaks for and against ending it.
 *
 * <p><b>Words.</b> A <em>space</em>, or <em>room</em>, is one air and one set of tools; it has one <em>clock</em> for everybody in it. A
 * <em>restart</em> begins its days again, a <em>pause</em> keeps days from counting until a vet has spoken, a <em>hold</em>
 * waits for the end of a treatment. The <em>floor</em> is the least number of days the policy allows; only a vet's
 * recorded decision goes below it. A <em>task</em> is one thing to do on certain days. A <em>condition</em> of release is
 * met, unmet or unknown.
 *
 * <p><b>Always.</b> Days are local dates of the organisation; the day the clock starts is day 0, and the earliest release
 * is the day by which the needed days have passed. A clock is read from its events, never stored; an event that was a mistake is withdrawn by another and counts for
 * nothing: the same events give
 * the same date, whatever order those of one day were written in (of two decisions of a vet on one day the one written
 * later stands). One more restart never makes release earlier, and no answer that
 * is not confirmed makes it earlier or answers anything. Nothing here ends a quarantine and nothing says that an
 * animal is well.
 *
 * <p>Minima, causes, schedules and hygiene are data: {@code shared/reference/quarantine-policy.yaml}.
 *
 * <p>What is seen at an animal, found in its samples, and answered by a vet is brought to the clock of its room by listeners, within the
 * transaction that records it. Every other feature is asked for what it knows; none of them knows this one.
 *
 * <p>May use: {@code account} for what people are called, {@code animal}, {@code assessment}, {@code diary}, {@code reminder}, {@code sample}, {@code vet}, {@code weight},
 * {@code platform}. Pure within it: {@code Clock*} but its rows and views, {@code Quarantine*} but its controllers, rows
 * and views, {@code Release*} the same, {@code LookOccurrences}, {@code NextLook}, {@code TaskProgress}, {@code VetVisits}, {@code Stay}.
 *
 * <p>For others: {@link varanid.intake.quarantine.FollowUps} says how an animal's quarantine stands and what is to be
 * done; {@link varanid.intake.quarantine.RoundsOrder} the order of the rounds; {@link
 * varanid.intake.quarantine.QuarantineReplies} what the API replies of rooms, moves and release, and {@link
 * varanid.intake.quarantine.QuarantineRecords} keeps what it keeps of them.
 */
@NullMarked
package varanid.intake.quarantine;

import org.jspecify.annotations.NullMarked;
