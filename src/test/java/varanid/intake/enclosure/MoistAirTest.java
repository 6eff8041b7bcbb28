package varanid.intake.enclosure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MoistAirTest {

    /** Tolerance against other equations: 0.3 % in pressure, 0.1 °C in dew point, for 0 to 50 °C. */
    private static final double PRESSURE_TOLERANCE = 0.003;

    private static final double DEW_POINT_TOLERANCE = 0.1;

    /** ASHRAE Handbook of Fundamentals 2017, saturation pressure over water, as quoted in a psychrometrics library. */
    @ParameterizedTest
    @CsvSource({"5, 872.6", "25, 3169.7", "50, 12351.3"})
    void agreesWithTheAshraeHandbook(double celsius, double pascals) {
        assertThat(MoistAir.saturationHectopascals(celsius) * 100)
                .isCloseTo(pascals, within(PRESSURE_TOLERANCE * pascals));
    }

    /** FAO Irrigation and Drainage Paper 56, example 3 (15 and 24.5 °C) and its table 2.3 equation. */
    @ParameterizedTest
    @CsvSource({"15, 1.705", "24.5, 3.075", "18, 2.06399", "25, 3.16778"})
    void agreesWithFao56(double celsius, double kilopascals) {
        assertThat(MoistAir.saturationHectopascals(celsius) / 10)
                .isCloseTo(kilopascals, within(PRESSURE_TOLERANCE * kilopascals));
    }

    /** Alduchov and Eskridge, recomputed apart in Python; dew points by the WMO and ASHRAE equations beside it. */
    @ParameterizedTest
    @CsvSource({
        "20, 50, 23.3344, 9.261, 9.255, 9.272, 1.1667, 8.624",
        "20, 60, 23.3344, 12.000, 11.995, 12.007, .9334, 10.348",
        "22, 80, 26.3855, 18.391, 18.389, 18.392, .5277, 15.496",
        "24, 70, 29.7807, 18.191, 18.188, 18.194, .8934, 15.201",
        "25, 50, 31.6174, 13.858, 13.852, 13.864, 1.5809, 11.489",
        "25, 60, 31.6174, 16.698, 16.693, 16.701, 1.2647, 13.787",
        "25, 80, 31.6174, 21.309, 21.307, 21.309, .6323, 18.382",
        "28, 80, 37.7352, 24.226, 24.224, 24.225, .7547, 21.721",
        "28, 90, 37.7352, 26.205, 26.204, 26.204, .3774, 24.436",
        "30, 60, 42.3665, 21.390, 21.385, 21.388, 1.6947, 18.169",
        "30, 80, 42.3665, 26.171, 26.169, 26.169, .8473, 24.225",
        "30, 95, 42.3665, 29.110, 29.110, 29.109, .2118, 28.768",
        "35, 50, 56.1757, 23.029, 23.023, 23.020, 2.8088, 19.750",
        "40, 30, 73.7472, 19.143, 19.132, 19.125, 5.1623, 15.308",
        "45, 20, 95.9045, 16.872, 16.858, 16.842, 7.6724, 13.063",
        "50, 10, 123.6058, 10.122, 10.103, 10.085, 11.1245, 8.288",
    })
    void computesMoisture(
            double celsius,
            double percent,
            double saturation,
            double dewPoint,
            double dewPointWmo,
            double dewPointAshrae,
            double deficit,
            double grams) {
        MoistAir air = new MoistAir(celsius, percent);
        assertThat(MoistAir.saturationHectopascals(celsius)).isCloseTo(saturation, within(5.1e-5));
        assertThat(air.dewPointCelsius()).isCloseTo(dewPoint, within(5.1e-4));
        assertThat(air.dewPointCelsius()).isCloseTo(dewPointWmo, within(DEW_POINT_TOLERANCE));
        assertThat(air.dewPointCelsius()).isCloseTo(dewPointAshrae, within(DEW_POINT_TOLERANCE));
        assertThat(air.deficitKilopascals()).isCloseTo(deficit, within(5.1e-5));
        assertThat(air.gramsPerCubicMetre()).isCloseTo(grams, within(5.1e-4));
    }

    /** Lawrence 2005: above 50 %, the dew point falls by about 1 °C for each 5 % of humidity. */
    @Test
    void agreesWithTheRuleOfThumb() {
        assertThat(new MoistAir(30, 80).dewPointCelsius()).isCloseTo(30 - (100 - 80) / 5.0, within(0.5));
    }

    /** 28 °C at 80 %: a glass wall of 23 °C gets wet, while at a basking place of 35 °C the same moisture is 53.7 %. */
    @Test
    void hasAnotherHumidityAtAnotherTemperature() {
        MoistAir air = new MoistAir(28, 80);
        assertThat(air.dewPointCelsius()).isCloseTo(24.23, within(0.005));
        assertThat(air.humidityPercentAt(23)).isGreaterThan(100);
        assertThat(air.humidityPercentAt(35)).isCloseTo(53.7, within(0.05));
        assertThat(air.humidityPercentAt(28)).isCloseTo(80, within(1e-9));
    }

    @Test
    void keepsItsLaws() {
        Random random = new Random(6);
        for (int i = 0; i < 5000; i++) {
            double celsius = -40 + 100 * random.nextDouble();
            double percent = 0.5 + 99.5 * random.nextDouble();
            MoistAir air = new MoistAir(celsius, percent);
            double dewPoint = air.dewPointCelsius();
            assertThat(dewPoint).isLessThanOrEqualTo(celsius + 1e-9);
            assertThat(new MoistAir(celsius, 100).dewPointCelsius()).isCloseTo(celsius, within(1e-9));
            assertThat(new MoistAir(celsius, Math.min(100, percent + 0.4)).dewPointCelsius())
                    .isGreaterThan(dewPoint);
            assertThat(air.deficitKilopascals()).isGreaterThanOrEqualTo(0);
            if (MoistAir.isCovered(dewPoint)) {
                assertThat(100 * MoistAir.saturationHectopascals(dewPoint) / MoistAir.saturationHectopascals(celsius))
                        .isCloseTo(percent, within(1e-9));
                assertThat(air.humidityPercentAt(dewPoint)).isCloseTo(100, within(1e-9));
            }
            if (MoistAir.isCovered(celsius + 1)) {
                assertThat(air.humidityPercentAt(celsius + 1)).isLessThan(percent);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, 100.1, Double.NaN})
    void refusesWhatIsNoHumidity(double percent) {
        assertThatIllegalArgumentException().isThrownBy(() -> new MoistAir(25, percent));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-40.1, 60.1, Double.NaN})
    void refusesTemperaturesItDoesNotHoldFor(double celsius) {
        assertThatIllegalArgumentException().isThrownBy(() -> new MoistAir(celsius, 50));
        assertThatIllegalArgumentException().isThrownBy(() -> new MoistAir(25, 50).humidityPercentAt(celsius));
    }
}
