package varanid.intake.weight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static varanid.intake.weight.WeightFixture.START;
import static varanid.intake.weight.WeightFixture.weighed;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class WeightTrendTest {

    private static final WeightRules RULES = new WeightReference().rules();

    // ---- thresholds

    @Test
    void assertsALossWhenTheWholeIntervalIsPastIt() {
        WeightTrend trend = adult(weighed(0, "36"), weighed(7, "33"));
        assertThat(outcome(trend, "loss-5-in-7-days")).isEqualTo("past");
        assertThat(outcome(trend, "loss-10-in-30-days")).isEqualTo("cannot tell: [FINER_SCALE]");
        assertThat(outcome(trend, "loss-20")).isEqualTo("not past");
    }

    @Test
    void asksForAFinerScaleWhenTheScaleIsTooCoarse() {
        WeightTrend trend = adult(weighed(0, "36").step("5"), weighed(7, "33").step("5"));
        assertThat(outcome(trend, "loss-5-in-7-days")).isEqualTo("cannot tell: [FINER_SCALE]");
    }

    /** Exactly at the threshold is past it: on a scale of 0.0001 g, 100 g to 94.9999 g. */
    @Test
    void isPastAtTheThresholdItself() {
        assertThat(adult(weighed(0, "100").step("0.0001"), weighed(7, "94.9999").step("0.0001")))
                .satisfies(
                        trend -> assertThat(outcome(trend, "loss-5-in-7-days")).isEqualTo("past"));
        assertThat(adult(weighed(0, "100").step("0.0001"), weighed(7, "95.0001").step("0.0001")))
                .satisfies(
                        trend -> assertThat(outcome(trend, "loss-5-in-7-days")).isEqualTo("not past"));
    }

    @Test
    void looksOnlyAsFarBackAsTheThresholdSays() {
        WeightTrend trend = adult(weighed(0, "500"), weighed(31, "440"));
        assertThat(outcome(trend, "loss-10-in-30-days")).isEqualTo("cannot tell: [NO_REFERENCE]");
        assertThat(outcome(adult(weighed(1, "500"), weighed(31, "440")), "loss-10-in-30-days"))
                .isEqualTo("past");
    }

    @Test
    void findsTheLossFromAnyReferenceAndNamesIt() {
        Weighing heaviest = weighed(10, "500").make();
        WeightTrend trend = adult(weighed(0, "450"), weighed(10, "500"), weighed(14, "480"), weighed(20, "440"));
        assertThat(evidence(trend, "loss-10-in-30-days")
                        .<Weighing>fold(
                                two -> two.change().from(),
                                slope -> weighed(0, "1").make()))
                .isEqualTo(heaviest);
    }

    @Test
    void expectsGrowingAnimalsToGain() {
        WeightFixture[] same = {
            weighed(0, "60").step("0.1"), weighed(28, "59.8").step("0.1")
        };
        assertThat(outcome(trend("juvenile", same), "no-gain-in-28-days")).isEqualTo("past");
        assertThat(outcome(trend("unknown", same), "no-gain-in-28-days")).isEqualTo("past");
        assertThat(trend("adult", same).thresholds())
                .extracting(each -> each.threshold().id())
                .doesNotContain("no-gain-in-28-days");
        assertThat(outcome(trend("juvenile", weighed(0, "60"), weighed(28, "60")), "no-gain-in-28-days"))
                .isEqualTo("cannot tell: [FINER_SCALE]");
        assertThat(outcome(trend("juvenile", weighed(0, "60"), weighed(28, "66")), "no-gain-in-28-days"))
                .isEqualTo("not past");
        assertThat(outcome(trend("juvenile", weighed(0, "60"), weighed(27, "60")), "no-gain-in-28-days"))
                .isEqualTo("cannot tell: [NO_REFERENCE]");
    }

    // ---- gut and water

    @Test
    void doesNotAssertALossSinceAMeal() {
        WeightTrend trend = adult(weighed(0, "110").fed(71), weighed(7, "90"));
        assertThat(outcome(trend, "loss-10-in-30-days")).isEqualTo("cannot tell: [REFERENCE_FED]");
        assertThat(outcome(adult(weighed(0, "110").fed(72), weighed(7, "90")), "loss-10-in-30-days"))
                .isEqualTo("past");
    }

    @Test
    void doesNotAssertALossSinceItWasWet() {
        assertThat(outcome(adult(weighed(0, "110").whenWet(), weighed(7, "90")), "loss-10-in-30-days"))
                .isEqualTo("cannot tell: [REFERENCE_WET]");
    }

    @Test
    void assertsALossThatShowsDespiteAMeal() {
        WeightTrend trend = adult(weighed(0, "110"), weighed(7, "90").fed(3));
        assertThat(outcome(trend, "loss-10-in-30-days")).isEqualTo("past");
        assertThat(trend.caveats()).containsExactly(Caveat.LATEST_FED);
    }

    @Test
    void isNotReassuredByAFedOrWetAnimal() {
        assertThat(outcome(adult(weighed(0, "100"), weighed(7, "100").fed(3)), "loss-5-in-7-days"))
                .isEqualTo("cannot tell: [LATEST_FED]");
        assertThat(outcome(adult(weighed(0, "100"), weighed(7, "100").whenWet()), "loss-5-in-7-days"))
                .isEqualTo("cannot tell: [LATEST_WET]");
    }

    @Test
    void onlyRemarksThatNobodyKnowsTheLastMeal() {
        WeightTrend trend = adult(weighed(0, "110").fed(null), weighed(7, "90"));
        assertThat(outcome(trend, "loss-10-in-30-days")).isEqualTo("past");
        assertThat(trend.caveats()).containsExactly(Caveat.FOOD_UNKNOWN);
    }

    // ---- scales

    @Test
    void comparesNothingOverAChangeOfScale() {
        WeightTrend trend = adult(weighed(0, "110"), weighed(7, "90").on("clinic"));
        assertThat(trend.changes()).isEmpty();
        assertThat(outcome(trend, "loss-10-in-30-days")).isEqualTo("cannot tell: [SCALE_CHANGED]");
        assertThat(trend.answer()).isEqualTo(new TrendAnswer.NotObserved(List.of(Caveat.SCALE_CHANGED)));
    }

    /** By hand: 100 g on the kitchen scale is 103 g on the clinic's, and 92.7 g there is a loss of a tenth. */
    @Test
    void comparesThroughASameDayPair() {
        WeightTrend trend = adult(
                weighed(0, "100").step("0.1"),
                weighed(5, "100").step("0.1"),
                weighed(5, "103").step("0.1").on("clinic").at(10),
                weighed(10, "92").step("0.1").on("clinic"));
        PercentChange first = trend.changes().get(0);
        assertThat(first.percent().doubleValue()).isCloseTo(100 * (92 - 103) / 103.0, within(1e-6));
        assertThat(first.caveats()).containsExactly(Caveat.THROUGH_PAIR);
        assertThat(first.highest().subtract(first.lowest()).doubleValue()).isGreaterThan(0.3);
        assertThat(outcome(trend, "loss-10-in-30-days")).isEqualTo("past");
        assertThat(trend.caveats()).contains(Caveat.THROUGH_PAIR);
    }

    @Test
    void takesNoPairOfADryAndAWetAnimal() {
        WeightTrend trend = adult(
                weighed(0, "100"),
                weighed(5, "100").whenWet(),
                weighed(5, "103").on("clinic").at(10),
                weighed(10, "92").on("clinic"));
        assertThat(trend.changes()).hasSize(1);
    }

    @Test
    void doesNotCompareAnUnknownScaleWithItself() {
        WeightTrend trend = adult(weighed(0, "110").on(null), weighed(7, "90").on(null));
        assertThat(outcome(trend, "loss-10-in-30-days")).isEqualTo("cannot tell: [SCALE_UNKNOWN]");
    }

    @Test
    void asksForTheStepOfTheScale() {
        WeightTrend trend = adult(weighed(0, "110").step(null), weighed(7, "90"));
        assertThat(outcome(trend, "loss-10-in-30-days")).isEqualTo("cannot tell: [RESOLUTION_UNKNOWN]");
    }

    // ---- slope

    /** Weekly weighings of our own making, once after a meal; values recomputed apart in Python. */
    @Test
    void followsALosingAnimalPastOneMeal() {
        WeightTrend trend = adult(
                weighed(0, "412"),
                weighed(7, "408"),
                weighed(14, "405"),
                weighed(21, "431").fed(4),
                weighed(28, "396"),
                weighed(35, "393"),
                weighed(42, "388"));
        WeightSlope slope = trend.slope().orElseThrow();
        assertThat(slope.percentPerDay()).isCloseTo(-0.142157, within(5e-7));
        assertThat(slope.interval()).get().satisfies(interval -> {
            assertThat(interval.lowest()).isCloseTo(-0.182918, within(5e-7));
            assertThat(interval.highest()).isCloseTo(-0.105430, within(5e-7));
            assertThat(interval.lowestWithRounding()).isLessThan(interval.lowest());
            assertThat(interval.highestWithRounding()).isGreaterThan(interval.highest());
        });
        assertThat(slope.heavy()).isEqualTo(1);
        assertThat(trend.caveats()).contains(Caveat.SLOPE_HOLDS_HEAVY);
    }

    @Test
    void showsASlopeFromThreeDaysAndAnIntervalFromFive() {
        List<WeightFixture> days = new ArrayList<>(
                List.of(weighed(0, "100"), weighed(2, "99"), weighed(2, "99").at(10)));
        assertThat(adult(days).slope()).isEmpty();
        days.add(weighed(4, "98"));
        assertThat(adult(days).slope())
                .get()
                .satisfies(slope -> assertThat(slope.interval()).isEmpty());
        days.add(weighed(6, "97"));
        assertThat(adult(days).slope().orElseThrow().interval()).isEmpty();
        days.add(weighed(8, "96"));
        assertThat(adult(days).slope().orElseThrow().interval()).isPresent();
    }

    /** Losing 0.44 % a day for four weeks, 11.6 % in all; a meal before the last weighing hides two of them. */
    @Test
    void assertsByTheSlopeWhatOneMealHides() {
        WeightFixture[] falling = new WeightFixture[15];
        for (int i = 0; i < falling.length; i++) {
            String grams = BigDecimal.valueOf(1000 * Math.exp(-0.0044 * 2 * i))
                    .setScale(0, RoundingMode.HALF_UP)
                    .toPlainString();
            falling[i] = weighed(2 * i, grams);
        }
        falling[14] = weighed(28, "905").fed(5);
        WeightTrend trend = adult(falling);
        assertThat(trend.changes())
                .noneSatisfy(each -> assertThat(each.highest()).isLessThan(new BigDecimal("-10")));
        assertThat(outcome(trend, "loss-10-in-30-days")).isEqualTo("past");
        assertThat(evidence(trend, "loss-10-in-30-days")).isInstanceOf(TrendEvidence.Slope.class);
        assertThat(measured(trend).highest().doubleValue()).isBetween(-11.6, -10.0);
    }

    @Test
    void assertsNothingByASlopeOfFedAnimals() {
        WeightFixture[] fed = new WeightFixture[8];
        for (int i = 0; i < fed.length; i++) {
            fed[i] = weighed(i, String.valueOf(200 - 4 * i)).fed(12);
        }
        assertThat(outcome(adult(fed), "loss-10-in-30-days")).startsWith("cannot tell");
    }

    // ---- the checklist's question

    @Test
    void answersWithTheTwoReadingsOfTheWorstLoss() {
        TrendAnswer.Measured answer = measured(adult(weighed(0, "500"), weighed(7, "430"), weighed(14, "445")));
        assertThat(answer.overDays()).isEqualTo(14);
        assertThat(answer.lowest().doubleValue()).isCloseTo(100 * (444.5 - 500.5) / 500.5, within(1e-5));
        assertThat(answer.highest().doubleValue()).isCloseTo(100 * (445.5 - 499.5) / 499.5, within(1e-5));
    }

    @Test
    void answersAQuickLossBeforeTheSecondWeighingIsDue() {
        assertThat(measured(adult(weighed(0, "500"), weighed(3, "440"))).overDays())
                .isEqualTo(3);
    }

    @Test
    void isNotYetDueInTheFirstWeek() {
        assertThat(adult(weighed(0, "500")).answer()).isEqualTo(new TrendAnswer.NotYetDue(START.plusDays(7)));
        assertThat(adult(weighed(0, "500"), weighed(6, "499")).answer())
                .isEqualTo(new TrendAnswer.NotYetDue(START.plusDays(7)));
    }

    @Test
    void couldNotTellWhereTheSecondWeighingIsMissingOrOld() {
        assertThat(asOf(8, weighed(0, "500")).answer())
                .isEqualTo(new TrendAnswer.NotObserved(List.of(Caveat.NO_REFERENCE)));
        WeightFixture[] two = {weighed(0, "500"), weighed(7, "400")};
        assertThat(measured(asOf(21, two)).overDays()).isEqualTo(7);
        assertThat(asOf(22, two).answer()).isEqualTo(new TrendAnswer.NotObserved(List.of(Caveat.STALE)));
    }

    @Test
    void leavesTheEndOpenThatAMealOrWaterHides() {
        TrendAnswer.Measured fedNow =
                measured(adult(weighed(0, "100"), weighed(7, "101").fed(2)));
        assertThat(fedNow.lowest()).isEqualByComparingTo("-90");
        assertThat(fedNow.highest()).isLessThan(new BigDecimal("3"));
        TrendAnswer.Measured fedThen = measured(adult(weighed(0, "100").fed(2), weighed(7, "101")));
        assertThat(fedThen.highest()).isEqualByComparingTo("300");
        assertThat(fedThen.lowest()).isGreaterThan(new BigDecimal("-1"));
    }

    @Test
    void speaksOnlyOfWhatWasKnownOnTheDay() {
        assertThat(WeightTrend.find(List.of(weighed(3, "100").make()), "adult", START.plusDays(2), RULES))
                .isEmpty();
        assertThat(asOf(3, weighed(0, "100"), weighed(3, "99"), weighed(4, "50"))
                        .latest())
                .isEqualTo(weighed(3, "99").make());
    }

    // ---- laws

    /** Order of the list, and a heavier reference, never hide a loss; a coarser scale never decides more. */
    @Test
    void keepsItsLawsOnRandomWeighings() {
        Random random = new Random(11);
        for (int i = 0; i < 400; i++) {
            int count = 2 + random.nextInt(6);
            List<WeightFixture> fine = new ArrayList<>();
            List<WeightFixture> coarse = new ArrayList<>();
            for (int k = 0; k < count; k++) {
                String grams = String.valueOf(5 * (20 + random.nextInt(8)));
                WeightFixture one = weighed(k * 3, grams);
                one = random.nextInt(5) == 0 ? one.fed(10) : one;
                fine.add(one);
                coarse.add(one.step("5"));
            }
            WeightTrend trend = adult(fine);
            List<WeightFixture> shuffled = new ArrayList<>(fine);
            Collections.shuffle(shuffled, random);
            assertThat(adult(shuffled)).isEqualTo(trend);
            WeightTrend blurred = adult(coarse);
            for (Judged each : blurred.thresholds()) {
                String id = each.threshold().id();
                if (!outcome(blurred, id).startsWith("cannot")) {
                    assertThat(outcome(trend, id)).isEqualTo(outcome(blurred, id));
                }
            }
            trend.thresholds()
                    .forEach(each -> each.<Boolean>fold(
                            past -> check(past.evidence()
                                            .highest()
                                            .compareTo(past.threshold().atMostPercent())
                                    <= 0),
                            notPast -> check(notPast.evidence()
                                            .lowest()
                                            .compareTo(notPast.threshold().atMostPercent())
                                    > 0),
                            cannotTell -> check(!cannotTell.why().isEmpty())));
        }
    }

    private static boolean check(boolean holds) {
        assertThat(holds).isTrue();
        return holds;
    }

    private static WeightTrend adult(List<WeightFixture> weighings) {
        return adult(weighings.toArray(new WeightFixture[0]));
    }

    private static WeightTrend adult(WeightFixture... weighings) {
        return trend("adult", weighings);
    }

    private static WeightTrend trend(String lifeStage, WeightFixture... weighings) {
        int last = Arrays.stream(weighings).mapToInt(WeightFixture::day).max().orElseThrow();
        return trend(lifeStage, last, weighings);
    }

    private static WeightTrend asOf(int day, WeightFixture... weighings) {
        return trend("adult", day, weighings);
    }

    private static WeightTrend trend(String lifeStage, int asOf, WeightFixture... weighings) {
        return WeightTrend.find(
                        Arrays.stream(weighings).map(WeightFixture::make).toList(),
                        lifeStage,
                        START.plusDays(asOf),
                        RULES)
                .orElseThrow();
    }

    private static Judged judged(WeightTrend trend, String threshold) {
        return trend.thresholds().stream()
                .filter(each -> each.threshold().id().equals(threshold))
                .findFirst()
                .orElseThrow();
    }

    private static String outcome(WeightTrend trend, String threshold) {
        return judged(trend, threshold)
                .fold(past -> "past", notPast -> "not past", cannotTell -> "cannot tell: " + cannotTell.why());
    }

    private static TrendEvidence evidence(WeightTrend trend, String threshold) {
        return judged(trend, threshold)
                .fold(
                        Judged.Past::evidence,
                        Judged.NotPast::evidence,
                        cannotTell -> cannotTell.evidence().orElseThrow());
    }

    private static TrendAnswer.Measured measured(WeightTrend trend) {
        assertThat(trend.answer()).isInstanceOf(TrendAnswer.Measured.class);
        return (TrendAnswer.Measured) trend.answer();
    }
}
