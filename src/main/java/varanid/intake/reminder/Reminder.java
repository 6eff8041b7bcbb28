package varanid.intake.reminder;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A task as calendars know it.
 *
 * @param task what
 * @param state whether it is still to be done
 * @param sequence how often it was changed since calendars first saw it, from 0
 * @param changedAt when it was changed last
 */
public record Reminder(CalendarTask task, State state, int sequence, Instant changedAt) {

    /** Whether a task is still to be done. */
    public enum State {
        PLANNED,
        DONE,
        CANCELLED
    }

    public Reminder {
        if (sequence < 0) {
            throw new IllegalArgumentException("a sequence counts from 0, not " + sequence);
        }
    }

    /** A task that calendars have not seen. */
    public static Reminder first(CalendarTask task, Instant at) {
        return new Reminder(task, State.PLANNED, 0, at);
    }

    /**
     * What calendars are to know after plans were made anew: unchanged tasks stay as they are, moved or reworded ones,
     * those done and those to be done again get the next sequence, those no longer planned are cancelled. What was done
     * stays as it was when it was done.
     *
     * @param before all reminders of the plans so far
     * @param told all tasks of the plans now
     * @param at when
     * @throws IllegalArgumentException where a task is there twice
     */
    public static List<Reminder> revise(List<Reminder> before, List<PlannedTask> told, Instant at) {
        Map<String, Reminder> known = new LinkedHashMap<>();
        for (Reminder reminder : before) {
            if (known.put(reminder.task().uid(), reminder) != null) {
                throw new IllegalArgumentException("twice: " + reminder.task().uid());
            }
        }
        Set<String> wanted = new HashSet<>();
        List<Reminder> after = new ArrayList<>();
        for (PlannedTask planned : told) {
            String uid = planned.task().uid();
            if (!wanted.add(uid)) {
                throw new IllegalArgumentException("twice: " + uid);
            }
            State state = planned.done() ? State.DONE : State.PLANNED;
            Reminder old = known.get(uid);
            after.add(old == null ? new Reminder(planned.task(), state, 0, at) : old.with(planned.task(), state, at));
        }
        for (Reminder old : known.values()) {
            if (!wanted.contains(old.task().uid())) {
                after.add(old.state() == State.PLANNED ? old.with(old.task(), State.CANCELLED, at) : old);
            }
        }
        return List.copyOf(after);
    }

    private Reminder with(CalendarTask anew, State next, Instant at) {
        boolean same = state == next && (state == State.DONE || task.equals(anew));
        return same ? this : new Reminder(anew, next, sequence + 1, at);
    }
}
