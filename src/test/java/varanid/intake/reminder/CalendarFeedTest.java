package varanid.intake.reminder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.ICalComponent;
import biweekly.component.VAlarm;
import biweekly.component.VEvent;
import biweekly.component.VTodo;
import biweekly.parameter.Related;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import varanid.intake.reminder.Reminder.State;

class CalendarFeedTest {

    private static final UUID CASE = UUID.fromString("01938d5e-0000-7000-8000-000000000001");
    private static final Instant AT = Instant.parse("2027-01-01T09:30:15.987Z");
    private static final LocalDate DAY = LocalDate.of(2027, 1, 8);

    private static CalendarTask task(String summary, String description) {
        return new CalendarTask(CASE, "weighing", 2, DAY, DAY.plusDays(1), summary, description, 5);
    }

    private static PlannedTask open(CalendarTask task) {
        return new PlannedTask(CASE, task, false);
    }

    private static Reminder done(Reminder reminder, Instant at) {
        return Reminder.revise(List.of(reminder), List.of(new PlannedTask(CASE, reminder.task(), true)), at)
                .get(0);
    }

    private static Reminder planned(String summary) {
        return Reminder.first(task(summary, ""), AT);
    }

    private static String write(CalendarFeed.As as, Reminder... reminders) {
        return new String(CalendarFeed.write("Quarantine", List.of(reminders), as), StandardCharsets.UTF_8);
    }

    private static ICalendar readByAnotherLibrary(String feed) {
        ICalendar calendar = Biweekly.parse(feed).first();
        assertThat(calendar.validate(ICalVersion.V2_0).getWarnings()).isEmpty();
        return calendar;
    }

    /** RFC 5545, octet by octet. */
    @Test
    void writesAnEventToTheOctet() {
        assertThat(write(CalendarFeed.As.EVENTS, Reminder.first(task("Weigh Ada", "Dry; before food, please"), AT)))
                .isEqualTo(String.join(
                        "\r\n",
                        "BEGIN:VCALENDAR",
                        "VERSION:2.0",
                        "PRODID:-//Varanid Intake//Reminders//EN",
                        "CALSCALE:GREGORIAN",
                        "NAME:Quarantine",
                        "X-WR-CALNAME:Quarantine",
                        "REFRESH-INTERVAL;VALUE=DURATION:PT6H",
                        "BEGIN:VEVENT",
                        "UID:01938d5e-0000-7000-8000-000000000001.weighing.2@varanid-intake",
                        "DTSTAMP:20270101T093015Z",
                        "LAST-MODIFIED:20270101T093015Z",
                        "SEQUENCE:0",
                        "SUMMARY:Weigh Ada",
                        "DESCRIPTION:Dry\\; before food\\, please",
                        "CATEGORIES:weighing",
                        "PRIORITY:5",
                        "STATUS:CONFIRMED",
                        "DTSTART;VALUE=DATE:20270108",
                        "DTEND;VALUE=DATE:20270110",
                        "TRANSP:TRANSPARENT",
                        "BEGIN:VALARM",
                        "ACTION:DISPLAY",
                        "TRIGGER;RELATED=START:PT8H",
                        "DESCRIPTION:Weigh Ada",
                        "END:VALARM",
                        "END:VEVENT",
                        "END:VCALENDAR",
                        ""));
    }

    @Test
    void writesATodoWhoseAlarmRelatesToItsEnd() {
        assertThat(write(CalendarFeed.As.TODOS, planned("Weigh Ada")))
                .contains("\r\nDTSTART;VALUE=DATE:20270108\r\nDUE;VALUE=DATE:20270109\r\n")
                .contains("\r\nTRIGGER;RELATED=END:PT8H\r\n")
                .contains("\r\nSTATUS:NEEDS-ACTION\r\n");
        CalendarTask oneDay = new CalendarTask(CASE, "weighing", 1, DAY, DAY, "Weigh", "", 0);
        assertThat(write(CalendarFeed.As.TODOS, Reminder.first(oneDay, AT)))
                .doesNotContain("DTSTART")
                .contains("\r\nDUE;VALUE=DATE:20270108\r\n");
    }

    /** biweekly 0.6.8 as the independent reader. */
    @Test
    void anotherLibraryReadsTheEventAsItWasMeant() {
        String summary = "Wäge Ada; \\ 1,5 kg? 🦎";
        VEvent event = readByAnotherLibrary(
                        write(CalendarFeed.As.EVENTS, Reminder.first(task(summary, "first line\nsecond, line"), AT)))
                .getEvents()
                .get(0);
        assertThat(event.getUid().getValue()).isEqualTo(task(summary, "").uid());
        assertThat(event.getSummary().getValue()).isEqualTo(summary);
        assertThat(event.getDescription().getValue().replace("\r\n", "\n")).isEqualTo("first line\nsecond, line");
        assertThat(event.getSequence().getValue()).isZero();
        assertThat(event.getDateStart().getValue().hasTime()).isFalse();
        assertThat(event.getDateStart().getValue().getRawComponents().toString())
                .startsWith("20270108");
        assertThat(event.getDateEnd().getValue().getRawComponents().toString()).startsWith("20270110");
        VAlarm alarm = event.getAlarms().get(0);
        assertThat(alarm.getTrigger().getRelated()).isEqualTo(Related.START);
        assertThat(alarm.getTrigger().getDuration().toMillis()).isEqualTo(8 * 3_600_000L);
        assertThat(alarm.getAction().isDisplay()).isTrue();
    }

    @Test
    void anotherLibraryReadsTheTodoAsItWasMeant() {
        VTodo todo = readByAnotherLibrary(write(CalendarFeed.As.TODOS, planned("Weigh Ada")))
                .getTodos()
                .get(0);
        assertThat(todo.getDateDue().getValue().getRawComponents().toString()).startsWith("20270109");
        assertThat(todo.getStatus().isNeedsAction()).isTrue();
        assertThat(todo.getPriority().getValue()).isEqualTo(5);
        assertThat(todo.getAlarms().get(0).getTrigger().getRelated()).isEqualTo(Related.END);
    }

    @Test
    void whatIsDoneOrCancelledRingsNoMore() {
        Reminder done = done(planned("Weigh Ada"), AT.plusSeconds(60));
        Reminder cancelled =
                Reminder.revise(List.of(planned("Weigh Ada")), List.of(), AT).get(0);
        assertThat(write(CalendarFeed.As.TODOS, done))
                .contains("STATUS:COMPLETED\r\nCOMPLETED:20270101T093115Z\r\n")
                .contains("SEQUENCE:1\r\n")
                .doesNotContain("VALARM");
        assertThat(write(CalendarFeed.As.EVENTS, cancelled))
                .contains("STATUS:CANCELLED\r\n")
                .contains("SEQUENCE:1\r\n")
                .doesNotContain("VALARM");
        for (CalendarFeed.As as : CalendarFeed.As.values()) {
            ICalendar read = readByAnotherLibrary(write(as, cancelled));
            assertThat(
                            as == CalendarFeed.As.EVENTS
                                    ? read.getEvents().get(0).getStatus().isCancelled()
                                    : read.getTodos().get(0).getStatus().isCancelled())
                    .isTrue();
        }
    }

    /** RFC 5545, 3.1: 75 octets without the line's end, then CR LF and a space; here of one octet each. */
    @Test
    void foldsAfterSeventyFiveOctets() {
        String summary = "a".repeat(67); // with "SUMMARY:" 75
        assertThat(write(CalendarFeed.As.EVENTS, planned(summary))).contains("\r\nSUMMARY:" + summary + "\r\n");
        assertThat(write(CalendarFeed.As.EVENTS, planned(summary + "b")))
                .contains("\r\nSUMMARY:" + summary + "\r\n b\r\n");
        assertThat(write(CalendarFeed.As.EVENTS, planned(summary + "b".repeat(75))))
                .contains("\r\nSUMMARY:" + summary + "\r\n " + "b".repeat(74) + "\r\n b\r\n");
    }

    /** The line would end at octet 75 within a character of two, three or four octets: it ends before it. */
    @Test
    void neverFoldsWithinACharacter() {
        for (String wide : List.of("ä", "—", "🦎")) {
            String summary = "a".repeat(66) + wide;
            assertThat(write(CalendarFeed.As.EVENTS, planned(summary)))
                    .contains("\r\nSUMMARY:" + "a".repeat(66) + "\r\n " + wide + "\r\n");
        }
    }

    @ParameterizedTest
    @EnumSource(CalendarFeed.As.class)
    void keepsAnyTextWithinTheLineAndGivesItBack(CalendarFeed.As as) {
        Random random = new Random(5545);
        String[] pieces = {"a", ";", ",", "\\", "\n", "ä", "—", "🦎", " ", "\t", ":", "\"", "BEGIN:VEVENT", "n"};
        for (int i = 0; i < 400; i++) {
            StringBuilder text = new StringBuilder("x");
            int length = random.nextInt(120);
            for (int j = 0; j < length; j++) {
                text.append(pieces[random.nextInt(pieces.length)]);
            }
            text.append("x");
            byte[] feed = CalendarFeed.write("Quarantine", List.of(planned(text.toString())), as);
            assertThat(longestLine(feed)).isLessThanOrEqualTo(75);
            ICalendar read =
                    Biweekly.parse(new String(feed, StandardCharsets.UTF_8)).first();
            ICalComponent component = as == CalendarFeed.As.EVENTS
                    ? read.getEvents().get(0)
                    : read.getTodos().get(0);
            assertThat(component
                            .getProperty(biweekly.property.Summary.class)
                            .getValue()
                            .replace("\r\n", "\n"))
                    .isEqualTo(text.toString());
        }
    }

    @Test
    void dropsControlCharactersAndHalfCharacters() {
        assertThat(ContentLines.escape("a\u0000b\u0007c\td")).isEqualTo("abc\td");
        assertThat(ContentLines.escape("a\rb\r\nc\u2028d\u0085e")).isEqualTo("a\\nb\\nc\\nd\\ne");
        assertThat(ContentLines.escape("a\uD83Eb")).isEqualTo("a\uFFFDb");
    }

    /** Nobody gets a line of their own into the file. */
    @Test
    void aSummaryCannotBecomeAProperty() {
        String feed = write(CalendarFeed.As.EVENTS, planned("x\r\nATTACH:http://example.org/\r\nEND:VEVENT"));
        assertThat(Arrays.asList(feed.split("\r\n"))).noneMatch(line -> line.startsWith("ATTACH"));
        assertThat(readByAnotherLibrary(feed).getEvents()).hasSize(1);
    }

    @Test
    void everyLineEndsInCarriageReturnAndLineFeed() {
        byte[] feed = CalendarFeed.write("Q\nR", List.of(planned("a\nb".repeat(50))), CalendarFeed.As.EVENTS);
        for (int i = 0; i < feed.length; i++) {
            assertThat(feed[i] == '\n').isEqualTo(i > 0 && feed[i - 1] == '\r');
        }
        assertThat(feed[feed.length - 1]).isEqualTo((byte) '\n');
    }

    @Test
    void anEmptyFeedIsStillACalendar() {
        String feed = write(CalendarFeed.As.EVENTS);
        assertThat(feed).startsWith("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:");
        assertThat(Biweekly.parse(feed).first().getEvents()).isEmpty();
    }

    @Test
    void theUidComesFromCaseKindAndOrdinalAlone() {
        CalendarTask other = new CalendarTask(CASE, "weighing", 2, DAY.plusDays(9), DAY.plusDays(9), "x", "y", 1);
        assertThat(other.uid()).isEqualTo(task("Weigh Ada", "").uid());
        assertThat(new CalendarTask(CASE, "weighing", 3, DAY, DAY, "", "", 0).uid())
                .isNotEqualTo(other.uid());
    }

    @Test
    void aNewPlanMovesChangesAndCancelsAndLeavesTheRestAlone() {
        CalendarTask same = new CalendarTask(CASE, "re-look", 1, DAY, DAY, "Look", "", 0);
        CalendarTask moved = new CalendarTask(CASE, "re-look", 2, DAY, DAY, "Look", "", 0);
        CalendarTask gone = new CalendarTask(CASE, "re-look", 3, DAY, DAY, "Look", "", 0);
        CalendarTask finished = new CalendarTask(CASE, "weighing", 1, DAY, DAY, "Weigh", "", 0);
        List<Reminder> before = Reminder.revise(
                List.of(), List.of(open(same), open(moved), open(gone), new PlannedTask(CASE, finished, true)), AT);
        Instant later = AT.plusSeconds(3600);
        CalendarTask movedTo = new CalendarTask(CASE, "re-look", 2, DAY.plusDays(5), DAY.plusDays(5), "Look", "", 0);
        CalendarTask fresh = new CalendarTask(CASE, "re-look", 4, DAY, DAY, "Look", "", 0);

        List<PlannedTask> told = List.of(open(same), open(movedTo), open(fresh));
        List<Reminder> after = Reminder.revise(before, told, later);
        assertThat(after)
                .containsExactlyInAnyOrder(
                        new Reminder(same, State.PLANNED, 0, AT),
                        new Reminder(movedTo, State.PLANNED, 1, later),
                        new Reminder(fresh, State.PLANNED, 0, later),
                        new Reminder(gone, State.CANCELLED, 1, later),
                        new Reminder(finished, State.DONE, 0, AT));
        assertThat(Reminder.revise(after, told, later.plusSeconds(1))).containsExactlyInAnyOrderElementsOf(after);
        assertThat(Reminder.revise(after, List.of(open(gone)), later))
                .contains(new Reminder(gone, State.PLANNED, 2, later));
    }

    /** A weighing that is struck out later was none: what it settled is to be done again. */
    @Test
    void whatIsDoneStaysAsItWasUnlessItIsToBeDoneAgain() {
        CalendarTask task = task("Weigh Ada", "");
        CalendarTask reworded = task("Weigh Ada again", "");
        Reminder done = done(Reminder.first(task, AT), AT);
        assertThat(done).isEqualTo(new Reminder(task, State.DONE, 1, AT));
        Instant later = AT.plusSeconds(60);
        assertThat(Reminder.revise(List.of(done), List.of(new PlannedTask(CASE, reworded, true)), later))
                .containsExactly(done);
        assertThat(Reminder.revise(List.of(done), List.of(open(reworded)), later))
                .containsExactly(new Reminder(reworded, State.PLANNED, 2, later));
    }

    @Test
    void refusesWhatIsNoTask() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new CalendarTask(CASE, "Weighing\r\n", 1, DAY, DAY, "", "", 0));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new CalendarTask(CASE, "weighing", 0, DAY, DAY, "", "", 0));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new CalendarTask(CASE, "weighing", 1, DAY, DAY.minusDays(1), "", "", 0));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new CalendarTask(CASE, "weighing", 1, DAY, DAY, "", "", 10));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Reminder.revise(List.of(), List.of(open(task("a", "")), open(task("b", ""))), AT));
    }

    private static int longestLine(byte[] feed) {
        int longest = 0;
        int length = 0;
        for (byte octet : feed) {
            if (octet == '\r') {
                longest = Math.max(longest, length);
                length = -1; // the line feed that follows is not counted either
            } else {
                length++;
            }
        }
        return longest;
    }
}
