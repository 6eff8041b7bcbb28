package varanid.intake.enclosure;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import varanid.intake.measures.Temperature;
import varanid.intake.measures.TemperatureUnit;

class LatestReadingsTest {

    private static final HusbandryRules RULES = new HusbandryReference().rules();
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 20);

    @Test
    void takesTheLatestOfEachQuantityAndKeepsTheOthers() {
        LatestReadings latest = latest(
                temperatures(5, "warm-air", "31", "cool-air", "28"),
                temperatures(2, "warm-air", "33"),
                fact(1, "flood"));
        assertThat(latest.findTemperature(Quantity.WARM_AIR).orElseThrow()).satisfies(each -> {
            assertThat(each.value().celsius()).isEqualByComparingTo("33");
            assertThat(each.ageDays()).isEqualTo(2);
        });
        assertThat(latest.findTemperature(Quantity.COOL_AIR).orElseThrow().ageDays())
                .isEqualTo(5);
        assertThat(latest.findFact("lamp").orElseThrow().value()).isEqualTo("flood");
        assertThat(latest.isEmpty()).isFalse();
    }

    @Test
    void leavesAsideWhatWasReadAfterTheDay() {
        LatestReadings latest = latest(temperatures(1, "warm-air", "31"), temperatures(-1, "warm-air", "20"));
        assertThat(latest.findTemperature(Quantity.WARM_AIR)
                        .orElseThrow()
                        .value()
                        .celsius())
                .isEqualByComparingTo("31");
        assertThat(latest(temperatures(-1, "warm-air", "20")).isEmpty()).isTrue();
    }

    /** Seven days for temperatures, its own day for skin: our own proposals, in the data. */
    @ParameterizedTest
    @CsvSource({"warm-air, 7, false", "warm-air, 8, true", "skin, 0, false", "skin, 1, true"})
    void marksWhatIsOlderThanItSpeaks(String code, int daysAgo, boolean stale) {
        LatestReadings latest = latest(temperatures(daysAgo, code, "30"));
        assertThat(latest.find(code).orElseThrow().stale()).isEqualTo(stale);
        assertThat(latest.hasStale()).isEqualTo(stale);
    }

    @Test
    void explainsNoAnswerOfTodayByAnOldReading() {
        Surroundings old = judge(latest(temperatures(8, "warm-air", "20", "skin", "20")));
        assertThat(codes(old)).containsExactly("warm-air-below");
        assertThat(old.staleSigns()).containsExactly("warm-air-below");
        assertThat(old.lessCertain()).isEmpty();
        assertThat(old.lookConditions()).isEmpty();
        Surroundings fresh = judge(latest(temperatures(0, "warm-air", "20", "skin", "20")));
        assertThat(codes(fresh)).containsExactly("warm-air-below");
        assertThat(fresh.staleSigns()).isEmpty();
        assertThat(fresh.lessCertain()).containsKey("dull");
        assertThat(fresh.lookConditions()).containsExactly("cold");
    }

    /** A hot spot as keepers use it needs the cool end at 30 °C or less: measured now, not a month ago. */
    @Test
    void letsNoHotSpotThroughByAnOldReadingOfTheCoolEnd() {
        Surroundings beside =
                judge(latest(temperatures(1, "cool-air", "29"), temperatures(0, "basking-surface", "52")));
        assertThat(codes(beside)).isEmpty();
        Surroundings old = judge(latest(temperatures(30, "cool-air", "29"), temperatures(0, "basking-surface", "52")));
        assertThat(codes(old)).containsExactly("basking-surface-above", "basking-surface-held-back");
        assertThat(old.staleSigns()).isEmpty();
        assertThat(old.quantities())
                .filteredOn(each -> each.quantity() == Quantity.BASKING_SURFACE)
                .extracting(Surroundings.Judged::standing)
                .containsExactly(Surroundings.Standing.ABOVE);
    }

    @Test
    void callsAGradientStaleWhereOneEndIs() {
        Surroundings surroundings = judge(latest(temperatures(9, "warm-air", "29"), temperatures(0, "cool-air", "28")));
        assertThat(codes(surroundings)).containsExactly("gradient-below");
        assertThat(surroundings.staleSigns()).containsExactly("gradient-below");
    }

    @Test
    void judgesByAnUnlikelyTemperatureThatSomebodyStandsBy() {
        Surroundings burning = judge(latest(reading(
                0,
                Map.of(
                        "basking-surface",
                        new GivenReading.GivenTemperature(new BigDecimal("85"), "Cel", new BigDecimal("85"), true)),
                Map.of())));
        assertThat(burning.probablyFahrenheit()).isEmpty();
        assertThat(codes(burning)).contains("basking-surface-above");
    }

    @Test
    void asksFirstForWhatIsMostUseful() {
        assertThat(latest().listUnknown()).hasSameSizeAs(RULES.measureNext());
        assertThat(latest().listUnknown().get(0).id()).isEqualTo("cool-air");
        assertThat(latest(temperatures(0, "cool-air", "28"))
                        .listUnknown()
                        .get(0)
                        .id())
                .isEqualTo("basking-surface");
        assertThat(latest(temperatures(8, "cool-air", "28")).listUnknown().get(0))
                .isEqualTo(new LatestReadings.Unknown("cool-air", LatestReadings.Why.STALE));
        assertThat(latest(fact(0, "unknown")).listUnknown())
                .contains(new LatestReadings.Unknown("lamp", LatestReadings.Why.SAID_UNKNOWN));
        assertThat(latest(fact(0, "flood")).listUnknown())
                .extracting(LatestReadings.Unknown::id)
                .doesNotContain("lamp");
    }

    @Test
    void hasATextForEverythingThatItAsksFor() {
        assertThat(RULES.measureNext())
                .allSatisfy(id -> assertThat(RULES.question(id)).isNotBlank());
        for (Quantity each : Quantity.values()) {
            assertThat(RULES.measureNext().contains(each.code())).isEqualTo(each != Quantity.GRADIENT);
        }
    }

    private static LatestReadings latest(KeptReading... readings) {
        return new LatestReadings(List.of(readings), TODAY, RULES);
    }

    private static Surroundings judge(LatestReadings latest) {
        return latest.judge("Varanus salvator", "juvenile");
    }

    private static List<String> codes(Surroundings surroundings) {
        return surroundings.signs().stream().map(HusbandryRules.Sign::code).toList();
    }

    private static KeptReading temperatures(int daysAgo, String code, String celsius) {
        return reading(daysAgo, Map.of(code, celsius(celsius)), Map.of());
    }

    private static KeptReading temperatures(
            int daysAgo, String code, String celsius, String otherCode, String otherCelsius) {
        return reading(daysAgo, Map.of(code, celsius(celsius), otherCode, celsius(otherCelsius)), Map.of());
    }

    private static KeptReading fact(int daysAgo, String lamp) {
        return reading(daysAgo, Map.of(), Map.of("lamp", lamp));
    }

    private static KeptReading reading(
            int daysAgo, Map<String, GivenReading.GivenTemperature> temperatures, Map<String, String> facts) {
        LocalDate date = TODAY.minusDays(daysAgo);
        Instant noon = date.atTime(12, 0).toInstant(ZoneOffset.UTC);
        return new KeptReading(
                UUID.randomUUID(), noon, date, new GivenReading(temperatures, null, null, facts, Map.of(), null));
    }

    private static GivenReading.GivenTemperature celsius(String value) {
        return GivenReading.GivenTemperature.of(new Temperature(new BigDecimal(value), TemperatureUnit.CELSIUS), false);
    }
}
