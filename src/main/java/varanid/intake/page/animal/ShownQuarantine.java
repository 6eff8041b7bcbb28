package varanid.intake.page.animal;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import varanid.intake.quarantine.Ask;
import varanid.intake.quarantine.ClockReading;
import varanid.intake.quarantine.FollowUp;
import varanid.intake.quarantine.FollowedTask;

/**
 * How an animal's quarantine stands, for its page.
 *
 * @param where the code of where it is
 * @param room where it stands; null where it stands in none
 * @param clock what its clock shows; null where none runs for it
 * @param asks what a vet is to be asked, oldest first
 * @param tasks what is to be done, the most pressing first
 */
public record ShownQuarantine(
        String where, @Nullable String room, @Nullable Clock clock, List<Asked> asks, List<ToDo> tasks) {

    public ShownQuarantine {
        asks = List.copyOf(asks);
        tasks = List.copyOf(tasks);
    }

    /**
     * A clock.
     *
     * @param day how many days since day 0
     * @param held whether it waits, and has no date for release
     * @param earliest the first day on which a person may end it; where it waits, as if that came today
     * @param needsVet whether a vet has to approve the release
     * @param why the reasons, the start first, each a sentence
     */
    public record Clock(
            LocalDate start, long day, boolean held, LocalDate earliest, boolean needsVet, List<String> why) {

        static Optional<Clock> of(ClockReading reading) {
            List<String> why = reading.why().stream()
                    .map(each -> sentence(each.text()))
                    // Two animals of a room may have brought the same on one day.
                    .distinct()
                    .toList();
            return reading.standing()
                    .fold(
                            empty -> Optional.empty(),
                            running -> Optional.of(new Clock(
                                    running.start(),
                                    ChronoUnit.DAYS.between(running.start(), reading.asOf()),
                                    false,
                                    running.earliestRelease(),
                                    reading.vetRelease(),
                                    why)),
                            held -> Optional.of(new Clock(
                                    held.start(),
                                    ChronoUnit.DAYS.between(held.start(), reading.asOf()),
                                    true,
                                    held.notBefore(),
                                    reading.vetRelease(),
                                    why)));
        }

        private static String sentence(String text) {
            return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1) + (text.endsWith(".") ? "" : ".");
        }
    }

    /** What a vet is to be asked, since when, and why. */
    public record Asked(String words, LocalDate since, String reason) {}

    /**
     * A task.
     *
     * @param late by how many days; 0 where it is not
     * @param now whether its days have begun
     * @param more how many more of the same are to be done after it
     */
    public record ToDo(
            String title, String instruction, LocalDate due, LocalDate latest, long late, boolean now, int more) {

        static ToDo of(FollowedTask followed, LocalDate today) {
            return new ToDo(
                    followed.task().title(),
                    followed.task().instruction(),
                    followed.task().due(),
                    followed.task().latest(),
                    followed.state() == FollowedTask.State.OVERDUE
                            ? ChronoUnit.DAYS.between(followed.task().latest(), today)
                            : 0,
                    !followed.task().due().isAfter(today),
                    0);
        }

        private ToDo andMore(int times) {
            return new ToDo(title, instruction, due, latest, late, now, times);
        }
    }

    static ShownQuarantine of(FollowUp followUp) {
        List<Asked> asks = new ArrayList<>();
        Set<String> asked = new HashSet<>();
        for (Ask ask : followUp.asks()) {
            // The same may have occurred at several looks; the first is since when it waits.
            if (asked.add(ask.words())) {
                asks.add(new Asked(ask.words(), ask.on(), ask.reason()));
            }
        }
        return new ShownQuarantine(
                followUp.where().code(),
                followUp.room().map(FollowUp.Place::name).orElse(null),
                followUp.clock()
                        .filter(clock -> followUp.where() == FollowUp.Where.IN_QUARANTINE)
                        .flatMap(Clock::of)
                        .orElse(null),
                asks,
                eachOnce(followUp.toDo().stream()
                        .map(task -> ToDo.of(task, followUp.asOf()))
                        .sorted(Comparator.comparing(ToDo::latest).thenComparing(ToDo::due))
                        .toList()));
    }

    /** Of what is to be done several times, the first time, with how often it comes after that. */
    private static List<ToDo> eachOnce(List<ToDo> tasks) {
        Map<String, List<ToDo>> byTitle = new LinkedHashMap<>();
        tasks.forEach(task ->
                byTitle.computeIfAbsent(task.title(), each -> new ArrayList<>()).add(task));
        return byTitle.values().stream()
                .map(same -> same.get(0).andMore(same.size() - 1))
                .toList();
    }
}
