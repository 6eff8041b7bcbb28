package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * What a clock shows on one day, and why.
 *
 * @param asOf the day; later events were left out
 * @param standing how it stands
 * @param animals who stands there
 * @param neededDays the most that any of them needs; 0 in an empty space
 * @param uncountedDays the days since the start that did not count, those of a waiting that goes on included
 * @param vetRelease whether any of them needs a vet's approval for release
 * @param openQuestions occurrences that a vet has still to speak about before release, whether or not the days count
 * @param why the reasons for the date, the start first
 * @param history every event up to the day, in order, with what it did
 */
public record ClockReading(
        LocalDate asOf,
        Standing standing,
        Set<UUID> animals,
        int neededDays,
        int uncountedDays,
        boolean vetRelease,
        List<UUID> openQuestions,
        List<Why> why,
        List<Step> history) {

    public ClockReading {
        animals = Set.copyOf(animals);
        openQuestions = List.copyOf(openQuestions);
        why = List.copyOf(why);
        history = List.copyOf(history);
    }

    /** Day 0; nothing for an empty space. */
    public Optional<LocalDate> start() {
        return standing.fold(
                empty -> Optional.empty(), running -> Optional.of(running.start()), held -> Optional.of(held.start()));
    }

    /** The date and its reasons as one sentence. */
    public String inWords() {
        String reasons = why.stream().map(Why::text).collect(Collectors.joining("; "));
        return standing.fold(
                empty -> "Nobody stands here.",
                running -> "Earliest release on " + Why.words(running.earliestRelease()) + ", because " + reasons
                        + ". A person decides.",
                held -> "No date yet, and not before " + Why.words(held.notBefore()) + ", because " + reasons
                        + ". A person decides.");
    }

    /**
     * One event and what it did.
     *
     * @param event what happened
     * @param did what that did to the clock
     * @param because why, in plain words
     * @param earliest the date the clock showed after it, on its day; nothing for an empty space
     */
    public record Step(ClockEvent event, Did did, String because, Optional<LocalDate> earliest) {}

    /** What an event did. */
    public enum Did {
        STARTED,
        RESTARTED,
        HELD,
        PAUSED,
        WENT_ON,
        ASKED_A_VET,
        ANSWERED,
        LENGTHENED,
        DECIDED,
        LEFT,
        EMPTIED,
        NOTHING;

        /** The word for it in replies. */
        public String code() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }
}
