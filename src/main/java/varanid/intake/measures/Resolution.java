package varanid.intake.measures;

import java.math.BigDecimal;

/**
 * The smallest step a scale or a ruler shows, in the unit of the reading.
 *
 * @param step greater than zero
 */
public record Resolution(BigDecimal step) {

    private static final BigDecimal TWO = BigDecimal.valueOf(2);

    /** @throws IllegalArgumentException where the step is zero or less */
    public Resolution {
        if (step.signum() <= 0) {
            throw new IllegalArgumentException("a resolution is greater than zero, not " + step.toPlainString());
        }
    }

    /** How far the true value may be from the one shown: half a step. */
    public BigDecimal halfStep() {
        return step.divide(TWO);
    }

    /** Whether such an instrument can show the value: a whole number of steps. */
    public boolean canShow(BigDecimal value) {
        return value.remainder(step).signum() == 0;
    }
}
