package varanid.intake.measures;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * A temperature as it was read: always a value and a unit, because a bare 88 is a hot spot in one and a fire in the
 * other.
 *
 * @param value the number read, not below absolute zero
 * @param unit the unit it was read in
 */
public record Temperature(BigDecimal value, TemperatureUnit unit) {

    /** Decimals of a converted temperature: 5/9 has no end in decimals. */
    public static final int CONVERTED_DECIMALS = 4;

    private static final BigDecimal ABSOLUTE_ZERO_CELSIUS = new BigDecimal("-273.15");
    private static final BigDecimal ABSOLUTE_ZERO_FAHRENHEIT = new BigDecimal("-459.67");
    private static final BigDecimal FREEZING_FAHRENHEIT = BigDecimal.valueOf(32);
    private static final BigDecimal FIVE = BigDecimal.valueOf(5);
    private static final BigDecimal NINE = BigDecimal.valueOf(9);

    /** Where in the enclosure, or on the animal, a temperature was read, and above which a Celsius figure is unlikely. */
    public enum Place {
        /** The surface under the lamp. More than 75 °C there is probably a Fahrenheit figure; our own proposal. */
        BASKING_SURFACE("75"),
        /** Air, cool end, night, cage, transport. More than 50 °C is probably a Fahrenheit figure; our own proposal. */
        BACKGROUND("50"),
        /** Skin of the animal. More than 50 °C is probably a Fahrenheit figure; our own proposal. */
        SKIN("50");

        private final BigDecimal highestLikelyCelsius;

        Place(String highestLikelyCelsius) {
            this.highestLikelyCelsius = new BigDecimal(highestLikelyCelsius);
        }

        public BigDecimal highestLikelyCelsius() {
            return highestLikelyCelsius;
        }
    }

    /** @throws IllegalArgumentException where the value is below absolute zero */
    public Temperature {
        BigDecimal zero = unit == TemperatureUnit.CELSIUS ? ABSOLUTE_ZERO_CELSIUS : ABSOLUTE_ZERO_FAHRENHEIT;
        if (value.compareTo(zero) < 0) {
            throw new IllegalArgumentException(
                    value.toPlainString() + " " + unit.code() + " is below absolute zero, " + zero.toPlainString());
        }
    }

    /** In degrees Celsius: exact where it was given so, else rounded half up to four decimals. */
    public BigDecimal celsius() {
        if (unit == TemperatureUnit.CELSIUS) {
            return Decimals.tidy(value);
        }
        return Decimals.tidy(value.subtract(FREEZING_FAHRENHEIT)
                .multiply(FIVE)
                .divide(NINE, CONVERTED_DECIMALS, RoundingMode.HALF_UP));
    }

    /** In degrees Fahrenheit, exactly. */
    public BigDecimal fahrenheit() {
        if (unit == TemperatureUnit.FAHRENHEIT) {
            return Decimals.tidy(value);
        }
        return Decimals.tidy(value.multiply(NINE).divide(FIVE).add(FREEZING_FAHRENHEIT));
    }

    /** Whether it says Celsius but was probably read in Fahrenheit: a person is then asked, nothing is converted. */
    public boolean isProbablyFahrenheit(Place place) {
        return unit == TemperatureUnit.CELSIUS && value.compareTo(place.highestLikelyCelsius()) > 0;
    }
}
