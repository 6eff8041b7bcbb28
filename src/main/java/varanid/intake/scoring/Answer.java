package varanid.intake.scoring;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * What was answered about one finding. A finding without an answer is missing; that is not an answer.
 *
 * <p>None of {@link NotObserved}, {@link NotYetDue} or a missing answer ever counts as reassuring.
 */
public sealed interface Answer {

    /** A level was seen. */
    record Seen(String level) implements Answer {
        public Seen {
            Objects.requireNonNull(level);
        }
    }

    /**
     * A number, or an interval when the instrument cannot say it more exactly, in the unit of the finding's measure.
     *
     * @param companion the second number that the finding's measure may need (days between two weighings), if known
     */
    record Measured(
            BigDecimal low, BigDecimal high, @Nullable BigDecimal companion) implements Answer {
        public Measured {
            if (low.compareTo(high) > 0) {
                throw new IllegalArgumentException(
                        "an interval runs from low to high, not from " + low + " to " + high);
            }
        }

        boolean isExact() {
            return low.equals(high);
        }

        public static Measured exactly(BigDecimal value) {
            return new Measured(value, value, null);
        }
    }

    /** Looked, and could not tell. */
    enum NotObserved implements Answer {
        NOT_OBSERVED
    }

    /** Cannot be known before a later day: a second weighing, the first stool. A dated task, not a gap in the look. */
    enum NotYetDue implements Answer {
        NOT_YET_DUE
    }

    /** The one place where the kinds of answer are told apart. */
    default <T> T fold(
            Function<Seen, T> seen, Function<Measured, T> measured, Supplier<T> notObserved, Supplier<T> notYetDue) {
        if (this instanceof Seen it) {
            return seen.apply(it);
        }
        if (this instanceof Measured it) {
            return measured.apply(it);
        }
        return this instanceof NotObserved ? notObserved.get() : notYetDue.get();
    }

    static Answer seen(String level) {
        return new Seen(level);
    }

    static Answer measured(String number) {
        return Measured.exactly(new BigDecimal(number));
    }

    static Answer notObserved() {
        return NotObserved.NOT_OBSERVED;
    }

    static Answer notYetDue() {
        return NotYetDue.NOT_YET_DUE;
    }
}
