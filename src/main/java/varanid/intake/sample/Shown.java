package varanid.intake.sample;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** How a probability is shown. */
final class Shown {

    private static final int DECIMALS = 6;
    private static final double ALMOST = 0.999999;

    private Shown() {}

    /** To six decimals. */
    static double probability(double value) {
        return BigDecimal.valueOf(value)
                .setScale(DECIMALS, RoundingMode.HALF_UP)
                .doubleValue();
    }

    /** To six decimals, and never as certain: no number of tests makes it so, whatever is assumed of them. */
    static double freedom(double value) {
        return Math.min(ALMOST, probability(value));
    }
}
