package varanid.intake.reminder;

import java.time.LocalDate;
import java.util.UUID;

/**
 * One thing to do on certain days.
 *
 * @param caseId whose: stays the same as long as the animal is followed
 * @param kind what sort, in lower-case letters, digits and hyphens
 * @param ordinal which one of its kind in the case, from 1
 * @param due the first day that is good
 * @param latest the last day that is good, not before {@code due}
 * @param summary a few words; shown on lock screens, so no private matter
 * @param description how; may be empty
 * @param priority as RFC 5545 has it: 0 undefined, 1 highest, 9 lowest
 */
public record CalendarTask(
        UUID caseId,
        String kind,
        int ordinal,
        LocalDate due,
        LocalDate latest,
        String summary,
        String description,
        int priority) {

    /** @throws IllegalArgumentException where that is no task */
    public CalendarTask {
        if (!kind.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
            throw new IllegalArgumentException(
                    "a kind is lower-case letters, digits and hyphens, not \"" + kind + "\"");
        }
        if (ordinal < 1) {
            throw new IllegalArgumentException("ordinals count from 1, not " + ordinal);
        }
        if (latest.isBefore(due)) {
            throw new IllegalArgumentException("the last day " + latest + " is before the first, " + due);
        }
        if (due.getYear() < 0 || latest.getYear() > 9999) {
            throw new IllegalArgumentException("a calendar has years of four digits");
        }
        if (priority < 0 || priority > 9) {
            throw new IllegalArgumentException("a priority is 0 to 9, not " + priority);
        }
    }

    /** The UID of its entry: the same for ever. */
    public String uid() {
        return caseId + "." + kind + "." + ordinal + "@varanid-intake";
    }
}
