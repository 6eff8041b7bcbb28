package varanid.intake.weight;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;

/** What the weighings answer to the checklist's finding {@code weight-trend}. */
public sealed interface TrendAnswer {

    /**
     * An interval of percent; an end that gut or water leaves open is where the checklist's range ends.
     *
     * @param lowest a loss is negative
     * @param highest not below the lowest
     * @param overDays between the two weighings, or over the slope
     * @param evidence which two readings, or which slope
     */
    record Measured(BigDecimal lowest, BigDecimal highest, int overDays, TrendEvidence evidence)
            implements TrendAnswer {}

    /** The second weighing is not due before that day. */
    record NotYetDue(LocalDate due) implements TrendAnswer {}

    /** There are weighings, and they cannot be compared: "looked, could not tell". */
    record NotObserved(List<Caveat> why) implements TrendAnswer {
        public NotObserved {
            why = List.copyOf(why);
        }
    }

    /** The one place where the kinds are told apart. */
    default <T> T fold(Function<Measured, T> measured, Function<NotYetDue, T> notYetDue, Function<NotObserved, T> not) {
        if (this instanceof Measured it) {
            return measured.apply(it);
        }
        return this instanceof NotYetDue it ? notYetDue.apply(it) : not.apply((NotObserved) this);
    }
}
