/**
 * Reminders: dated tasks as entries of a person's own calendar (RFC 5545), fetched at an address that is a secret.
 *
 * <p><b>Words.</b> A <em>task</em> is one thing to do on certain days for one case; a <em>reminder</em> is that task as
 * calendars know it, with how often it was changed; the <em>feed</em> is the file that calendar programs fetch; a
 * <em>link</em> is one person's address of it.
 *
 * <p><b>Always.</b> The UID of a task comes from its case, kind and ordinal and from nothing else, so it stays when dates
 * and words change; every change raises SEQUENCE; what is no longer to be done is cancelled, not left out, for {@link
 * varanid.intake.reminder.Feeds#TOLD_AFTER_ITS_END}; lines end in CR LF and are at most 75 octets long, no character
 * being split. Of an address only the SHA-256 is stored; unknown, malformed and revoked ones, and those of a person who
 * is not active, get one and the same answer. A fetch brings what calendars were told in line with the plans, under the
 * organisation's lock, and writes only what changed (and, once a day, that the link is in use).
 *
 * <p>Days are dates without a time zone: a calendar shows them as that day wherever it is read.
 *
 * <p><b>Others</b> implement {@link varanid.intake.reminder.TaskSource}; the plans stand there, and here only what
 * calendars were told of them.
 *
 * <p>May use: {@code account} (who is active), {@code animal} (which there are), {@code platform}. Pure within it: {@code
 * CalendarTask}, {@code PlannedTask}, {@code Reminder}, {@code CalendarFeed}, {@code ContentLines}, {@code Allowance}.
 */
@NullMarked
package varanid.intake.reminder;

import org.jspecify.annotations.NullMarked;
