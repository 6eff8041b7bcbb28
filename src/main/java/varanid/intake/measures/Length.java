package varanid.intake.measures;

import java.math.BigDecimal;

/**
 * A length as it was read.
 *
 * @param value the number read, zero or more (a tail can be missing)
 * @param unit the unit it was read in
 */
public record Length(BigDecimal value, LengthUnit unit) {

    /** @throws IllegalArgumentException where the value is negative */
    public Length {
        if (value.signum() < 0) {
            throw new IllegalArgumentException("a length is zero or more, not " + value.toPlainString());
        }
    }

    /** The length in millimetres, exactly. */
    public BigDecimal millimetres() {
        return Decimals.tidy(value.multiply(unit.millimetres()));
    }

    /** Whether the length lies between the two, ends included. */
    public boolean isBetweenMillimetres(BigDecimal least, BigDecimal greatest) {
        BigDecimal millimetres = millimetres();
        return millimetres.compareTo(least) >= 0 && millimetres.compareTo(greatest) <= 0;
    }
}
