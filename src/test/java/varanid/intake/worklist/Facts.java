package varanid.intake.worklist;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.quarantine.Isolation;
import varanid.intake.quarantine.RoundsOrder;
import varanid.intake.quarantine.Stage;
import varanid.intake.quarantine.WorkPlace;
import varanid.intake.worklist.WorklistFacts.OpenTask;
import varanid.intake.worklist.WorklistFacts.Reason;
import varanid.intake.worklist.WorklistFacts.Room;

/** Facts for tests: a healthy-looking juvenile newcomer with nothing to do, changed one thing at a time. */
public record Facts(
        String label,
        @Nullable Room room,
        @Nullable Urgency urgency,
        boolean worse,
        RoundsOrder.Stop stop,
        List<OpenTask> tasks) {

    public static Facts of(String label) {
        return new Facts(
                label,
                null,
                Urgency.ROUTINE,
                false,
                new RoundsOrder.Stop(WorkPlace.NEWCOMERS_WITHOUT_SIGNS, Isolation.STANDARD, Stage.JUVENILE),
                List.of());
    }

    public Facts named(String other) {
        return new Facts(other, room, urgency, worse, stop, tasks);
    }

    public Facts in(Room where) {
        return new Facts(label, where, urgency, worse, stop, tasks);
    }

    public Facts is(@Nullable Urgency how) {
        return new Facts(label, room, how, worse, stop, tasks);
    }

    public Facts isWorse() {
        return new Facts(label, room, urgency, true, stop, tasks);
    }

    public Facts at(WorkPlace place, Isolation isolation, Stage stage) {
        return new Facts(label, room, urgency, worse, new RoundsOrder.Stop(place, isolation, stage), tasks);
    }

    public Facts with(String kind, LocalDate due, LocalDate latest) {
        List<OpenTask> more = new ArrayList<>(tasks);
        more.add(new OpenTask(kind, tasks.size() + 1, "Do the " + kind, due, latest));
        return new Facts(label, room, urgency, worse, stop, more);
    }

    public WorklistFacts done() {
        boolean looked = urgency != null;
        return new WorklistFacts(
                Optional.of(label),
                Optional.ofNullable(room),
                Optional.ofNullable(urgency),
                looked ? Optional.of("headline of " + label) : Optional.empty(),
                worse,
                worse ? Optional.of(new UUID(7, 7)) : Optional.empty(),
                looked && (worse || urgency != Urgency.ROUTINE)
                        ? List.of(new Reason("dull", "Slow, eyes half shut in the day"))
                        : List.of(),
                stop,
                tasks);
    }
}
