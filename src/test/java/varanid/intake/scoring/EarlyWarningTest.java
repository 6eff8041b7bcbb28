package varanid.intake.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A published human chart, scored item by item.
 *
 * <p>Source of the chart: Royal College of Physicians (2017), National Early Warning Score (NEWS) 2. Inputs of vector 1:
 * the FHIR emergency-care guide; of vectors 2 and 3: a published teaching case; the others are constructed. All expected
 * points are from the chart.
 */
class EarlyWarningTest {

    private static final List<String> ITEMS = List.of(
            "respiration", "saturation", "oxygen", "systolic-pressure", "pulse", "consciousness", "temperature");
    private static final List<String> LEVELS = List.of("low", "low-medium", "medium", "high");
    private static final List<String> AWAKE = List.of("alert", "new-confusion", "voice", "pain", "unresponsive");

    private final Checklist checklist = TestChecklists.EARLY_WARNING;
    private final Scorer scorer = new Scorer(checklist);

    @ParameterizedTest(name = "vector {0}")
    @CsvSource({
        "1,   21, 93, air,    120, 95,  alert,         37.5, scale-1, 2 2 0 0 1 0 0, 5,  medium",
        "2,   30, 98, oxygen, 155, 119, new-confusion, 36.2, scale-2, 3 3 2 0 2 3 0, 13, high",
        "3,   30, 98, oxygen, 155, 119, new-confusion, 36.2, scale-1, 3 0 2 0 2 3 0, 10, high",
        "5,   16, 97, air,    125, 70,  alert,         37.0, scale-1, 0 0 0 0 0 0 0, 0,  low",
        "6,   25, 97, air,    125, 70,  alert,         37.0, scale-1, 3 0 0 0 0 0 0, 3,  low-medium",
        "7,   16, 97, air,    125, 70,  new-confusion, 37.0, scale-1, 0 0 0 0 0 3 0, 3,  low-medium",
        "8,   21, 95, air,    125, 95,  alert,         37.0, scale-1, 2 1 0 0 1 0 0, 4,  low",
        "9,   21, 94, air,    125, 95,  alert,         38.5, scale-1, 2 1 0 0 1 0 1, 5,  medium",
        "10,  22, 93, air,    108, 95,  alert,         37.0, scale-1, 2 2 0 1 1 0 0, 6,  medium",
        "11,  24, 93, air,    98,  92,  alert,         37.0, scale-1, 2 2 0 2 1 0 0, 7,  high",
        "12,  20, 88, air,    130, 90,  alert,         37.0, scale-2, 0 0 0 0 0 0 0, 0,  low",
        "13,  20, 88, air,    130, 90,  alert,         37.0, scale-1, 0 3 0 0 0 0 0, 3,  low-medium",
        "14,  20, 97, oxygen, 130, 90,  alert,         37.0, scale-2, 0 3 2 0 0 0 0, 5,  medium",
        "15a, 20, 93, air,    130, 90,  alert,         37.0, scale-2, 0 0 0 0 0 0 0, 0,  low",
        "15b, 20, 93, oxygen, 130, 90,  alert,         37.0, scale-2, 0 1 2 0 0 0 0, 3,  low",
        "16,  8,  91, oxygen, 90,  131, unresponsive,  35.0, scale-1, 3 3 2 3 3 3 3, 20, high",
        "17,  16, 97, air,    125, 70,  alert,         39.1, scale-1, 0 0 0 0 0 0 2, 2,  low",
    })
    void givesEachItemThePointsOfTheChart(
            String vector,
            String respiration,
            String saturation,
            String oxygen,
            String pressure,
            String pulse,
            String consciousness,
            String temperature,
            String scale,
            String points,
            String total,
            String level) {
        Result result =
                score(patient(respiration, saturation, oxygen, pressure, pulse, consciousness, temperature), scale);

        assertThat(String.join(" ", itemPoints(result).values()))
                .as("points of vector " + vector)
                .isEqualTo(points);
        assertThat(result.score().lowest()).isEqualByComparingTo(total);
        assertThat(result.score().highest()).isEqualByComparingTo(total);
        assertThat(result.urgency().lowest()).isEqualTo(level);
        assertThat(result.urgency().recommended()).isEqualTo(level);
        assertThat(result.urgency().settled()).isTrue();
    }

    /** Vector 4: a published Norwegian FHIR example gives component scores 3, 3, 2, 3, 3, 3, 3 and the total 20. */
    @Test
    void addsThePublishedComponentsUpToThePublishedTotal() {
        Result result = score(patient("25", "91", "oxygen", "90", "131", "voice", "35.0"), "scale-1");

        assertThat(String.join(" ", itemPoints(result).values())).isEqualTo("3 3 2 3 3 3 3");
        assertThat(result.score().lowest()).isEqualByComparingTo("20");
        assertThat(result.score().maximum()).isEqualByComparingTo("20");
        assertThat(result.urgency().lowest()).isEqualTo("high");
    }

    /**
     * The FHIR emergency-care guide prints a total of 6 for these observations, with 1 point for 37.5 C. The chart gives
     * 36.1 to 38.0 no point. An outside total may be wrong: what is needed is to see item by item why.
     */
    @Test
    void showsItemByItemWhyAPublishedTotalIsWrong() {
        Result result = score(patient("21", "93", "air", "120", "95", "alert", "37.5"), "scale-1");

        Map<String, String> published = new LinkedHashMap<>();
        published.put("respiration", "2");
        published.put("saturation", "2");
        published.put("oxygen", "0");
        published.put("systolic-pressure", "0");
        published.put("pulse", "1");
        published.put("consciousness", "0");
        published.put("temperature", "1");
        Map<String, String> differing = new LinkedHashMap<>(published);
        itemPoints(result).forEach((item, points) -> differing.remove(item, points));

        assertThat(differing).containsOnlyKeys("temperature");
        assertThat(result.score().lowest()).isEqualByComparingTo("5").isNotEqualByComparingTo("6");
        assertThat(result.witnessLowest()).containsEntry("temperature", "normal");
    }

    @ParameterizedTest
    @CsvSource({"35.04, 3", "35.05, 1", "35.0, 3", "35.1, 1", "38.04, 0", "38.05, 1", "38.0, 0", "39.04, 1", "39.05, 2"
    })
    void roundsHalfUpInDecimalsToTheStepOfTheChart(String temperature, String points) {
        Result result = score(patient("16", "97", "air", "125", "70", "alert", temperature), "scale-1");

        assertThat(itemPoints(result)).containsEntry("temperature", points);
    }

    @ParameterizedTest
    @CsvSource({
        "respiration, 0, 3, low, low-medium",
        "saturation, 0, 3, low, low-medium",
        "oxygen, 0, 2, low, low",
        "systolic-pressure, 0, 3, low, low-medium",
        "pulse, 0, 3, low, low-medium",
        "consciousness, 0, 3, low, low-medium",
        "temperature, 0, 3, low, low-medium",
    })
    void boundsAMissingItemByTheLeastAndTheMostItCanBe(
            String missing, String least, String most, String lowest, String highest) {
        Map<String, Answer> answers = patient("16", "97", "air", "125", "70", "alert", "37.0");
        answers.remove(missing);
        Result result = score(answers, "scale-1");

        assertThat(result.score().lowest()).isEqualByComparingTo(least);
        assertThat(result.score().highest()).isEqualByComparingTo(most);
        assertThat(result.urgency().lowest()).isEqualTo(lowest);
        assertThat(result.urgency().highest()).isEqualTo(highest);
        assertThat(result.settling().looks()).isEqualTo(lowest.equals(highest) ? List.of() : List.of(missing));
    }

    @Test
    void spansTheWholeScaleWhenNothingIsKnown() {
        for (String scale : List.of("scale-1", "scale-2")) {
            Result result = score(Map.of(), scale);

            assertThat(result.score().lowest()).isEqualByComparingTo("0");
            assertThat(result.score().highest()).isEqualByComparingTo("20");
            assertThat(result.urgency().lowest()).isEqualTo("low");
            assertThat(result.urgency().highest()).isEqualTo("high");
        }
    }

    /** 93 percent is normal on air and 1 point on oxygen, which is itself worth 2: 0 or 3, never 1 or 2. */
    @Test
    void readsAValueInEveryWayThatAnUnknownOtherAnswerAllows() {
        Map<String, Answer> answers = patient("20", "93", "air", "130", "90", "alert", "37.0");
        answers.remove("oxygen");
        Result result = score(answers, "scale-2");

        assertThat(result.score().lowest()).isEqualByComparingTo("0");
        assertThat(result.score().highest()).isEqualByComparingTo("3");
        assertThat(result.witnessHighest()).containsEntry("oxygen", "oxygen").containsEntry("saturation", "over-1");
        assertThat(result.urgency().settled()).isTrue();
    }

    @Test
    void looksAtTheOtherAnswerFirstWhenThatIsWhatDecidesHowAValueIsRead() {
        Map<String, Answer> answers = patient("20", "97", "air", "130", "90", "alert", "37.0");
        answers.remove("oxygen");
        Result result = score(answers, "scale-2");

        assertThat(result.urgency().highest()).isEqualTo("medium");
        assertThat(result.next()).extracting(Result.NextLook::finding).containsExactly("oxygen");
        assertThat(result.settling().looks()).containsExactly("oxygen");
    }

    @Test
    void agreesWithTheChartOnEveryInputOfEachItem() {
        for (int rr = 0; rr <= 100; rr++) {
            agree(rr, 97, false, 125, 70, 0, 370, false);
        }
        for (int saturation = 0; saturation <= 100; saturation++) {
            for (int variant = 0; variant < 4; variant++) {
                agree(16, saturation, variant % 2 == 1, 125, 70, 0, 370, variant > 1);
            }
        }
        for (int n = 0; n <= 350; n++) {
            agree(16, 97, false, n, 70, 0, 370, false);
            agree(16, 97, false, 125, n, 0, 370, false);
        }
        for (int awake = 0; awake < AWAKE.size(); awake++) {
            agree(16, 97, false, 125, 70, awake, 370, false);
        }
        for (int tenths = 200; tenths <= 450; tenths++) {
            agree(16, 97, false, 125, 70, 0, tenths, false);
        }
    }

    @Test
    void agreesWithTheChartOnRandomPatients() {
        long seed = 20170101;
        Random random = new Random(seed);
        Circumstances[] scales = {circumstances("scale-1"), circumstances("scale-2")};
        for (int n = 0; n < TestChecklists.cases(); n++) {
            boolean scale2 = random.nextBoolean();
            boolean oxygen = random.nextBoolean();
            int rr = random.nextInt(45);
            int saturation = 75 + random.nextInt(26);
            int pressure = 60 + random.nextInt(190);
            int pulse = 20 + random.nextInt(150);
            int awake = random.nextInt(3) == 0 ? random.nextInt(AWAKE.size()) : 0;
            int tenths = 330 + random.nextInt(80);
            Map<String, Answer> answers = answers(rr, saturation, oxygen, pressure, pulse, awake, tenths);

            Decision decision = scorer.decide(scales[scale2 ? 1 : 0], answers);

            int[] points = pointsByTheChart(rr, saturation, oxygen, pressure, pulse, awake, tenths, scale2);
            if (!decision.lowestPoints().equals(BigDecimal.valueOf(total(points)))
                    || !decision.highest().equals(LEVELS.get(levelByTheChart(points)))
                    || !decision.lowest().equals(decision.highest())) {
                assertThat(decision.lowest() + " " + decision.lowestPoints())
                        .as("seed " + seed + ", patient " + n + ", scale 2: " + scale2 + ", " + answers)
                        .isEqualTo(LEVELS.get(levelByTheChart(points)) + " " + total(points));
            }
        }
    }

    private void agree(
            int rr, int saturation, boolean oxygen, int pressure, int pulse, int awake, int tenths, boolean scale2) {
        Map<String, Answer> answers = answers(rr, saturation, oxygen, pressure, pulse, awake, tenths);
        Result result = score(answers, scale2 ? "scale-2" : "scale-1");
        int[] points = pointsByTheChart(rr, saturation, oxygen, pressure, pulse, awake, tenths, scale2);
        String itemised =
                String.join(" ", Arrays.stream(points).mapToObj(String::valueOf).toList());
        assertThat(String.join(" ", itemPoints(result).values()))
                .as(answers.toString())
                .isEqualTo(itemised);
        assertThat(result.score().lowest()).isEqualByComparingTo(BigDecimal.valueOf(total(points)));
        assertThat(result.urgency().lowest()).isEqualTo(LEVELS.get(levelByTheChart(points)));
        assertThat(result.urgency().highest()).isEqualTo(LEVELS.get(levelByTheChart(points)));
    }

    /** The chart a second time, without the scorer. */
    private static int[] pointsByTheChart(
            int rr, int sat, boolean oxygen, int bp, int pulse, int awake, int tenths, boolean scale2) {
        int low2 = sat <= 83 ? 3 : sat <= 85 ? 2 : sat <= 87 ? 1 : 0;
        int over2 = !oxygen || sat <= 92 ? 0 : sat <= 94 ? 1 : sat <= 96 ? 2 : 3;
        int scale1 = sat <= 91 ? 3 : sat <= 93 ? 2 : sat <= 95 ? 1 : 0;
        return new int[] {
            rr <= 8 ? 3 : rr <= 11 ? 1 : rr <= 20 ? 0 : rr <= 24 ? 2 : 3,
            scale2 ? low2 + over2 : scale1,
            oxygen ? 2 : 0,
            bp <= 90 ? 3 : bp <= 100 ? 2 : bp <= 110 ? 1 : bp <= 219 ? 0 : 3,
            pulse <= 40 ? 3 : pulse <= 50 ? 1 : pulse <= 90 ? 0 : pulse <= 110 ? 1 : pulse <= 130 ? 2 : 3,
            awake == 0 ? 0 : 3,
            tenths <= 350 ? 3 : tenths <= 360 ? 1 : tenths <= 380 ? 0 : tenths <= 390 ? 1 : 2
        };
    }

    private static int levelByTheChart(int[] points) {
        boolean anyThree = Arrays.stream(points).anyMatch(p -> p == 3);
        return total(points) >= 7 ? 3 : total(points) >= 5 ? 2 : anyThree ? 1 : 0;
    }

    private static int total(int[] points) {
        return Arrays.stream(points).sum();
    }

    private static Map<String, Answer> answers(
            int rr, int saturation, boolean oxygen, int pressure, int pulse, int awake, int tenths) {
        Map<String, Answer> answers = new HashMap<>();
        answers.put("respiration", exactly(rr, 0));
        answers.put("saturation", exactly(saturation, 0));
        answers.put("oxygen", Answer.seen(oxygen ? "oxygen" : "air"));
        answers.put("systolic-pressure", exactly(pressure, 0));
        answers.put("pulse", exactly(pulse, 0));
        answers.put("consciousness", Answer.seen(AWAKE.get(awake)));
        answers.put("temperature", exactly(tenths, 1));
        return answers;
    }

    private static Answer exactly(int unscaled, int decimals) {
        return Answer.Measured.exactly(BigDecimal.valueOf(unscaled, decimals));
    }

    private static Map<String, Answer> patient(
            String respiration,
            String saturation,
            String oxygen,
            String pressure,
            String pulse,
            String consciousness,
            String temperature) {
        Map<String, Answer> answers = new HashMap<>();
        answers.put("respiration", Answer.measured(respiration));
        answers.put("saturation", Answer.measured(saturation));
        answers.put("oxygen", Answer.seen(oxygen));
        answers.put("systolic-pressure", Answer.measured(pressure));
        answers.put("pulse", Answer.measured(pulse));
        answers.put("consciousness", Answer.seen(consciousness));
        answers.put("temperature", Answer.measured(temperature));
        return answers;
    }

    private Circumstances circumstances(String scale) {
        return Circumstances.of(checklist, Map.of("saturationScale", scale), Set.of(), Set.of());
    }

    private Result score(Map<String, Answer> answers, String scale) {
        return scorer.score(new Look(answers, Map.of("saturationScale", scale), Set.of()));
    }

    /** The points of each item in the order of the chart, as the reasons give them. */
    private static Map<String, String> itemPoints(Result result) {
        Map<String, String> points = new LinkedHashMap<>();
        ITEMS.forEach(item -> points.put(item, "0"));
        result.reasons().stream()
                .filter(reason -> reason.kind() == Result.Reason.Kind.LEVEL)
                .forEach(reason ->
                        points.put(String.valueOf(reason.id()), reason.points().toPlainString()));
        return points;
    }
}
