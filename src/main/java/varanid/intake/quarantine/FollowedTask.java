package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;

/**
 * A task, and what became of it.
 *
 * @param task what, and when
 * @param state how it stands on the day of asking
 * @param doneOn the day it was done on; there where it is done
 */
public record FollowedTask(Task task, State state, Optional<LocalDate> doneOn) {

    /** @throws IllegalArgumentException where it is done on no day, or not done on one */
    public FollowedTask {
        if ((state == State.DONE) != doneOn.isPresent()) {
            throw new IllegalArgumentException(state + " on " + doneOn);
        }
    }

    /** How a task stands. */
    public enum State {
        /** Not done, and its last day has not passed. */
        OPEN,
        DONE,
        /** Not done, and its last day has passed. */
        OVERDUE,
        /** Not done, and the next of its kind has come: that is to be done instead. */
        LET_PASS;

        /** The word for it in replies. */
        public String code() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** Whether it is still to be done. */
    public boolean isToDo() {
        return state == State.OPEN || state == State.OVERDUE;
    }
}
