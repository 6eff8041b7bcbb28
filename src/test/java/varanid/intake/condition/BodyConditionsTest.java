package varanid.intake.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import varanid.intake.animal.LengthReading;
import varanid.intake.condition.BodyConditions.MassOn;
import varanid.intake.condition.Lengths.MeasuredLength;

/** Which length is set against which mass. */
class BodyConditionsTest {

    private static final LocalDate START = LocalDate.of(2026, 9, 1);
    private static final ConditionRules RULES = new ConditionReference().rules();

    @Test
    void takesTheLengthNearestInTimeAndOfTwoTheLater() {
        BodyConditionView.MassForLengthView found = Objects.requireNonNull(
                compare("adult", List.of(mass(20, 3420)), List.of(body(0, "540"), body(10, "566"), body(30, "600")))
                        .massForLength());
        assertThat(found.measuredOn()).isEqualTo(START.plusDays(30));
    }

    /** Proposal of our own: 28 days for an animal that grows, 180 for one that is grown. */
    @Test
    void takesAnOldLengthOfAGrownAnimalOnly() {
        List<MassOn> masses = List.of(mass(29, 3420));
        List<MeasuredLength> bodies = List.of(body(0, "566"));
        assertThat(compare("juvenile", masses, bodies).massForLength()).isNull();
        assertThat(compare("unknown", masses, bodies).whyNotMassForLength()).contains("outgrows");
        assertThat(compare("adult", masses, bodies).massForLength()).isNotNull();
        assertThat(compare("juvenile", List.of(mass(28, 3420)), bodies).massForLength())
                .isNotNull();
    }

    /** Shine et al., Varanus salvator of the Sumatran skin trade: 566 mm, 3420 g is .850 and 1.167 of the lines. */
    @Test
    void givesRelativeConditionOnBothLinesAndAQuestion() {
        BodyConditionView.MassForLengthView found =
                Objects.requireNonNull(compare("adult", List.of(mass(0, 3420)), List.of(body(0, "566")))
                        .massForLength());
        assertThat(found.lines())
                .extracting(BodyConditionView.LineView::relativeCondition)
                .satisfiesExactly(
                        family -> assertThat(family).isCloseTo(0.850, within(0.0006)),
                        lizards -> assertThat(lizards).isCloseTo(1.167, within(0.0006)));
        assertThat(found.question()).contains("?");
    }

    @Test
    void saysThatALengthIsNoneOfAMonitor() {
        assertThat(compare("adult", List.of(mass(0, 3420)), List.of(body(0, "20")))
                        .whyNotMassForLength())
                .contains("none that a monitor has");
    }

    @Test
    void makesNoIndexOfAHatchlingWithTheAdultItBecame() {
        List<MassOn> masses = List.of(mass(0, 36), mass(900, 3420));
        List<MeasuredLength> bodies = List.of(body(0, "125"), body(900, "566"));
        BodyConditionView.ScaledMassIndexView index =
                compare("adult", masses, bodies).scaledMassIndex();
        assertThat(index.makesSense()).isFalse();
        assertThat(index.text()).contains("makes no sense");
        assertThat(index.points()).isEmpty();
    }

    @Test
    void makesNoIndexOfOneWeighingWithTwoLengths() {
        assertThat(compare("adult", List.of(mass(0, 3420)), List.of(body(0, "560"), body(5, "566")))
                        .scaledMassIndex()
                        .makesSense())
                .isFalse();
    }

    private static BodyConditionView compare(String lifeStage, List<MassOn> masses, List<MeasuredLength> bodies) {
        return BodyConditions.compare(masses, bodies, lifeStage, RULES);
    }

    private static MassOn mass(int day, double grams) {
        return new MassOn(START.plusDays(day), Reading.exactly(grams), false);
    }

    private static MeasuredLength body(int day, String millimetres) {
        LocalDate date = START.plusDays(day);
        return new MeasuredLength(
                date,
                new LengthReading(
                        LengthReading.Part.SNOUT_VENT,
                        new BigDecimal(millimetres),
                        "mm",
                        new BigDecimal(millimetres),
                        BigDecimal.ONE,
                        "ruler",
                        date.atStartOfDay().toInstant(ZoneOffset.UTC),
                        false));
    }
}
