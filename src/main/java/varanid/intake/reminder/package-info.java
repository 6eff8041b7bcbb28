/**
 * Reminders: dated tasks as entries of a person's own calendar (RFC 5545).
 *
 * <p>Words: a <em>task</em> is one thing to do on certain days for one case; a <em>reminder</em> is that task as calendars
 * know it, with how often it was changed; the <em>feed</em> is the file that calendars fetch.
 *
 * <p>What always holds: the UID of a task comes from its case, kind and ordinal and from nothing else, so it stays when
 * dates and words change; every change raises SEQUENCE; what is no longer to be done is cancelled, not left out; lines end
 * in CR LF and are at most 75 octets long, no character being split.
 *
 * <p>Days are dates without a time zone: a calendar shows them as that day wherever it is read. Uses the JDK alone.
 */
@NullMarked
package varanid.intake.reminder;

import org.jspecify.annotations.NullMarked;
