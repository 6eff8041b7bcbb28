package varanid.intake.measures;

import java.math.BigDecimal;

/**
 * A mass as it was read.
 *
 * @param value the number read, greater than zero
 * @param unit the unit it was read in
 */
public record Mass(BigDecimal value, MassUnit unit) {

    /** Below this a monitor would be lighter than any hatchling known; checked on input, our own proposal. */
    public static final BigDecimal LEAST_PLAUSIBLE_GRAMS = BigDecimal.ONE;

    /** Above this a monitor would be heavier than the heaviest Komodo dragon by a wide margin; our own proposal. */
    public static final BigDecimal GREATEST_PLAUSIBLE_GRAMS = new BigDecimal("120000");

    /** @throws IllegalArgumentException where the value is zero or less */
    public Mass {
        if (value.signum() <= 0) {
            throw new IllegalArgumentException("a mass is greater than zero, not " + value.toPlainString());
        }
    }

    /** The mass in grams, exactly. */
    public BigDecimal grams() {
        return Decimals.tidy(value.multiply(unit.grams()));
    }

    /** Whether a monitor lizard could weigh this. */
    public boolean isPlausible() {
        BigDecimal grams = grams();
        return grams.compareTo(LEAST_PLAUSIBLE_GRAMS) >= 0 && grams.compareTo(GREATEST_PLAUSIBLE_GRAMS) <= 0;
    }
}
