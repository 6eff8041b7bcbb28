package varanid.intake.infection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Martin, Cameron and Greiner 2007; values reproduced with epiR 2.0.57 and by independent code. */
class RoundsTest {

    private static final Offset<Double> PRINTED = within(6e-8);

    @Test
    void discountsBeforeItLearns() {
        List<Rounds.Round> series = new Rounds(.05, .6).series(.5, 5);
        assertThat(series.stream().mapToDouble(Rounds.Round::before).toArray())
                .containsExactly(new double[] {.475, .6587591, .7869436, .8571720, .8906382}, PRINTED);
        assertThat(series.stream().mapToDouble(Rounds.Round::after).toArray())
                .containsExactly(new double[] {.6934307, .8283616, .9022863, .9375139, .9531833}, PRINTED);
    }

    /** Derived by hand: 1 - .05/.6 before and that over .95 after; there one more round changes nothing. */
    @Test
    void settlesWhereARoundGivesBackWhatTheRiskTakes() {
        Rounds rounds = new Rounds(.05, .6);
        Rounds.Round longRun = rounds.longRun().orElseThrow();
        assertThat(longRun.before()).isCloseTo(.9166667, PRINTED);
        assertThat(longRun.after()).isCloseTo(.9649123, PRINTED);
        assertThat(rounds.next(longRun.after()).after()).isCloseTo(longRun.after(), within(1e-12));
    }

    /** Example of the epiR documentation: in steps of .01, .69 is the first sensitivity that keeps above .95. */
    @Test
    void findsTheLeastSensitivityOfTheDocumentedExample() {
        double least = Rounds.leastSensitivity(.10, .95);
        assertThat(Math.ceil(least * 100) / 100).isEqualTo(.69);
        assertThat(new Rounds(.10, .69).longRun().orElseThrow().after()).isGreaterThan(.95);
        assertThat(new Rounds(.10, .68).longRun().orElseThrow().after()).isLessThan(.95);
    }

    /** Recomputed. */
    @Test
    void followsAnAnimalOfALikelyWildOriginThroughFourRounds() {
        assertThat(new Rounds(.02, .7)
                        .series(.7, 4).stream().mapToDouble(Rounds.Round::after).toArray())
                .containsExactly(new double[] {.879262, .954054, .979562, .987645}, within(6e-7));
    }

    @Test
    void hasNoLongRunWhereMoreIsBroughtInThanFound() {
        assertThat(new Rounds(.6, .5).longRun()).isEmpty();
        assertThat(new Rounds(0, 0).longRun()).isEmpty();
        assertThat(new Rounds(1, 1).next(.5).after()).isZero();
        assertThatIllegalArgumentException().isThrownBy(() -> new Rounds(-.1, .5));
    }
}
