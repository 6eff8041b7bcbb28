package varanid.intake.sample;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** How a probability is shown. */
final class Shown {

    private static final int DECIMALS = 6;
    private static final double ALMOST = 0.999999;

    private Shown() {}

    /** To six decimals; never as certain unless it is. */
    static double probability(double value) {
        double rounded = BigDecimal.valueOf(value)
                .setScale(DECIMALS, RoundingMode.HALF_UP)
                .doubleValue();
        return rounded == 1 && value < 1 ? ALMOST : rounded;
    }
}
