package varanid.intake.weight;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * What something weighs, in grams, as far as a display tells; also, without a unit, a factor between two scales.
 * Calculations round outward, so no possible value is ever lost.
 *
 * @param lowest more than zero
 * @param shown what was displayed, within the ends
 * @param highest the other end
 */
record GramRange(BigDecimal lowest, BigDecimal shown, BigDecimal highest) {

    static final GramRange ONE = new GramRange(BigDecimal.ONE, BigDecimal.ONE, BigDecimal.ONE);

    private static final int DIGITS = 20;
    private static final MathContext DOWN = new MathContext(DIGITS, RoundingMode.FLOOR);
    private static final MathContext NEAREST = new MathContext(DIGITS, RoundingMode.HALF_UP);
    private static final MathContext UP = new MathContext(DIGITS, RoundingMode.CEILING);

    GramRange {
        if (lowest.signum() <= 0 || lowest.compareTo(shown) > 0 || shown.compareTo(highest) > 0) {
            throw new IllegalArgumentException("no range of masses: " + lowest + ", " + shown + ", " + highest);
        }
    }

    GramRange times(GramRange factor) {
        return new GramRange(
                lowest.multiply(factor.lowest, DOWN),
                shown.multiply(factor.shown, NEAREST),
                highest.multiply(factor.highest, UP));
    }

    GramRange over(GramRange divisor) {
        return new GramRange(
                lowest.divide(divisor.highest, DOWN),
                shown.divide(divisor.shown, NEAREST),
                highest.divide(divisor.lowest, UP));
    }
}
