package varanid.intake.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What one more answer is worth: a case worked by hand, and every other case against plain enumeration. */
class DecisionValueTest {

    private static final double[][] LOSSES = {{0, 2, 10}, {1, 0, 4}, {3, 1, 0}};

    /**
     * Answered total 2. A: 0 (3/4), or 3 with floor 2 (1/4). B: 0 or 1 (1/2 each). C: 0, 1, 2 (1/2, 1/4, 1/4). Outcome 1
     * from 3 points, 2 from 5. By hand: P(outcome) = 3/16, 15/32, 11/32; the loss to be expected now is 33/32; knowing A
     * saves 15/32, B and C 1/16 each; the entropy 1.4947849 bits falls by .5206887, .2197962 and .2727179.
     */
    @Test
    void reproducesTheWorkedExample() {
        DecisionValue.Option[][] items = {
            {option(0.75, 0, 0), option(0.25, 3, 2)},
            {option(0.5, 0, 0), option(0.5, 1, 0)},
            {option(0.5, 0, 0), option(0.25, 1, 0), option(0.25, 2, 0)},
        };
        DecisionValue value = new DecisionValue(items, 2, 0, DecisionValueTest::outcomeOf, 5, LOSSES);

        assertThat(value.values()).containsExactly(new double[] {15 / 32.0, 1 / 16.0, 1 / 16.0}, within(1e-12));
        assertThat(value.informationBits())
                .containsExactly(new double[] {0.5206887, 0.2197962, 0.2727179}, within(5e-8));

        List<String> names = List.of("A", "B", "C");
        assertThat(IntStream.range(0, 3)
                        .boxed()
                        .sorted(Comparator.comparingDouble((Integer i) -> -Math.round(value.values()[i] * 1e9))
                                .thenComparingDouble(i -> -value.informationBits()[i]))
                        .map(names::get))
                .containsExactly("A", "C", "B");
    }

    @Test
    void isNothingWhenTheOutcomeIsSettledAlready() {
        DecisionValue.Option[][] items = {{option(0.5, 0, 0), option(0.5, 9, 2)}};

        DecisionValue value = new DecisionValue(items, 5, 0, DecisionValueTest::outcomeOf, 5, LOSSES);

        assertThat(value.values()).containsExactly(0);
        assertThat(value.informationBits()).containsExactly(0);
    }

    @Test
    void isNothingWhenNothingIsOpen() {
        DecisionValue value =
                new DecisionValue(new DecisionValue.Option[0][], 1, 0, DecisionValueTest::outcomeOf, 5, LOSSES);

        assertThat(value.values()).isEmpty();
        assertThat(value.informationBits()).isEmpty();
    }

    @Test
    void agreesWithAddingUpEveryCombinationOfAnswers() {
        long seed = 41;
        Random random = new Random(seed);
        for (int n = 0; n < TestChecklists.costlyCases(); n++) {
            DecisionValue.Option[][] items = new DecisionValue.Option[1 + random.nextInt(4)][];
            for (int i = 0; i < items.length; i++) {
                items[i] = randomOptions(random);
            }
            int total = random.nextInt(4);
            int floor = random.nextInt(2);
            DecisionValue value = new DecisionValue(items, total, floor, DecisionValueTest::outcomeOf, 5, LOSSES);

            for (int i = 0; i < items.length; i++) {
                double now = leastLoss(outcomes(items, -1, null, total, floor));
                double after = 0;
                for (DecisionValue.Option option : items[i]) {
                    after += option.chance() * leastLoss(outcomes(items, i, option, total, floor));
                }
                assertThat(value.values()[i])
                        .as("seed " + seed + ", case " + n + ", item " + i)
                        .isCloseTo(Math.max(0, now - after), within(1e-9));
            }
        }
    }

    private static DecisionValue.Option[] randomOptions(Random random) {
        double[] weights = random.doubles(2 + random.nextInt(3), 0.1, 1).toArray();
        double sum = Arrays.stream(weights).sum();
        return Arrays.stream(weights)
                .mapToObj(weight -> option(weight / sum, random.nextInt(4), random.nextInt(8) / 6 * 2))
                .toArray(DecisionValue.Option[]::new);
    }

    private static double[] outcomes(
            DecisionValue.Option[][] items, int known, DecisionValue.@Nullable Option as, int total, int floor) {
        double[] chances = new double[3];
        addUp(items, 0, known, as, 1, total, floor, chances);
        return chances;
    }

    private static void addUp(
            DecisionValue.Option[][] items,
            int next,
            int known,
            DecisionValue.@Nullable Option as,
            double chance,
            int total,
            int floor,
            double[] chances) {
        if (next == items.length) {
            chances[Math.max(floor, outcomeOf(total))] += chance;
            return;
        }
        DecisionValue.Option[] options = next == known && as != null ? new DecisionValue.Option[] {as} : items[next];
        for (DecisionValue.Option option : options) {
            addUp(
                    items,
                    next + 1,
                    known,
                    as,
                    next == known ? chance : chance * option.chance(),
                    total + option.points(),
                    Math.max(floor, option.floor()),
                    chances);
        }
    }

    private static double leastLoss(double[] chances) {
        return Arrays.stream(LOSSES)
                .mapToDouble(row -> IntStream.range(0, 3)
                        .mapToDouble(o -> row[o] * chances[o])
                        .sum())
                .min()
                .orElseThrow();
    }

    private static int outcomeOf(int total) {
        return total < 3 ? 0 : total < 5 ? 1 : 2;
    }

    private static DecisionValue.Option option(double chance, int points, int floor) {
        return new DecisionValue.Option(chance, points, floor);
    }
}
