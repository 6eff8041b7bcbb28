package varanid.intake.infection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.apache.commons.math3.distribution.HypergeometricDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Exact integers: recomputed in Python and R (epiR 2.0.57, RSurveillance forms); approximations live here only. */
class ConsignmentSamplingTest {

    private static final double[] PREVALENCES = {.01, .02, .05, .10, .20, .30, .50};

    private static int[] sizes(int animals, double confidence) {
        return Arrays.stream(PREVALENCES)
                .mapToInt(prevalence -> number(
                        ConsignmentSampling.atPrevalence(animals, prevalence, 1).sampleSize(confidence)))
                .toArray();
    }

    private static int number(SampleSize size) {
        assertThat(size).isInstanceOf(SampleSize.Animals.class);
        return ((SampleSize.Animals) size).number();
    }

    private static int sampleSize(int animals, int infected, double sensitivity) {
        return number(new ConsignmentSampling(animals, infected, sensitivity).sampleSize(.95));
    }

    @ParameterizedTest
    @CsvSource({
        "10, 10 10 10 10 8 6 4",
        "20, 19 19 19 16 10 7 4",
        "30, 29 29 23 19 11 8 4",
        "40, 38 38 31 21 12 8 5",
        "50, 48 48 31 22 12 8 5",
        "60, 57 47 38 23 12 8 5",
        "70, 67 54 37 24 13 8 5",
        "80, 76 62 42 24 13 8 5",
        "90, 86 70 40 25 13 8 5",
        "100, 95 78 45 25 13 9 5",
        "120, 93 76 47 26 13 9 5",
        "160, 124 84 49 27 13 9 5",
        "200, 155 105 51 27 13 9 5",
        "300, 189 117 54 28 14 9 5",
        "500, 225 129 56 28 14 9 5",
        "1000, 258 138 57 29 14 9 5",
        "2000, 277 143 58 29 14 9 5",
        "5000, 290 147 59 29 14 9 5",
        "10000, 294 148 59 29 14 9 5"
    })
    void samplesExactlySoManyFor95Percent(int animals, String row) {
        assertThat(sizes(animals, .95)).containsExactly(ints(row));
    }

    @ParameterizedTest
    @CsvSource({
        "10, 10 10 10 10 9 7 5",
        "20, 20 20 20 18 13 10 6",
        "50, 50 50 39 29 17 12 7",
        "100, 99 90 59 36 19 13 7",
        "500, 300 183 83 42 21 13 7"
    })
    void samplesExactlySoManyFor99Percent(int animals, String row) {
        assertThat(sizes(animals, .99)).containsExactly(ints(row));
    }

    @Test
    void samplesSoManyOfAGroupWithoutEnd() {
        assertThat(Arrays.stream(PREVALENCES)
                        .mapToInt(p -> number(ConsignmentSampling.sampleSizeWithoutEnd(p, 1, .95))))
                .containsExactly(299, 149, 59, 29, 14, 9, 5);
        assertThat(Arrays.stream(PREVALENCES)
                        .mapToInt(p -> number(ConsignmentSampling.sampleSizeWithoutEnd(p, 1, .99))))
                .containsExactly(459, 228, 90, 44, 21, 13, 7);
        // textbook anchor: 10 %, 90 %, large herd
        assertThat(number(ConsignmentSampling.sampleSizeWithoutEnd(.10, 1, .90)))
                .isEqualTo(22);
        assertThat(ConsignmentSampling.sampleSizeWithoutEnd(.1, 0, .95)).isEqualTo(new SampleSize.NotReachable(0));
    }

    /** Aquatic practice of 150, 60 and 30 animals for 2, 5 and 10 %: these numbers, rounded. */
    @Test
    void agreesWithTheRoundNumbersOfAquaticPractice() {
        assertThat(number(ConsignmentSampling.sampleSizeWithoutEnd(.02, 1, .95)))
                .isEqualTo(149);
        assertThat(number(ConsignmentSampling.sampleSizeWithoutEnd(.05, 1, .95)))
                .isEqualTo(59);
        assertThat(number(ConsignmentSampling.sampleSizeWithoutEnd(.10, 1, .95)))
                .isEqualTo(29);
    }

    @ParameterizedTest
    @CsvSource({
        "10, 2, 1, 8",
        "10, 2, .9, 9",
        "10, 2, .8, 10",
        "50, 5, 1, 22",
        "50, 5, .9, 25",
        "50, 5, .8, 28",
        "50, 5, .7, 32",
        "50, 5, .5, 45",
        "100, 10, 1, 25",
        "100, 10, .9, 28",
        "100, 10, .8, 32",
        "100, 10, .7, 36",
        "100, 10, .5, 52",
        "500, 5, .5, 451",
        "500, 5, .6, 376",
        "500, 5, .7, 322",
        "500, 5, .8, 281",
        "500, 5, .9, 250",
        "500, 5, .99, 227",
        "500, 5, 1, 225"
    })
    void samplesMoreWithATestThatMisses(int animals, int infected, double sensitivity, int number) {
        assertThat(sampleSize(animals, infected, sensitivity)).isEqualTo(number);
    }

    /** Ceiling: 1 - .3 x .3 = .91. */
    @Test
    void saysSoWhereEvenAllAnimalsAreNotEnough() {
        assertThat(new ConsignmentSampling(10, 2, .7).sampleSize(.95))
                .isInstanceOfSatisfying(
                        SampleSize.NotReachable.class,
                        answer -> assertThat(answer.ceiling()).isCloseTo(.91, within(1e-12)));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 5, 60, 1000})
    void oneInfectedAnimalIsNeverFoundSurelyByATestBelowTheConfidence(int animals) {
        assertThat(new ConsignmentSampling(animals, 1, .949).sampleSize(.95))
                .isInstanceOf(SampleSize.NotReachable.class);
        assertThat(sampleSize(animals, 1, .95)).isEqualTo(animals);
    }

    @ParameterizedTest
    @CsvSource({
        "6, 1, 6, .8, .8",
        "6, 1, 3, 1, .5",
        "12, 2, 6, 1, .772727",
        "12, 2, 6, .8, .654545",
        "20, 2, 10, .7, .583947",
        "20, 4, 10, .7, .837698",
        "30, 3, 15, .9, .845147"
    })
    void detectsInASmallConsignmentAsRecomputed(
            int animals, int infected, int sampled, double sensitivity, double probability) {
        assertThat(new ConsignmentSampling(animals, infected, sensitivity).detection(sampled))
                .isCloseTo(probability, within(5e-7));
    }

    /** Cannon 2001 as RSurveillance has it: errs low in small consignments, so it is a bound and no oracle. */
    @ParameterizedTest
    @CsvSource({
        "12, 2, 6, 1, .75",
        "12, 2, 6, .8, .64",
        "20, 2, 10, .7, .5775",
        "20, 4, 10, .7, .821494",
        "30, 3, 15, .9, .833625"
    })
    void theUsualApproximationIsALowerBound(
            int animals, int infected, int sampled, double sensitivity, double approximation) {
        double cannon2001 = 1 - Math.pow(1 - sensitivity * sampled / animals, infected);
        assertThat(cannon2001).isCloseTo(approximation, within(5e-7));
        assertThat(new ConsignmentSampling(animals, infected, sensitivity).detection(sampled))
                .isGreaterThan(cannon2001);
    }

    /** Printed by the RSurveillance manual and reproduced with epiR: 1 %, 95 %; the exact answers differ by one. */
    @Test
    void thePublishedClosedFormIsOneAnimalOff() {
        assertThat(cannon2001(500, 5, 1)).isEqualTo(226);
        assertThat(sampleSize(500, 5, 1)).isEqualTo(225);
        int[] published = {95, 226, 259, 291, 296, 300};
        int[] animals = {100, 500, 1000, 5000, 10000, 100000};
        for (int i = 0; i < animals.length; i++) {
            assertThat(cannon2001(animals[i], animals[i] / 100, 1)).isEqualTo(published[i]);
        }
        double[] sensitivities = {.5, .6, .7, .8, .9, .99, 1};
        int[] closed = {451, 376, 322, 282, 251, 228, 226};
        for (int i = 0; i < closed.length; i++) {
            assertThat(cannon2001(500, 5, sensitivities[i])).isEqualTo(closed[i]);
        }
    }

    /** Cannon and Roe 1982, their direct calculation for 1600 animals, 1 %, 99 %: 399. */
    @Test
    void agreesWithThePublishedDirectCalculation() {
        assertThat(Math.ceil((1 - Math.pow(.01, 1 / 16.0)) * (1600 - 15 / 2.0))).isEqualTo(399);
        assertThat(number(new ConsignmentSampling(1600, 16, 1).sampleSize(.99))).isEqualTo(399);
    }

    /** MacDiarmid 1988 form (from memory): right or one low. */
    @Test
    void anotherClosedFormIsOneLowInPlaces() {
        assertThat(macDiarmid(500, 5, .8)).isEqualTo(281).isEqualTo(sampleSize(500, 5, .8));
        assertThat(macDiarmid(500, 5, .6)).isEqualTo(375).isEqualTo(sampleSize(500, 5, .6) - 1);
        assertThat(macDiarmid(100, 10, .8)).isEqualTo(32).isEqualTo(sampleSize(100, 10, .8));
    }

    /** commons-math3 3.6.1: 224 of 500 give .949582, 225 give .950495. */
    @Test
    void anotherLibraryFindsTheSameEdge() {
        for (int sampled : new int[] {224, 225}) {
            double missed = new HypergeometricDistribution(500, 5, sampled).probability(0);
            assertThat(new ConsignmentSampling(500, 5, 1).detection(sampled)).isCloseTo(1 - missed, within(1e-10));
        }
        assertThat(new ConsignmentSampling(500, 5, 1).detection(224)).isCloseTo(.949582, within(5e-7));
        assertThat(new ConsignmentSampling(500, 5, 1).detection(225)).isCloseTo(.950495, within(5e-7));
    }

    @Test
    void growsWithTheConsignmentWhileTheNumberOfInfectedStays() {
        for (int infected : new int[] {1, 2, 5}) {
            int before = 0;
            for (int animals = infected; animals <= 120; animals++) {
                int size = sampleSize(animals, infected, 1);
                assertThat(size).isGreaterThanOrEqualTo(before);
                before = size;
            }
        }
    }

    /** 48 of 50 but 47 of 60 at 2 %: one infected animal there, two here. */
    @Test
    void dipsWhereTheNumberOfInfectedStepsUp() {
        assertThat(number(ConsignmentSampling.atPrevalence(50, .02, 1).sampleSize(.95)))
                .isEqualTo(48);
        assertThat(number(ConsignmentSampling.atPrevalence(60, .02, 1).sampleSize(.95)))
                .isEqualTo(47);
    }

    @Test
    void roundsInfectedAnimalsUpButNotForACrumb() {
        assertThat(ConsignmentSampling.atPrevalence(100, .07, 1).infected()).isEqualTo(7);
        assertThat(ConsignmentSampling.atPrevalence(101, .07, 1).infected()).isEqualTo(8);
        assertThat(ConsignmentSampling.atPrevalence(3, .01, 1).infected()).isEqualTo(1);
        assertThat(ConsignmentSampling.atPrevalence(1, 1e-12, 1).infected()).isEqualTo(1);
    }

    @Test
    void refusesNumbersThatDoNotFit() {
        assertThatIllegalArgumentException().isThrownBy(() -> new ConsignmentSampling(0, 1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new ConsignmentSampling(5, 6, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new ConsignmentSampling(5, 0, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new ConsignmentSampling(5, 1, 1.5));
        assertThatIllegalArgumentException().isThrownBy(() -> new ConsignmentSampling(5, 1, 1).detection(6));
        assertThatIllegalArgumentException().isThrownBy(() -> new ConsignmentSampling(5, 1, 1).sampleSize(1));
        assertThatIllegalArgumentException().isThrownBy(() -> ConsignmentSampling.atPrevalence(5, 0, 1));
    }

    private static int cannon2001(int animals, int infected, double sensitivity) {
        return (int) Math.ceil(animals / sensitivity * (1 - Math.pow(.05, 1.0 / infected)));
    }

    private static int macDiarmid(int animals, int infected, double sensitivity) {
        return (int) Math.ceil(
                (1 - Math.pow(.05, 1.0 / infected)) * (animals - (sensitivity * infected - 1) / 2) / sensitivity);
    }

    private static int[] ints(String row) {
        return Arrays.stream(row.split(" ")).mapToInt(Integer::parseInt).toArray();
    }
}
