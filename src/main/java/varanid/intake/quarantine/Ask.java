package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * Something that a clock waits for, or that has to be said before a release.
 *
 * @param event the occurrence it is about
 * @param on the day of that
 * @param animal which animal, where it was one
 * @param wanted what is waited for
 * @param daysWait whether no day counts until then
 * @param words what occurred, and what was written down of it
 * @param reason why it is asked
 */
public record Ask(
        UUID event, LocalDate on, Optional<UUID> animal, Wanted wanted, boolean daysWait, String words, String reason) {

    /** What is waited for. */
    public enum Wanted {
        VETS_WORD,
        TREATMENT_END;

        /** The word for it in replies. */
        public String code() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** What the clock of a room asks for, oldest first. */
    static List<Ask> list(QuarantinePolicy policy, RoomBook book, ClockReading reading) {
        List<UUID> waits = ClockView.waitingFor(reading);
        return reading.history().stream()
                .filter(step -> waits.contains(step.event().id())
                        || reading.openQuestions().contains(step.event().id()))
                .flatMap(step -> step.event() instanceof ClockEvent.Occurred what
                        ? Stream.of(of(policy, book, reading, what, waits.contains(what.id())))
                        : Stream.empty())
                .toList();
    }

    /** Where what was noted begins with the same word, that is said once. */
    private static String told(String cause, String noted) {
        return noted.regionMatches(true, 0, cause + ":", 0, cause.length() + 1) ? noted : cause + ": " + noted;
    }

    private static Ask of(
            QuarantinePolicy policy, RoomBook book, ClockReading reading, ClockEvent.Occurred what, boolean daysWait) {
        QuarantinePolicy.Cause cause = policy.getCause(what.cause());
        String words = book.find(what.id())
                .map(row -> row.reason)
                .map(noted -> told(cause.label(), noted))
                .orElse(cause.label());
        return new Ask(
                what.id(),
                what.on(),
                what.animal(),
                reading.openQuestions().contains(what.id()) ? Wanted.VETS_WORD : Wanted.TREATMENT_END,
                daysWait,
                words,
                cause.reason());
    }
}
