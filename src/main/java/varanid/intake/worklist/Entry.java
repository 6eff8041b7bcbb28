package varanid.intake.worklist;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import varanid.intake.quarantine.RoundsOrder;
import varanid.intake.worklist.WorklistFacts.OpenTask;
import varanid.intake.worklist.WorklistFacts.Reason;
import varanid.intake.worklist.WorklistFacts.Room;

/**
 * One animal on the work list: nothing in it depends on the day it is read.
 *
 * @param animalId whose
 * @param label what people call it
 * @param room where it stands
 * @param urgency how soon a vet; nothing where nobody has looked yet
 * @param headline the urgency in words
 * @param worse whether the last look found something worse than the look before
 * @param comparedLook the last look, where there is one before it
 * @param reasons why it is urgent or worse, the weightiest first, at most {@value #MOST_REASONS}
 * @param tasks the open tasks that are due first, at most {@value #MOST_TASKS}, the earliest first
 * @param moreFrom when the first of the tasks that are left out is due; {@link #NEVER} where none is
 * @param actRank whom to see to first
 * @param dueFrom the earliest day that any open task is due; {@link #NEVER} where nothing is open
 * @param dueUntil the earliest day after which any open task is overdue; {@link #NEVER} where nothing is open
 * @param stop where it stands in the rounds
 */
record Entry(
        UUID animalId,
        Optional<String> label,
        Optional<Room> room,
        Optional<Urgency> urgency,
        Optional<String> headline,
        boolean worse,
        Optional<UUID> comparedLook,
        List<Reason> reasons,
        List<OpenTask> tasks,
        LocalDate moreFrom,
        ActRank actRank,
        LocalDate dueFrom,
        LocalDate dueUntil,
        RoundsOrder.Stop stop) {

    /**
     * The way entries are made. Raised when the same facts would make another entry, or the same records other facts:
     * every entry made before is then made again.
     */
    static final int FORM = 3;

    /** After every date. */
    static final LocalDate NEVER = LocalDate.of(9999, 12, 31);

    static final int MOST_REASONS = 5;
    static final int MOST_TASKS = 12;

    private static final Comparator<OpenTask> EARLIEST_FIRST = Comparator.comparing(OpenTask::due)
            .thenComparing(OpenTask::latest)
            .thenComparing(OpenTask::kind)
            .thenComparing(OpenTask::ordinal);

    static Entry of(UUID animalId, WorklistFacts facts) {
        List<OpenTask> open = facts.openTasks().stream().sorted(EARLIEST_FIRST).toList();
        int kept = Math.min(open.size(), MOST_TASKS);
        return new Entry(
                animalId,
                facts.label(),
                facts.room(),
                facts.urgency(),
                facts.headline(),
                facts.worse(),
                facts.comparedLook(),
                facts.reasons().stream().limit(MOST_REASONS).toList(),
                open.subList(0, kept),
                open.size() > kept ? open.get(kept).due() : NEVER,
                ActRank.of(facts.urgency(), facts.worse()),
                open.stream().map(OpenTask::due).min(Comparator.naturalOrder()).orElse(NEVER),
                open.stream()
                        .map(OpenTask::latest)
                        .min(Comparator.naturalOrder())
                        .orElse(NEVER),
                facts.stop());
    }

    /**
     * What is due on that day, the longest overdue first, then what has the fewest good days left. What is to be done
     * several times is told once, by its earliest.
     */
    List<Due> due(LocalDate day) {
        Map<List<String>, Due> told = new LinkedHashMap<>();
        for (OpenTask task : tasks) {
            if (!task.due().isAfter(day)) {
                told.merge(List.of(task.kind(), task.title()), new Due(task, 1), (first, next) -> first.again());
            }
        }
        return told.values().stream()
                .sorted(Comparator.comparing((Due due) -> due.earliest().latest())
                        .thenComparing(due -> due.earliest().due()))
                .toList();
    }

    /**
     * A thing that is due.
     *
     * @param earliest the one of those alike that is due first
     * @param times how many alike are due, of those that are kept
     */
    record Due(OpenTask earliest, int times) {

        private Due again() {
            return new Due(earliest, times + 1);
        }
    }

    /** Whether it has to be seen to on that day: urgent, worse, or something is due. */
    boolean callsFor(LocalDate day) {
        return actRank != ActRank.REST || !dueFrom.isAfter(day);
    }
}
