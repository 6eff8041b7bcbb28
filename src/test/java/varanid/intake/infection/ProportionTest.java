package varanid.intake.infection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.exception.NotStrictlyPositiveException;
import org.apache.commons.math3.stat.interval.ClopperPearsonInterval;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProportionTest {

    private static final Offset<Double> PRINTED = within(6e-7);

    /** The four cases Newcombe 1998 compares intervals on (cases from memory, values recomputed twice). */
    @ParameterizedTest
    @CsvSource({
        "81, 263, .255289, .366210, .252737, .367622",
        "15, 148, .062386, .160487, .057844, .161650",
        "0, 20, 0, .161125, 0, .168433",
        "1, 29, .006113, .171755, .000873, .177644"
    })
    void agreesOnTheUsualFourCases(int count, int of, double w1, double w2, double cp1, double cp2) {
        Proportion proportion = new Proportion(count, of);
        assertThat(proportion.wilson(.95).lower()).isCloseTo(w1, PRINTED);
        assertThat(proportion.wilson(.95).upper()).isCloseTo(w2, PRINTED);
        assertThat(proportion.clopperPearson(.95).lower()).isCloseTo(cp1, PRINTED);
        assertThat(proportion.clopperPearson(.95).upper()).isCloseTo(cp2, PRINTED);
    }

    /** Recomputed. */
    @ParameterizedTest
    @CsvSource({"0, 10, 0, .2775, 0, .3085", "10, 10, .7225, 1, .6915, 1", "29, 30, .8333, .9941, .8278, .9992"})
    void agreesAtTheEnds(int count, int of, double w1, double w2, double cp1, double cp2) {
        Proportion proportion = new Proportion(count, of);
        Offset<Double> printed = within(6e-5);
        assertThat(proportion.wilson(.95).lower()).isCloseTo(w1, printed);
        assertThat(proportion.wilson(.95).upper()).isCloseTo(w2, printed);
        assertThat(proportion.clopperPearson(.95).lower()).isCloseTo(cp1, printed);
        assertThat(proportion.clopperPearson(.95).upper()).isCloseTo(cp2, printed);
    }

    @Test
    void endsAreExactlyTheEnds() {
        for (int n = 1; n <= 60; n++) {
            assertThat(new Proportion(0, n).wilson(.95).lower()).isZero();
            assertThat(new Proportion(n, n).wilson(.95).upper()).isEqualTo(1);
            assertThat(new Proportion(0, n).clopperPearson(.95).lower()).isZero();
            assertThat(new Proportion(n, n).clopperPearson(.95).upper()).isEqualTo(1);
        }
    }

    /** Recomputed: 23 of 60. */
    @Test
    void agreesInTheMiddle() {
        assertThat(new Proportion(23, 60).wilson(.95).lower()).isCloseTo(.270883, PRINTED);
        assertThat(new Proportion(23, 60).wilson(.95).upper()).isCloseTo(.509824, PRINTED);
    }

    /** commons-math3 3.6.1, wherever it answers. */
    @ParameterizedTest
    @CsvSource({"1, 3", "23, 60", "81, 263", "499, 500"})
    void agreesWithAnotherLibraryBetweenTheEnds(int count, int of) {
        Proportion proportion = new Proportion(count, of);
        ConfidenceInterval exact = new ClopperPearsonInterval().createInterval(of, count, .95);
        assertThat(proportion.clopperPearson(.95).lower()).isCloseTo(exact.getLowerBound(), within(1e-8));
        assertThat(proportion.clopperPearson(.95).upper()).isCloseTo(exact.getUpperBound(), within(1e-8));
        ConfidenceInterval wilson = new WilsonScoreInterval().createInterval(of, count, .95);
        assertThat(proportion.wilson(.95).lower()).isCloseTo(wilson.getLowerBound(), within(1e-8));
        assertThat(proportion.wilson(.95).upper()).isCloseTo(wilson.getUpperBound(), within(1e-8));
    }

    /** Why the exact interval is not taken from commons-math3 3.6.1: it has none for the first cases anybody meets. */
    @Test
    void anotherLibraryThrowsAtNoneAndAtAll() {
        ClopperPearsonInterval theirs = new ClopperPearsonInterval();
        assertThatExceptionOfType(NotStrictlyPositiveException.class)
                .isThrownBy(() -> theirs.createInterval(10, 0, .95));
        assertThatExceptionOfType(NotStrictlyPositiveException.class)
                .isThrownBy(() -> theirs.createInterval(10, 10, .95));
    }

    /** Hanley and Lippman-Hand 1983, recomputed. */
    @ParameterizedTest
    @CsvSource({"10, .258866", "20, .139108", "30, .095034", "50, .058155", "100, .029513", "300, .009936"})
    void noneOfManyIsAboutThreeOverMany(int of, double bound) {
        assertThat(new Proportion(0, of).upperBoundOfNone(.95))
                .isCloseTo(bound, PRINTED)
                .isLessThan(3.0 / of);
    }

    /** Recomputed: the two-sided bound is larger, so it matters which one is shown. */
    @ParameterizedTest
    @CsvSource({"10, .308497", "20, .168433", "30, .115703"})
    void theTwoSidedBoundOfNoneIsLarger(int of, double bound) {
        Proportion none = new Proportion(0, of);
        assertThat(none.clopperPearson(.95).upper())
                .isCloseTo(bound, PRINTED)
                .isGreaterThan(none.upperBoundOfNone(.95));
    }

    @Test
    void knowsNothingFromNothing() {
        assertThat(new Proportion(0, 0).wilson(.95)).isEqualTo(new Proportion.Interval(0, 1));
        assertThat(new Proportion(0, 0).clopperPearson(.95)).isEqualTo(new Proportion.Interval(0, 1));
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Proportion(3, 2));
        assertThatIllegalArgumentException().isThrownBy(() -> new Proportion(-1, 2));
        assertThatIllegalArgumentException().isThrownBy(() -> new Proportion(1, 2).wilson(0));
        assertThatIllegalStateException().isThrownBy(() -> new Proportion(1, 2).upperBoundOfNone(.95));
        assertThatIllegalStateException().isThrownBy(() -> new Proportion(0, 0).upperBoundOfNone(.95));
    }
}
