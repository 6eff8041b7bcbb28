package varanid.intake.weight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static varanid.intake.weight.WeightFixture.weighed;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import varanid.intake.measures.Mass;
import varanid.intake.measures.MassUnit;
import varanid.intake.measures.Resolution;

class PercentChangeTest {

    /** m ± d/2 at both ends, by hand and recomputed apart in Python, to two decimals. */
    @ParameterizedTest
    @CsvSource({
        "36, 1, 33, 1, -10.96, -8.33, -5.63",
        "36, 5, 33, 5, -20.78, -8.33, 5.97",
        "410, 1, 390, 5, -5.60, -4.88, -4.15",
        "3420, 50, 3100, 50, -10.74, -9.36, -7.95",
        "8, 1, 7, 1, -23.53, -12.50, 0.00",
    })
    void spansWhatTheScalesMayHide(
            String before, String step, String after, String laterStep, double low, double shown, double high) {
        PercentChange change =
                change(weighed(0, before).step(step), weighed(7, after).step(laterStep));
        assertThat(change.lowest().doubleValue()).isCloseTo(low, within(0.005));
        assertThat(change.percent().doubleValue()).isCloseTo(shown, within(0.005));
        assertThat(change.highest().doubleValue()).isCloseTo(high, within(0.005));
        assertThat(change.overDays()).isEqualTo(7);
    }

    /** 100 ln(m2/m1)/days, recomputed apart in Python. */
    @ParameterizedTest
    @CsvSource({
        "100, 110, 10, 0.953102, 10",
        "100, 90, 7, -1.505150, -10",
        "36, 72, 60, 1.155245, 100",
        "500, 450, 30, -0.351202, -10",
    })
    void growsByTheLogarithm(String before, String after, int days, double perDay, double percent) {
        PercentChange change = change(weighed(0, before), weighed(days, after));
        assertThat(change.growthPercentPerDay()).isCloseTo(perDay, within(5e-7));
        assertThat(change.percent().doubleValue()).isEqualTo(percent);
    }

    @Test
    void cancelsAGainAndALossOfTheSameFactor() {
        double gain = change(weighed(0, "80"), weighed(5, "100")).growthPercentPerDay();
        double loss = change(weighed(5, "100"), weighed(10, "80")).growthPercentPerDay();
        assertThat(gain + loss).isCloseTo(0, within(1e-12));
    }

    /** Every true mass that rounds to what was displayed changes by something within the interval. */
    @Test
    void holdsEveryChangeThatTheDisplaysAllow() {
        Random random = new Random(43);
        for (int i = 0; i < 3000; i++) {
            double step = new double[] {0.1, 1, 2, 5, 50}[random.nextInt(5)];
            double before = step * (1 + random.nextInt(400));
            double after = step * (1 + random.nextInt(400));
            PercentChange change = change(
                    weighed(
                                    0,
                                    BigDecimal.valueOf(before)
                                            .round(MathContext.DECIMAL32)
                                            .toPlainString())
                            .step(String.valueOf(step)),
                    weighed(
                                    3,
                                    BigDecimal.valueOf(after)
                                            .round(MathContext.DECIMAL32)
                                            .toPlainString())
                            .step(String.valueOf(step)));
            double trueBefore = before + step * (random.nextDouble() - 0.5) * 0.999;
            double trueAfter = after + step * (random.nextDouble() - 0.5) * 0.999;
            double truth = 100 * (trueAfter - trueBefore) / trueBefore;
            assertThat(truth)
                    .isBetween(
                            change.lowest().doubleValue() - 1e-6,
                            change.highest().doubleValue() + 1e-6);
            assertThat(change.percent()).isBetween(change.lowest(), change.highest());
        }
    }

    /** 5 lb 8 oz on a scale of half an ounce: 2494.76 g ± 7.09 g. */
    @Test
    void readsTheStepInTheUnitOfTheMass() {
        GramRange grams = new Weighing(
                        UUID.randomUUID(),
                        weighed(0, "1").make().at(),
                        WeightFixture.START,
                        new Mass(new BigDecimal("88"), MassUnit.OUNCE),
                        new Resolution(new BigDecimal("0.5")),
                        "post",
                        null,
                        false)
                .findGrams()
                .orElseThrow();
        assertThat(grams.shown().doubleValue()).isCloseTo(2494.758, within(0.001));
        assertThat(grams.highest().subtract(grams.lowest()).doubleValue()).isCloseTo(14.175, within(0.001));
    }

    @Test
    void knowsNothingOfAnAnimalLighterThanHalfAStep() {
        assertThat(weighed(0, "25").step("50").make().findGrams()).isEmpty();
        assertThat(weighed(0, "26").step("50").make().findGrams()).isPresent();
        assertThat(weighed(0, "26").step(null).make().findGrams()).isEmpty();
    }

    @Test
    void refusesAMealAfterTheWeighing() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> weighed(0, "25").fed(-1).make());
    }

    private static PercentChange change(WeightFixture from, WeightFixture to) {
        Weighing before = from.make();
        Weighing after = to.make();
        return PercentChange.between(
                before,
                before.findGrams().orElseThrow(),
                after,
                after.findGrams().orElseThrow(),
                Set.of());
    }
}
