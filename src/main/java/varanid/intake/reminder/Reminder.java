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

    /** The same, done. What is done stays done. */
    public Reminder done(Instant at) {
        return state == State.DONE ? this : new Reminder(task, State.DONE, sequence + 1, at);
    }

    /**
     * What calendars are to know after a plan was made anew: unchanged tasks stay as they are, moved or reworded ones get
     * the next sequence, those no longer planned are cancelled, done ones stay done.
     *
     * @param before all reminders of the case so far
     * @param planned all tasks of the new plan
     * @param at when
     * @throws IllegalArgumentException where a task is there twice
     */
    public static List<Reminder> revise(List<Reminder> before, List<CalendarTask> planned, Instant at) {
        Map<String, Reminder> known = new LinkedHashMap<>();
        for (Reminder reminder : before) {
            if (known.put(reminder.task().uid(), reminder) != null) {
                throw new IllegalArgumentException("twice: " + reminder.task().uid());
            }
        }
        Set<String> wanted = new HashSet<>();
        List<Reminder> after = new ArrayList<>();
        for (CalendarTask task : planned) {
            if (!wanted.add(task.uid())) {
                throw new IllegalArgumentException("twice: " + task.uid());
            }
            Reminder old = known.get(task.uid());
            after.add(old == null ? first(task, at) : old.planned(task, at));
        }
        for (Reminder old : known.values()) {
            if (!wanted.contains(old.task().uid())) {
                after.add(old.cancelled(at));
            }
        }
        return List.copyOf(after);
    }

    private Reminder planned(CalendarTask anew, Instant at) {
        return state == State.DONE || (state == State.PLANNED && task.equals(anew))
                ? this
                : new Reminder(anew, State.PLANNED, sequence + 1, at);
    }

    private Reminder cancelled(Instant at) {
        return state == State.PLANNED ? new Reminder(task, State.CANCELLED, sequence + 1, at) : this;
    }
}
