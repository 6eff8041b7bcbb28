package varanid.intake.measures;

import java.math.BigDecimal;

/** Decimals without trailing zeros and without an exponent, so that equal amounts are equal and print alike. */
final class Decimals {

    private Decimals() {}

    static BigDecimal tidy(BigDecimal value) {
        BigDecimal stripped = value.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }
}
