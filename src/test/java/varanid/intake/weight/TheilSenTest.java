package varanid.intake.weight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TheilSenTest {

    private static final double CONFIDENCE = 0.95;

    /** Sen 1968 (data from memory); slopes by hand, probability by R's cor.test: 2 · 1/5040. */
    private static final TheilSen SEN =
            line(new double[] {1, 2, 3, 4, 10, 12, 18}, new double[] {9, 15, 19, 20, 45, 55, 78});

    /**
     * Ranks of the ordered slopes that a 95 % interval runs between, from the exact null distribution of Kendall's S,
     * recomputed apart in Python; those for seven agree with scipy's.
     */
    @ParameterizedTest
    @CsvSource({
        "5, 10, 1, 10, 0.983",
        "6, 15, 2, 14, 0.983",
        "7, 21, 4, 18, 0.970",
        "8, 28, 6, 23, 0.969",
        "9, 36, 9, 28, 0.955",
        "10, 45, 12, 34, 0.953",
        "11, 55, 15, 41, 0.959",
        "12, 66, 19, 48, 0.955",
    })
    void keepsTheRanksOfTheExactDistribution(int points, int pairs, int low, int high, double coverage) {
        TheilSen line = random(new Random(points), points);
        assertThat(line.pairs()).isEqualTo(pairs);
        TheilSen.Interval interval = line.interval(CONFIDENCE).orElseThrow();
        assertThat(interval.lowRank()).isEqualTo(low);
        assertThat(interval.highRank()).isEqualTo(high);
        assertThat(interval.coverage()).isCloseTo(coverage, within(0.0005));
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4})
    void givesNoIntervalWithFewerThanFivePoints(int points) {
        assertThat(random(new Random(points), points).interval(CONFIDENCE)).isEmpty();
    }

    /** The greatest confidence that three and four points allow: 1 - 2/3! and 1 - 2/4!. */
    @Test
    void reachesNoMoreThanTwoThirdsWithThreePoints() {
        assertThat(1 - 2 * TheilSen.Kendall.of(3, List.of()).atMost(0)).isCloseTo(0.667, within(0.0005));
        assertThat(1 - 2 * TheilSen.Kendall.of(4, List.of()).atMost(0)).isCloseTo(0.917, within(0.0005));
    }

    @Test
    void reproducesTheExampleOfSen() {
        assertThat(SEN.pairs()).isEqualTo(21);
        assertThat(SEN.slope()).isEqualTo(4.0);
        assertThat(SEN.s()).isEqualTo(21);
        assertThat(2 * TheilSen.Kendall.of(7, List.of()).atMost(0)).isCloseTo(0.000396825, within(1e-9));
        TheilSen.Interval interval = SEN.interval(CONFIDENCE).orElseThrow();
        assertThat(interval.low()).isCloseTo(26.0 / 7, within(1e-12));
        assertThat(interval.high()).isCloseTo(35.0 / 8, within(1e-12));
    }

    /** The same data: the next tighter ranks, 5 and 17, cover only 93.1 %. */
    @Test
    void takesTheTighterIntervalOnlyForLessConfidence() {
        TheilSen.Interval interval = SEN.interval(0.93).orElseThrow();
        assertThat(interval.lowRank()).isEqualTo(5);
        assertThat(interval.low()).isEqualTo(3.75);
        assertThat(interval.high()).isCloseTo(4.1818, within(0.00005));
        assertThat(interval.coverage()).isCloseTo(0.931, within(0.0005));
    }

    /** Documentation of R's statpsych, function ci.theil: three x of 28 and two of 40, so 101 of 105 pairs. */
    @Test
    void reproducesAPublishedExampleWithTiesInX() {
        TheilSen line = line(
                new double[] {67, 28, 30, 28, 52, 40, 25, 37, 44, 10, 14, 20, 28, 40, 51},
                new double[] {21, 4, 9, 12, 35, 18, 10, 22, 24, 1, 6, 8, 13, 16, 19});
        assertThat(line.pairs()).isEqualTo(101);
        assertThat(line.slope()).isEqualTo(0.5);
        TheilSen.Interval interval = line.interval(CONFIDENCE).orElseThrow();
        assertThat(interval.low()).isCloseTo(0.3243243, within(5e-8));
        assertThat(interval.high()).isEqualTo(0.75);
    }

    /** After Helsel and Hirsch, Statistical Methods in Water Resources (data from memory): one wild value. */
    @Test
    void isNotMovedByOneWildValue() {
        TheilSen line = line(new double[] {1, 2, 3, 4, 5, 6, 7}, new double[] {1, 2, 3, 4, 5, 16, 7});
        assertThat(line.slope()).isEqualTo(1);
        assertThat(line.s()).isEqualTo(19);
        assertThat(line.s() / 21.0).isCloseTo(0.904762, within(5e-7));
        TheilSen.Interval interval = line.interval(CONFIDENCE).orElseThrow();
        assertThat(interval.low()).isEqualTo(1);
        assertThat(interval.high()).isEqualTo(3.5);
    }

    /** Weekly weighings of our own making, once after a meal; values recomputed apart in Python. */
    @Test
    void followsALosingAnimalPastOneMeal() {
        double[] days = {0, 7, 14, 21, 28, 35, 42};
        double[] grams = {412, 408, 405, 431, 396, 393, 388};
        TheilSen line = line(days, grams);
        assertThat(line.slope()).isCloseTo(-0.5714286, within(5e-8));
        assertThat(line.interval(CONFIDENCE)).get().satisfies(interval -> {
            assertThat(interval.low()).isCloseTo(-0.7142857, within(5e-8));
            assertThat(interval.high()).isCloseTo(-0.4285714, within(5e-8));
        });
    }

    /** Every order of five y against three equal x and two others, counted one by one. */
    @Test
    void countsTiesInXAsEveryArrangementWould() {
        double[] x = {1, 1, 1, 2, 3};
        int[] counts = new int[8];
        int[] total = {0};
        permutations(new double[] {1, 2, 3, 4, 5}, 0, y -> {
            int discordant = (line(x, y).pairs() - line(x, y).s()) / 2;
            counts[discordant]++;
            total[0]++;
        });
        TheilSen.Kendall kendall = TheilSen.Kendall.of(x);
        double sum = 0;
        for (int i = 0; i < counts.length; i++) {
            sum += counts[i];
            assertThat(kendall.atMost(i)).isCloseTo(sum / total[0], within(1e-12));
        }
        assertThat(sum).isEqualTo(120);
    }

    @Test
    void holdsItsOwnSlopeAndGrowsWithConfidence() {
        Random random = new Random(20261125);
        for (int i = 0; i < 300; i++) {
            TheilSen line = random(random, 5 + random.nextInt(12));
            TheilSen.Interval wide = line.interval(CONFIDENCE).orElseThrow();
            TheilSen.Interval narrow = line.interval(0.8).orElseThrow();
            assertThat(line.slope()).isBetween(wide.low(), wide.high());
            assertThat(wide.low()).isLessThanOrEqualTo(narrow.low());
            assertThat(wide.high()).isGreaterThanOrEqualTo(narrow.high());
            assertThat(wide.coverage()).isBetween(CONFIDENCE, 1.0);
        }
    }

    @Test
    void holdsTheIntervalOfEveryChoiceWithinTheBoundsOfY() {
        Random random = new Random(7);
        double[] x = IntStream.range(0, 8).asDoubleStream().toArray();
        for (int i = 0; i < 200; i++) {
            double[] y = random.doubles(8, 0, 10).toArray();
            double[] low = Arrays.stream(y).map(each -> each - 1).toArray();
            double[] high = Arrays.stream(y).map(each -> each + 1).toArray();
            double[] chosen = Arrays.stream(y)
                    .map(each -> each - 1 + 2 * random.nextDouble())
                    .toArray();
            TheilSen.Interval all = line(x, y).interval(CONFIDENCE, low, high).orElseThrow();
            TheilSen.Interval one = line(x, chosen).interval(CONFIDENCE).orElseThrow();
            assertThat(one.low()).isGreaterThanOrEqualTo(all.low());
            assertThat(one.high()).isLessThanOrEqualTo(all.high());
        }
    }

    @Test
    void doesNotCareForTheOrderOfThePoints() {
        List<Integer> order = new ArrayList<>(List.of(0, 1, 2, 3, 4, 5, 6));
        double[] x = {1, 2, 3, 4, 10, 12, 18};
        double[] y = {9, 15, 19, 20, 45, 55, 78};
        Collections.shuffle(order, new Random(3));
        TheilSen line = line(
                order.stream().mapToDouble(each -> x[each]).toArray(),
                order.stream().mapToDouble(each -> y[each]).toArray());
        assertThat(line.slope()).isEqualTo(SEN.slope());
        assertThat(line.intercept()).isEqualTo(SEN.intercept());
        assertThat(line.interval(CONFIDENCE)).isEqualTo(SEN.interval(CONFIDENCE));
    }

    @Test
    void refusesASlopeWithoutTwoDifferentX() {
        assertThatIllegalArgumentException().isThrownBy(() -> line(new double[] {3, 3}, new double[] {1, 2}));
    }

    private static TheilSen line(double[] x, double[] y) {
        return new TheilSen(x, y);
    }

    private static TheilSen random(Random random, int points) {
        return line(
                IntStream.range(0, points).asDoubleStream().toArray(),
                DoubleStream.generate(random::nextGaussian).limit(points).toArray());
    }

    private static void permutations(double[] values, int from, Consumer<double[]> each) {
        if (from == values.length) {
            each.accept(values.clone());
            return;
        }
        for (int i = from; i < values.length; i++) {
            swap(values, from, i);
            permutations(values, from + 1, each);
            swap(values, from, i);
        }
    }

    private static void swap(double[] values, int i, int j) {
        double kept = values[i];
        values[i] = values[j];
        values[j] = kept;
    }
}
