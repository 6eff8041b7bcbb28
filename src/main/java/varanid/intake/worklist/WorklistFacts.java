package varanid.intake.worklist;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import varanid.intake.quarantine.RoundsOrder;

/**
 * What the work list needs to know of one animal in care.
 *
 * @param label what people call it: its name, else its tag
 * @param room where it stands
 * @param urgency how soon a vet, by what stands now (the last look, or a vet's answer above it); nothing where nobody has
 *     looked yet, which counts as urgent
 * @param headline the urgency in words, as the look said it
 * @param worse whether the last look found something worse than the look before it
 * @param comparedLook the last look, where there is one before it to compare with
 * @param reasons why it is urgent or worse, the weightiest first
 * @param stop where it stands in the rounds
 * @param openTasks everything that is to be done and is not, whatever the day; in any order. A task that was overtaken by
 *     a later one of its kind may be left out only once something was recorded that overtakes it
 */
public record WorklistFacts(
        Optional<String> label,
        Optional<Room> room,
        Optional<Urgency> urgency,
        Optional<String> headline,
        boolean worse,
        Optional<UUID> comparedLook,
        List<Reason> reasons,
        RoundsOrder.Stop stop,
        List<OpenTask> openTasks) {

    public WorklistFacts {
        reasons = List.copyOf(reasons);
        openTasks = List.copyOf(openTasks);
    }

    /**
     * A room.
     *
     * @param id of the room
     * @param name which no other room of the organisation has
     */
    public record Room(UUID id, String name) {}

    /**
     * One thing that makes an animal urgent or worse.
     *
     * @param code such as the finding's id
     * @param words for people
     */
    public record Reason(String code, String words) {}

    /**
     * One thing to do.
     *
     * @param kind what sort, such as {@code weighing}
     * @param ordinal which one of its kind, from 1
     * @param title a few words
     * @param due the first day that is good
     * @param latest the last day that is good, not before {@code due}
     */
    public record OpenTask(String kind, int ordinal, String title, LocalDate due, LocalDate latest) {

        public OpenTask {
            if (ordinal < 1 || latest.isBefore(due)) {
                throw new IllegalArgumentException(
                        "no task: " + kind + " " + ordinal + " from " + due + " to " + latest);
            }
        }
    }
}
