package varanid.intake.infection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tables: recomputed independently from the formulas in Python; hand checks where a line says so. */
class NegativeTestsTest {

    private static final Offset<Double> PRINTED = within(5e-7);

    private static NegativeTests tests(double prior, double sensitivity, double specificity) {
        return new NegativeTests(prior, new TestQuality(sensitivity, specificity));
    }

    @ParameterizedTest
    @CsvSource({
        ".10, .80, 1,   .900000, .978261, .995575, .999112, .999822, .999964, 0, 1, 2",
        ".30, .70, 1,   .700000, .886076, .962861, .988561, .996541, .998960, 2, 2, 4",
        ".30, .70, .95, .700000, .880795, .959013, .986683, .995756, .998656, 2, 2, 4",
        ".50, .50, 1,   .500000, .666667, .800000, .888889, .941176, .969697, 4, 5, 7",
        ".50, .60, .98, .500000, .710145, .857194, .936331, .972995, .988798, 3, 4, 6",
        ".20, .90, .95, .800000, .974359, .997238, .999708, .999969, .999997, 1, 1, 2"
    })
    void freedomGrowsWithEachNegativeAsRecomputed(
            double prior,
            double sensitivity,
            double specificity,
            double none,
            double one,
            double two,
            double three,
            double four,
            double five,
            int for90,
            int for95,
            int for99) {
        NegativeTests tests = tests(prior, sensitivity, specificity);
        assertThat(IntStream.rangeClosed(0, 5)
                        .mapToDouble(tests::freedomIfIndependent)
                        .toArray())
                .containsExactly(new double[] {none, one, two, three, four, five}, PRINTED);
        assertThat(tests.neededIfIndependent(.90)).isEqualTo(new TestsNeeded.Number(for90));
        assertThat(tests.neededIfIndependent(.95)).isEqualTo(new TestsNeeded.Number(for95));
        assertThat(tests.neededIfIndependent(.99)).isEqualTo(new TestsNeeded.Number(for99));
    }

    /** By hand: .5 x .25 = .125 of .625. */
    @Test
    void twoNegativesOfACoinTossTestLeaveOneInFive() {
        assertThat(tests(.5, .5, 1).freedomIfIndependent(2)).isEqualTo(.8);
    }

    /** By hand: the logarithm is 0 there, or a crumb above it, and must not be rounded up to one test. */
    @Test
    void needsNoTestWhereTheTargetIsMetBeforeOne() {
        assertThat(tests(.1, .8, 1).neededIfIndependent(.9)).isEqualTo(new TestsNeeded.Number(0));
        assertThat(tests(.05, .8, 1).neededIfIndependent(.9)).isEqualTo(new TestsNeeded.Number(0));
        assertThat(tests(0, .8, 1).neededIfIndependent(.99)).isEqualTo(new TestsNeeded.Number(0));
    }

    @Test
    void needsOneTestThatMissesNothing() {
        assertThat(tests(.9, 1, 1).neededIfIndependent(.99)).isEqualTo(new TestsNeeded.Number(1));
        assertThat(tests(.9, 1, 1).freedomIfIndependent(1)).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource({"1, .05", "2, .0975", "3, .142625", "4, .18549375", "5, .2262190625"})
    void falseAlarmsGrowWithTheNumberOfTests(int number, double probability) {
        assertThat(tests(.3, .7, .95).falseAlarm(number)).isCloseTo(probability, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({
        "0,  .3, .09,  .027,    .0081,   .00243,  .886076, .962861, .988561, .996541, .998960",
        ".1, .3, .111, .047427, .022528, .011611, .886076, .954589, .980079, .990437, .995049",
        ".2, .3, .132, .0704,   .04224,  .027456, .886076, .946458, .970712, .982219, .988370",
        ".5, .3, .195, .1495,   .123338, .106070, .886076, .922874, .939787, .949795, .956518"
    })
    void testsThatFailTogetherSayLess(
            double correlation,
            double missed1,
            double missed2,
            double missed3,
            double missed4,
            double missed5,
            double free1,
            double free2,
            double free3,
            double free4,
            double free5) {
        NegativeTests tests = tests(.3, .7, 1);
        assertThat(IntStream.rangeClosed(1, 5)
                        .mapToDouble(n -> tests.allNegativeIfInfected(n, correlation))
                        .toArray())
                .containsExactly(new double[] {missed1, missed2, missed3, missed4, missed5}, PRINTED);
        assertThat(IntStream.rangeClosed(1, 5)
                        .mapToDouble(n -> tests.freedomIfCorrelated(n, correlation))
                        .toArray())
                .containsExactly(new double[] {free1, free2, free3, free4, free5}, PRINTED);
    }

    /** By hand: .3 x (.3 x .8 + .2) / 1 = .132. */
    @Test
    void twoCorrelatedNegativesByHand() {
        assertThat(tests(.3, .7, 1).allNegativeIfInfected(2, .2)).isCloseTo(.132, within(1e-15));
    }

    @Test
    void aFullyCorrelatedRepeatAddsNothing() {
        NegativeTests tests = tests(.3, .7, 1);
        assertThat(tests.freedomIfCorrelated(7, 1)).isEqualTo(tests.freedomIfCorrelated(1, 1));
        assertThat(tests.neededIfCorrelated(.95, 1))
                .isInstanceOfSatisfying(
                        TestsNeeded.NotReachable.class,
                        answer -> assertThat(answer.highest()).isEqualTo(tests.freedomIfIndependent(1)));
    }

    /** From the rows of the table: independent 2, 3 and 4 negatives; correlated .970712 at 3, .946458 at 2. */
    @Test
    void correlatedTestsNeedMore() {
        assertThat(tests(.3, .7, 1).neededIfIndependent(.95)).isEqualTo(new TestsNeeded.Number(2));
        assertThat(tests(.3, .7, 1).neededIfCorrelated(.95, .2)).isEqualTo(new TestsNeeded.Number(3));
        assertThat(tests(.3, .7, 1).neededIfCorrelated(.95, .5)).isEqualTo(new TestsNeeded.Number(5));
    }

    @Test
    void showsBothReadingsSideBySide() {
        assertThat(tests(.3, .7, .95).freedomAfter(2, .2)).satisfies(freedom -> {
            assertThat(freedom.independent()).isCloseTo(.959013, PRINTED);
            assertThat(freedom.correlated()).isLessThan(freedom.independent());
            assertThat(freedom.falseAlarm()).isCloseTo(.0975, within(1e-12));
        });
    }

    @Test
    void aTestNoBetterThanChanceNeverReachesATarget() {
        assertThat(tests(.3, .5, .5).neededIfIndependent(.9)).isEqualTo(new TestsNeeded.NotReachable(.7));
        assertThat(tests(1, .9, 1).neededIfIndependent(.9)).isEqualTo(new TestsNeeded.NotReachable(0));
        assertThat(tests(.5, .0100001, .99).neededIfIndependent(.9)).isInstanceOf(TestsNeeded.NotReachable.class);
    }

    @Test
    void staysANumberWhereBothProbabilitiesVanish() {
        assertThat(tests(.5, .7, .4).freedomIfIndependent(2000)).isEqualTo(1);
        assertThat(tests(.5, 1, 0).freedomIfIndependent(3)).isEqualTo(.5);
        assertThat(tests(.5, .5, 0).freedomIfIndependent(3)).isZero();
    }

    @Test
    void refusesWhatIsNoProbability() {
        assertThatIllegalArgumentException().isThrownBy(() -> tests(1.1, .5, .5));
        assertThatIllegalArgumentException().isThrownBy(() -> tests(.1, Double.NaN, .5));
        assertThatIllegalArgumentException().isThrownBy(() -> tests(.1, .5, .5).neededIfIndependent(1));
        assertThatIllegalArgumentException().isThrownBy(() -> tests(.1, .5, .5).freedomIfIndependent(-1));
        assertThatIllegalArgumentException().isThrownBy(() -> tests(.1, .5, .5).freedomIfCorrelated(1, -.1));
    }

    /** By hand: .3 x .3 = .09 when independent; .7 - .49 = .21 is the most, and then .30 as with one test. */
    @Test
    void theSecondOfTwoTestsAddsNothingAtTheGreatestCovariance() {
        TestQuality test = new TestQuality(.7, 1);
        assertThat(new TwoTests(test, test, 0).bothNegativeIfInfected()).isCloseTo(.09, within(1e-12));
        assertThat(TwoTests.greatestCovariance(test, test)).isCloseTo(.21, within(1e-12));
        TwoTests alike = new TwoTests(test, test, .21);
        assertThat(alike.bothNegativeIfInfected()).isCloseTo(.3, within(1e-12));
        assertThat(alike.freedomAfterBothNegative(.3)).isCloseTo(.886076, PRINTED);
        assertThat(new TwoTests(test, test, 0).freedomAfterBothNegative(.3)).isCloseTo(.962861, PRINTED);
        assertThatIllegalArgumentException().isThrownBy(() -> new TwoTests(test, test, .22));
        assertThatIllegalArgumentException().isThrownBy(() -> new TwoTests(test, test, -.01));
    }

    /** Needed at all: the tables' 2, 2 and 4 of .30 .70 1, less what was taken. */
    @Test
    void howManyMoreIsWhatIsNeededLessWhatWasTaken() {
        NegativeTests tests = tests(.3, .7, 1);
        assertThat(tests.moreIfIndependent(.95, 0)).isEqualTo(new TestsNeeded.Number(2));
        assertThat(tests.moreIfIndependent(.99, 3)).isEqualTo(new TestsNeeded.Number(1));
        assertThat(tests.moreIfIndependent(.95, 5)).isEqualTo(new TestsNeeded.Number(0));
        // With correlation .2 the table passes .95 at three tests.
        assertThat(tests.moreIfCorrelated(.95, .2, 1)).isEqualTo(new TestsNeeded.Number(2));
        assertThat(tests.moreIfCorrelated(.95, .2, 3)).isEqualTo(new TestsNeeded.Number(0));
    }

    @Test
    void moreOfATestThatOnlyRepeatsItselfNeverGetsThere() {
        // Full correlation: one test gives .70 / (.70 + .30 x .30) = .886, and so do a thousand.
        assertThat(tests(.3, .7, 1).moreIfCorrelated(.95, 1, 2))
                .isInstanceOfSatisfying(
                        TestsNeeded.NotReachable.class,
                        answer -> assertThat(answer.highest()).isCloseTo(.886076, PRINTED));
        assertThat(tests(.3, .5, .5).moreIfIndependent(.95, 2))
                .isInstanceOfSatisfying(
                        TestsNeeded.NotReachable.class,
                        answer -> assertThat(answer.highest()).isEqualTo(.7));
    }

    /** By hand: .5 x .5 x .3 = .075 of .075 + .5. And methods in a row are the same as one method repeated. */
    @Test
    void severalMethodsMultiplyWhatTheyMiss() {
        NegativeTests.Series smear = new NegativeTests.Series(new TestQuality(.5, 1), 1);
        NegativeTests.Series flotation = new NegativeTests.Series(new TestQuality(.7, 1), 1);
        assertThat(NegativeTests.freedomAfterAll(.5, List.of(smear, flotation))).isCloseTo(.5 / .575, within(1e-12));
        assertThat(NegativeTests.freedomAfterAll(.3, List.of(flotation, flotation, flotation)))
                .isCloseTo(.988561, PRINTED);
        assertThat(NegativeTests.freedomAfterAll(.3, List.of())).isCloseTo(.7, within(1e-12));
    }
}
