package varanid.intake.reminder;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;

/**
 * Writes reminders as one iCalendar file: {@code text/calendar}, UTF-8.
 *
 * <p>RFC 5545, with NAME and REFRESH-INTERVAL of RFC 7986. No METHOD: a feed is fetched, not sent. No RRULE: each date is
 * an entry of its own, for dates move one by one.
 */
public final class CalendarFeed {

    /** As which component tasks are written. */
    public enum As {
        /** All-day events: every calendar shows them. Rings in the morning of the first good day. */
        EVENTS("events"),
        /** To-dos: can be ticked off, but many calendars show none of a feed. Rings in the morning of the last good day. */
        TODOS("todos");

        private final String code;

        As(String code) {
            this.code = code;
        }

        /** What the interface and the database call it. */
        String code() {
            return code;
        }
    }

    /** When it rings, after midnight of its day. */
    private static final String MORNING = "PT8H";

    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("uuuuMMdd");
    private static final DateTimeFormatter UTC =
            DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);

    private final As as;
    private final ContentLines lines = new ContentLines();

    private CalendarFeed(As as) {
        this.as = as;
    }

    /**
     * The file.
     *
     * @param name what the person's calendar program calls it
     */
    public static byte[] write(String name, List<Reminder> reminders, As as) {
        CalendarFeed feed = new CalendarFeed(as);
        feed.calendar(name, reminders);
        return feed.lines.toString().getBytes(StandardCharsets.UTF_8);
    }

    private void calendar(String name, List<Reminder> reminders) {
        lines.raw("BEGIN", "VCALENDAR");
        lines.raw("VERSION", "2.0");
        lines.raw("PRODID", "-//Varanid Intake//Reminders//EN");
        lines.raw("CALSCALE", "GREGORIAN");
        lines.text("NAME", name);
        // What calendar programs older than RFC 7986 read instead of NAME.
        lines.text("X-WR-CALNAME", name);
        lines.raw("REFRESH-INTERVAL;VALUE=DURATION", "PT6H");
        for (Reminder reminder : reminders) {
            component(reminder);
        }
        lines.raw("END", "VCALENDAR");
    }

    private void component(Reminder reminder) {
        CalendarTask task = reminder.task();
        String component = as == As.EVENTS ? "VEVENT" : "VTODO";
        lines.raw("BEGIN", component);
        lines.text("UID", task.uid());
        lines.raw("DTSTAMP", utc(reminder.changedAt()));
        lines.raw("LAST-MODIFIED", utc(reminder.changedAt()));
        lines.raw("SEQUENCE", Integer.toString(reminder.sequence()));
        lines.text("SUMMARY", task.summary());
        if (!task.description().isEmpty()) {
            lines.text("DESCRIPTION", task.description());
        }
        lines.text("CATEGORIES", task.kind());
        lines.raw("PRIORITY", Integer.toString(task.priority()));
        if (as == As.EVENTS) {
            lines.raw("STATUS", reminder.state() == Reminder.State.CANCELLED ? "CANCELLED" : "CONFIRMED");
            lines.raw("DTSTART;VALUE=DATE", date(task.due()));
            // The end of days is the day after them.
            lines.raw("DTEND;VALUE=DATE", date(task.latest().plusDays(1)));
            lines.raw("TRANSP", "TRANSPARENT");
        } else {
            todo(reminder);
        }
        if (reminder.state() == Reminder.State.PLANNED) {
            alarm(task);
        }
        lines.raw("END", component);
    }

    private void todo(Reminder reminder) {
        CalendarTask task = reminder.task();
        switch (reminder.state()) {
            case PLANNED -> lines.raw("STATUS", "NEEDS-ACTION");
            case CANCELLED -> lines.raw("STATUS", "CANCELLED");
            case DONE -> {
                lines.raw("STATUS", "COMPLETED");
                // When it was told, which is soon after: records have days, and this wants a moment.
                lines.raw("COMPLETED", utc(reminder.changedAt()));
            }
        }
        // The start must come before DUE, so a single day has none.
        if (task.due().isBefore(task.latest())) {
            lines.raw("DTSTART;VALUE=DATE", date(task.due()));
        }
        lines.raw("DUE;VALUE=DATE", date(task.latest()));
    }

    private void alarm(CalendarTask task) {
        lines.raw("BEGIN", "VALARM");
        lines.raw("ACTION", "DISPLAY");
        // RELATED is always written: without it, it would mean the start, which a to-do may not have.
        lines.raw("TRIGGER;RELATED=" + (as == As.EVENTS ? "START" : "END"), MORNING);
        lines.text("DESCRIPTION", task.summary());
        lines.raw("END", "VALARM");
    }

    private static String date(LocalDate date) {
        return DATE.format(date);
    }

    private static String utc(Instant instant) {
        return UTC.format(instant.truncatedTo(ChronoUnit.SECONDS));
    }
}
