package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import varanid.intake.vet.Recommendation;

/**
 * How one animal's quarantine stands on a day.
 *
 * @param animalId whose
 * @param asOf the day; later events and records were left out
 * @param where where it is
 * @param room where it stands, if it does
 * @param clock of that room
 * @param asks what that clock asks for, oldest first
 * @param isolation how strictly apart: by the last look and what vets answered, or because a vet has still to speak about
 *     something contagious
 * @param contagion how that which was found or is suspected travels
 * @param urgency by the last look and what vets answered; empty where nobody has looked and no vet has said
 * @param answered what holds since vets answered; nothing where none has
 * @param workPlace its place in the rounds
 * @param stage how grown it is
 * @param caseId the same as long as this quarantine lasts; there where the animal is in quarantine
 * @param plan there where the animal is in quarantine
 * @param tasks of the plan and of those before a restart that were done, by date; and the visits that vets asked for, which
 *     there are without a plan too
 */
public record FollowUp(
        UUID animalId,
        LocalDate asOf,
        Where where,
        Optional<Place> room,
        Optional<ClockReading> clock,
        List<Ask> asks,
        Isolation isolation,
        Set<Route> contagion,
        Optional<String> urgency,
        Optional<Recommendation> answered,
        WorkPlace workPlace,
        Stage stage,
        Optional<UUID> caseId,
        Optional<QuarantinePlan> plan,
        List<FollowedTask> tasks) {

    public FollowUp {
        asks = List.copyOf(asks);
        contagion = Set.copyOf(contagion);
        tasks = List.copyOf(tasks);
    }

    /** What orders it in the rounds. */
    public RoundsOrder.Stop stop() {
        return new RoundsOrder.Stop(workPlace, isolation, stage);
    }

    /** What is still to be done, by date. */
    public List<FollowedTask> toDo() {
        return tasks.stream().filter(FollowedTask::isToDo).toList();
    }

    /**
     * Tasks that are not done and that no record has overtaken: whatever the day, unlike {@link #toDo()}. Of a kind, those
     * after the last one done.
     */
    public List<Task> notDone() {
        Map<TaskKind, Integer> done = new EnumMap<>(TaskKind.class);
        for (FollowedTask each : tasks) {
            if (each.state() == FollowedTask.State.DONE) {
                done.merge(each.task().kind(), each.task().ordinal(), Math::max);
            }
        }
        List<Task> open = new ArrayList<>();
        for (FollowedTask each : tasks) {
            Task task = each.task();
            if (each.state() != FollowedTask.State.DONE && task.ordinal() > done.getOrDefault(task.kind(), 0)) {
                open.add(task);
            }
        }
        return open;
    }

    /** A room. */
    public record Place(UUID id, String name) {}

    /** Where an animal is. */
    public enum Where {
        /** It was placed in no room yet. */
        NOT_PLACED,
        IN_QUARANTINE,
        /** Among residents, or its quarantine was ended and no room recorded. */
        RESIDENT,
        /** It left, or died. */
        GONE;

        /** The word for it in replies. */
        public String code() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }
}
