package varanid.intake.enclosure;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UvZonesTest {

    private static final UvZones UV = new HusbandryReference().rules().uv();

    /** Ferguson 2010, Baines 2016 (second-hand): 1.1 to 1.4, 2.9 to 3.0 and 4.5 to 7.4 lie in two zones. */
    @ParameterizedTest
    @CsvSource({
        "0, []",
        "0.59, []",
        "0.6, [1]",
        "1.0, [1]",
        "1.1, '[1, 2]'",
        "1.4, '[1, 2]'",
        "1.41, [2]",
        "2.89, [2]",
        "2.9, '[2, 3]'",
        "3.0, '[2, 3]'",
        "3.1, [3]",
        "4.5, '[3, 4]'",
        "7.4, '[3, 4]'",
        "7.5, [4]",
        "9.5, [4]",
        "9.6, []",
    })
    void fitsAMaximumIntoEveryZoneThatHasIt(BigDecimal index, String zones) {
        assertThat(UV.listByMaximum(index)).hasToString(zones);
    }

    /** The same: the means of two zones touch, and each end belongs to both. */
    @ParameterizedTest
    @CsvSource({
        "0, [1]",
        "0.69, [1]",
        "0.7, '[1, 2]'",
        "0.85, [2]",
        "1.0, '[2, 3]'",
        "2.6, '[3, 4]'",
        "3.5, [4]",
        "3.6, []",
    })
    void fitsAMeanIntoEveryZoneThatHasIt(BigDecimal index, String zones) {
        assertThat(UV.listByMean(index)).hasToString(zones);
    }

    /** WHO and CIE, from memory: an index of 1 is 25 mW/m², which is 2.5 µW/cm². */
    @Test
    void knowsTheIndexOfAnIrradiance() {
        assertThat(UvZones.indexOf(new BigDecimal("0.025"))).isEqualByComparingTo("1");
    }

    @Test
    void saysThatTheZoneOfTheWaterMonitorIsNotConfirmed() {
        assertThat(UV.findSpecies("Varanus salvator")).get().satisfies(zones -> {
            assertThat(zones.zones()).containsExactly(2, 3);
            assertThat(zones.confirmed()).isFalse();
        });
        assertThat(UV.findSpecies("Varanus prasinus")).isEmpty();
    }
}
