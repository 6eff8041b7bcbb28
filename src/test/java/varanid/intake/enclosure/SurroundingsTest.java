package varanid.intake.enclosure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import varanid.intake.measures.Temperature;
import varanid.intake.measures.TemperatureUnit;

class SurroundingsTest {

    private static final HusbandryRules RULES = new HusbandryReference().rules();
    private static final String SALVATOR = "Varanus salvator";
    private static final BigDecimal NOT_MEASURED = new BigDecimal("-1");

    // ---- ranges

    /** The handout has 95 to 97 °F, keepers 120 to 130 °F (common practice). */
    @Test
    void showsPublishedFiguresBesideCommonPractice() {
        Surroundings between = juvenile(Map.of(Quantity.BASKING_SURFACE, "42", Quantity.COOL_AIR, "28"));
        Surroundings.Judged basking = judged(between, Quantity.BASKING_SURFACE);
        assertThat(basking.standing()).isEqualTo(Surroundings.Standing.SOURCES_DISAGREE);
        assertThat(basking.ranges())
                .extracting(each -> each.range().kind() + " " + each.side())
                .containsExactly("PUBLISHED ABOVE", "COMMON_PRACTICE BELOW");
        assertThat(basking.ranges().get(0).range().lowest()).isEqualByComparingTo("35");
        assertThat(basking.ranges().get(0).range().highest()).isEqualByComparingTo("36.1111");
        assertThat(basking.ranges().get(1).range().lowest()).isEqualByComparingTo("48.8889");
        assertThat(basking.ranges().get(1).range().highest()).isEqualByComparingTo("54.4444");
        assertThat(codes(between)).isEmpty();
    }

    @Test
    void isOutOfRangeOnlyBySourcesThatAgree() {
        assertThat(codes(juvenile(Map.of(Quantity.BASKING_SURFACE, "34", Quantity.COOL_AIR, "28"))))
                .containsExactly("basking-surface-below");
        assertThat(codes(juvenile(Map.of(Quantity.BASKING_SURFACE, "35", Quantity.COOL_AIR, "28"))))
                .isEmpty();
        assertThat(codes(juvenile(Map.of(Quantity.BASKING_SURFACE, "52", Quantity.COOL_AIR, "28"))))
                .isEmpty();
        assertThat(codes(juvenile(Map.of(Quantity.BASKING_SURFACE, "56", Quantity.COOL_AIR, "28"))))
                .containsExactly("basking-surface-above");
    }

    @Test
    void allowsTheHotSpotOfKeepersOnlyWithACoolEndThatWasMeasured() {
        assertThat(codes(juvenile(Map.of(Quantity.BASKING_SURFACE, "52"))))
                .containsExactly("basking-surface-above", "basking-surface-held-back");
        assertThat(codes(juvenile(Map.of(Quantity.BASKING_SURFACE, "52", Quantity.COOL_AIR, "30"))))
                .isEmpty();
        assertThat(codes(juvenile(Map.of(Quantity.BASKING_SURFACE, "52", Quantity.COOL_AIR, "30.1"))))
                .containsExactly("basking-surface-above", "basking-surface-held-back");
    }

    @Test
    void readsFahrenheitAsWellAsCelsius() {
        Surroundings same = judge(
                SALVATOR,
                new EnclosureReading(
                        Map.of(
                                Quantity.NIGHT_MINIMUM,
                                new Temperature(new BigDecimal("68"), TemperatureUnit.FAHRENHEIT)),
                        null,
                        null,
                        Map.of()));
        assertThat(codes(same)).containsExactly("night-minimum-below");
        assertThat(judged(same, Quantity.NIGHT_MINIMUM).value()).isEqualByComparingTo("20");
    }

    @Test
    void usesNoFiguresOfAnotherSpeciesOrLifeStage() {
        EnclosureReading cold = reading(Map.of(Quantity.BASKING_SURFACE, "20"), null, null, NOT_MEASURED);
        assertThat(judged(judge("Varanus acanthurus", cold), Quantity.BASKING_SURFACE)
                        .standing())
                .isEqualTo(Surroundings.Standing.NO_FIGURES);
        Surroundings adult = Surroundings.of(cold, SALVATOR, "adult", RULES);
        assertThat(judged(adult, Quantity.BASKING_SURFACE).standing()).isEqualTo(Surroundings.Standing.NO_FIGURES);
        assertThat(adult.signs()).isEmpty();
    }

    /** Meiri 2018: active wild water monitors 27 to 32 °C. Shown; a body is no enclosure. */
    @Test
    void showsBodyTemperaturesOfWildAnimalsAndJudgesByNone() {
        Surroundings.Judged skin = judged(juvenile(Map.of(Quantity.SKIN, "35")), Quantity.SKIN);
        assertThat(skin.standing()).isEqualTo(Surroundings.Standing.NO_FIGURES);
        assertThat(skin.ranges()).singleElement().satisfies(each -> {
            assertThat(each.side()).isEqualTo(HusbandryRange.Side.ABOVE);
            assertThat(each.applies()).isFalse();
        });
    }

    @Test
    void wantsAWarmAndACoolEnd() {
        assertThat(codes(juvenile(Map.of(Quantity.WARM_AIR, "30", Quantity.COOL_AIR, "28"))))
                .containsExactly("gradient-below");
        assertThat(codes(juvenile(Map.of(Quantity.WARM_AIR, "28", Quantity.COOL_AIR, "31"))))
                .containsExactly("gradient-below");
        assertThat(codes(juvenile(Map.of(Quantity.WARM_AIR, "31", Quantity.COOL_AIR, "28"))))
                .isEmpty();
    }

    // ---- what it does to answers

    @Test
    void makesAnswersLessCertainAndNamesWhy() {
        Surroundings cold = juvenile(Map.of(Quantity.WARM_AIR, "22", Quantity.NIGHT_MINIMUM, "15"));
        assertThat(cold.lessCertain()).containsKeys("dull", "appetite", "days-food-refused");
        assertThat(cold.lessCertain().get("dull")).containsExactly("night-minimum-below", "warm-air-below");
        assertThat(juvenile(Map.of(Quantity.WARM_AIR, "30")).lessCertain()).isEmpty();
    }

    @Test
    void namesTheConditionOfALookThatASkinTemperatureMeans() {
        assertThat(juvenile(Map.of(Quantity.SKIN, "23.9")).lookConditions()).containsExactly("cold");
        assertThat(juvenile(Map.of(Quantity.SKIN, "24")).lookConditions()).containsExactly("cool");
        assertThat(juvenile(Map.of(Quantity.SKIN, "28")).lookConditions()).isEmpty();
        assertThat(juvenile(Map.of(Quantity.SKIN, "40")).lookConditions()).isEmpty();
        assertThat(juvenile(Map.of(Quantity.SKIN, "40.1")).lookConditions()).containsExactly("overheated");
    }

    // ---- units

    @Test
    void asksAboutProbableFahrenheitAndJudgesNothingByIt() {
        Surroundings surroundings =
                juvenile(Map.of(Quantity.BASKING_SURFACE, "95", Quantity.COOL_AIR, "82", Quantity.NIGHT_MINIMUM, "25"));
        assertThat(surroundings.probablyFahrenheit()).containsExactly(Quantity.BASKING_SURFACE, Quantity.COOL_AIR);
        assertThat(surroundings.quantities())
                .extracting(Surroundings.Judged::quantity)
                .containsExactly(Quantity.NIGHT_MINIMUM);
    }

    // ---- moisture

    /** 28 °C at 80 % against a glass wall of 23 °C: dew point 24.23 °C, so it is wet. */
    @Test
    void seesWhereWaterSettles() {
        Surroundings surroundings = judge(
                SALVATOR,
                reading(
                        Map.of(
                                Quantity.COLDEST_SURFACE,
                                "23",
                                Quantity.BASKING_SURFACE,
                                "35",
                                Quantity.NIGHT_MINIMUM,
                                "24"),
                        "80",
                        "28",
                        NOT_MEASURED));
        assertThat(surroundings.moisture()).get().satisfies(moisture -> {
            assertThat(moisture.dewPointCelsius()).isCloseTo(24.23, within(0.005));
            assertThat(moisture.marginCelsius())
                    .get()
                    .satisfies(each -> assertThat(each).isCloseTo(-1.23, within(0.005)));
            assertThat(moisture.humidityPercentAt().get(Quantity.BASKING_SURFACE))
                    .isCloseTo(53.7, within(0.05));
        });
        assertThat(codes(surroundings))
                .contains("humidity-above", "surface-wet", "surface-mould", "night-wet")
                .doesNotContain("surface-nearly-wet");
    }

    /** By hand: 30 °C at 60 % has its dew point at 21.39 °C; 80 % is reached at about 25.1 °C. */
    @Test
    void warnsBeforeWaterSettles() {
        assertThat(codes(wall("23.3"))).containsExactly("surface-nearly-wet", "surface-mould");
        assertThat(codes(wall("24"))).containsExactly("surface-mould");
        assertThat(codes(wall("26"))).isEmpty();
    }

    private static Surroundings wall(String celsius) {
        return judge(SALVATOR, reading(Map.of(Quantity.COLDEST_SURFACE, celsius), "60", "30", NOT_MEASURED));
    }

    @Test
    void worksOutNoHumidityWhereTheEquationsDoNotHold() {
        Surroundings surroundings =
                judge(SALVATOR, reading(Map.of(Quantity.BASKING_SURFACE, "65"), "60", "30", NOT_MEASURED));
        assertThat(surroundings.moisture().orElseThrow().humidityPercentAt()).isEmpty();
        assertThat(judge(SALVATOR, reading(Map.of(), "10", "61", NOT_MEASURED)).moisture())
                .isEmpty();
    }

    @Test
    void refusesAHumidityOfNothing() {
        assertThatIllegalArgumentException().isThrownBy(() -> reading(Map.of(), "0", "30", NOT_MEASURED));
        assertThatIllegalArgumentException().isThrownBy(() -> reading(Map.of(), "100.1", "30", NOT_MEASURED));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> reading(Map.of(Quantity.GRADIENT, "3"), null, null, NOT_MEASURED));
    }

    // ---- light

    @Test
    void saysWhatTheLightIsAndWhetherItIsSafe() {
        Surroundings fine = light("3.0");
        assertThat(fine.uv().orElseThrow().zones()).containsExactly(2, 3);
        assertThat(codes(fine)).isEmpty();
        assertThat(codes(light("1.0"))).containsExactly("uv-below");
        assertThat(codes(light("7.9"))).containsExactly("uv-above");
        assertThat(codes(light("8"))).containsExactly("uv-unsafe", "uv-above");
        Surroundings unknown = judge("Varanus prasinus", reading(Map.of(), null, null, new BigDecimal("1.0")));
        assertThat(unknown.signs()).isEmpty();
        assertThat(unknown.uv().orElseThrow().species()).isEmpty();
    }

    private static Surroundings light(String index) {
        return judge(SALVATOR, reading(Map.of(), null, null, new BigDecimal(index)));
    }

    // ---- cautions

    @Test
    void saysTheCautionsOfWhatIsWrongOrUnknown() {
        assertThat(cautions(Map.of()))
                .contains("measure-the-surface", "fire", "guard-the-lamp", "cables", "mesh-takes-light")
                .doesNotContain("spot-lamp", "eye-level", "offer-water");
        assertThat(cautions(Map.of("lamp", "spot", "lamp-guarded", "yes", "cables-out-of-reach", "yes")))
                .contains("measure-the-surface", "fire", "spot-lamp")
                .doesNotContain("guard-the-lamp", "cables");
    }

    private static List<String> cautions(Map<String, String> facts) {
        return judge(SALVATOR, new EnclosureReading(Map.of(), null, null, facts)).cautions().stream()
                .map(HusbandryRules.Caution::id)
                .toList();
    }

    // ---- laws

    @Test
    void givesNoMoreThanOneStandingAndSignsOnlyWithAReason() {
        Random random = new Random(64);
        for (int i = 0; i < 2000; i++) {
            Map<Quantity, String> values = new EnumMap<>(Quantity.class);
            for (Quantity each : Quantity.values()) {
                if (each.place().isPresent() && random.nextBoolean()) {
                    values.put(each, BigDecimal.valueOf(random.nextInt(500), 1).toPlainString());
                }
            }
            Surroundings surroundings = juvenile(values);
            for (Surroundings.Judged each : surroundings.quantities()) {
                boolean out = each.standing() == Surroundings.Standing.BELOW
                        || each.standing() == Surroundings.Standing.ABOVE;
                assertThat(out)
                        .isEqualTo(codes(surroundings).contains(each.quantity().code() + "-below")
                                || codes(surroundings).contains(each.quantity().code() + "-above"));
                if (out) {
                    assertThat(each.ranges())
                            .filteredOn(Surroundings.BesideRange::applies)
                            .allSatisfy(range -> assertThat(range.side())
                                    .hasToString(each.standing().name()));
                }
            }
        }
    }

    private static Surroundings juvenile(Map<Quantity, String> celsius) {
        return judge(SALVATOR, reading(celsius, null, null, NOT_MEASURED));
    }

    private static Surroundings judge(String species, EnclosureReading reading) {
        return Surroundings.of(reading, species, "juvenile", RULES);
    }

    private static EnclosureReading reading(
            Map<Quantity, String> celsius, @Nullable String percent, @Nullable String at, BigDecimal uv) {
        Map<Quantity, Temperature> temperatures = new EnumMap<>(Quantity.class);
        celsius.forEach((quantity, value) -> temperatures.put(quantity, celsius(value)));
        return new EnclosureReading(
                temperatures,
                percent == null || at == null
                        ? null
                        : new EnclosureReading.Humidity(new BigDecimal(percent), celsius(at)),
                uv.signum() < 0 ? null : uv,
                Map.of());
    }

    private static Temperature celsius(String value) {
        return new Temperature(new BigDecimal(value), TemperatureUnit.CELSIUS);
    }

    private static Surroundings.Judged judged(Surroundings surroundings, Quantity quantity) {
        return surroundings.quantities().stream()
                .filter(each -> each.quantity() == quantity)
                .findFirst()
                .orElseThrow();
    }

    private static List<String> codes(Surroundings surroundings) {
        return surroundings.signs().stream().map(HusbandryRules.Sign::code).toList();
    }
}
