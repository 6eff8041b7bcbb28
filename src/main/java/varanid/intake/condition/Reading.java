package varanid.intake.condition;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A mass or a length with what its instrument may hide.
 *
 * @param lowest greater than zero
 * @param shown what was displayed
 * @param highest not below it
 */
public record Reading(double lowest, double shown, double highest) {

    /** @throws IllegalArgumentException where the order is another, or something is zero or less */
    public Reading {
        if (!(lowest > 0 && lowest <= shown && shown <= highest)) {
            throw new IllegalArgumentException("no reading: " + lowest + ", " + shown + ", " + highest);
        }
    }

    /** A reading whose step nobody knows: taken as it was displayed. */
    public static Reading exactly(double shown) {
        return new Reading(shown, shown, shown);
    }

    /**
     * What an instrument shows, as far as its step is known and finer than the reading.
     *
     * @param converted what was read, in the unit that is wanted
     * @param step the instrument's, in the unit it was read in
     * @param shown what was read, in that unit
     */
    public static Reading of(BigDecimal converted, @Nullable BigDecimal step, BigDecimal shown) {
        double value = converted.doubleValue();
        if (step == null || step.divide(BigDecimal.valueOf(2)).compareTo(shown) >= 0) {
            return exactly(value);
        }
        return ofStep(value, value * step.doubleValue() / shown.doubleValue());
    }

    /**
     * What an instrument of that step may have rounded.
     *
     * @param step in the same unit, smaller than twice the reading
     */
    public static Reading ofStep(double shown, double step) {
        return new Reading(shown - step / 2, shown, shown + step / 2);
    }
}
