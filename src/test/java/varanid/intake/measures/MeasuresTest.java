package varanid.intake.measures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeasuresTest {

    /** C = (F - 32) × 5/9, exact in decimals; the anchors are common trade figures, computed by hand. */
    @ParameterizedTest
    @CsvSource({
        "32, 0",
        "68, 20",
        "75, 23.8889",
        "86, 30",
        "90, 32.2222",
        "100, 37.7778",
        "104, 40",
        "110, 43.3333",
        "120, 48.8889",
        "130, 54.4444",
        "140, 60",
        "-40, -40",
    })
    void convertsFahrenheitToCelsius(BigDecimal fahrenheit, BigDecimal celsius) {
        assertThat(new Temperature(fahrenheit, TemperatureUnit.FAHRENHEIT).celsius())
                .isEqualByComparingTo(celsius);
    }

    @Test
    void convertsCelsiusToFahrenheitExactly() {
        for (int tenths = -400; tenths <= 1500; tenths++) {
            BigDecimal celsius = BigDecimal.valueOf(tenths, 1);
            BigDecimal fahrenheit = new Temperature(celsius, TemperatureUnit.CELSIUS).fahrenheit();
            assertThat(new Temperature(fahrenheit, TemperatureUnit.FAHRENHEIT).celsius())
                    .isEqualByComparingTo(celsius);
        }
    }

    @Test
    void takesACelsiusFigureForFahrenheitOnlyAboveWhatThePlaceCanHave() {
        assertThat(celsius("75").isProbablyFahrenheit(Temperature.Place.BASKING_SURFACE))
                .isFalse();
        assertThat(celsius("75.1").isProbablyFahrenheit(Temperature.Place.BASKING_SURFACE))
                .isTrue();
        assertThat(celsius("50").isProbablyFahrenheit(Temperature.Place.BACKGROUND))
                .isFalse();
        assertThat(celsius("50.1").isProbablyFahrenheit(Temperature.Place.BACKGROUND))
                .isTrue();
        assertThat(new Temperature(new BigDecimal("130"), TemperatureUnit.FAHRENHEIT)
                        .isProbablyFahrenheit(Temperature.Place.BASKING_SURFACE))
                .isFalse();
    }

    @Test
    void refusesWhatIsBelowAbsoluteZero() {
        assertThat(celsius("-273.15").fahrenheit()).isEqualByComparingTo("-459.67");
        assertThatIllegalArgumentException().isThrownBy(() -> celsius("-273.16"));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Temperature(new BigDecimal("-459.68"), TemperatureUnit.FAHRENHEIT));
    }

    @Test
    void keepsMassesExact() {
        assertThat(new Mass(new BigDecimal("2"), MassUnit.POUND).grams()).isEqualByComparingTo("907.18474");
        assertThat(new Mass(new BigDecimal("1.25"), MassUnit.OUNCE).grams()).isEqualByComparingTo("35.43690390625");
        assertThat(new Mass(new BigDecimal("0.036"), MassUnit.KILOGRAM).grams().toPlainString())
                .isEqualTo("36");
    }

    @Test
    void believesMassesOfMonitorsOnly() {
        assertThat(new Mass(new BigDecimal("0.999"), MassUnit.GRAM).isPlausible())
                .isFalse();
        assertThat(new Mass(new BigDecimal("1"), MassUnit.GRAM).isPlausible()).isTrue();
        assertThat(new Mass(new BigDecimal("120"), MassUnit.KILOGRAM).isPlausible())
                .isTrue();
        assertThat(new Mass(new BigDecimal("120.001"), MassUnit.KILOGRAM).isPlausible())
                .isFalse();
    }

    @Test
    void refusesAMassOfNothingAndANegativeLength() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Mass(BigDecimal.ZERO, MassUnit.GRAM));
        assertThatIllegalArgumentException().isThrownBy(() -> new Length(new BigDecimal("-1"), LengthUnit.CENTIMETRE));
        assertThatIllegalArgumentException().isThrownBy(() -> new Resolution(BigDecimal.ZERO));
        assertThat(new Length(BigDecimal.ZERO, LengthUnit.INCH).millimetres()).isEqualByComparingTo("0");
    }

    @Test
    void knowsWhatAScaleOfThatResolutionCanShow() {
        Resolution fives = new Resolution(new BigDecimal("5"));
        assertThat(fives.canShow(new BigDecimal("35"))).isTrue();
        assertThat(fives.canShow(new BigDecimal("36"))).isFalse();
        assertThat(fives.halfStep()).isEqualByComparingTo("2.5");
        assertThat(new Resolution(new BigDecimal("0.05")).canShow(new BigDecimal("1.25")))
                .isTrue();
    }

    private static Temperature celsius(String value) {
        return new Temperature(new BigDecimal(value), TemperatureUnit.CELSIUS);
    }
}
