package varanid.intake.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import varanid.intake.platform.web.Fault;

class FaultsTest {

    @Test
    void listsNoCodesThatNobodySeesOnThePage() {
        assertThat(Faults.byField(
                        List.of(Fault.at("#/kind", "is missing", "one of: faeces, cloacal-swab, blood")), Map.of()))
                .isEqualTo(Map.of("kind", List.of("It is missing. Right would be: one of those to choose from.")));
    }

    @Test
    void speaksOfTheBoxAndOfDegreesAsThePageDoes() {
        assertThat(Faults.byField(
                        List.of(Fault.at("#/basking/value", "is 250 Cel", "confirmed: true where it is 250 Cel")),
                        Map.of("#/basking", "basking-value")))
                .isEqualTo(Map.of(
                        "basking-value",
                        List.of("It is 250 °C. Right would be: tick the box below where it is 250 °C.")));
    }

    @Test
    void theNarrowestPlaceNamesTheField() {
        assertThat(Faults.byField(
                        List.of(Fault.at("#/warmth/value", "is missing", "a number")),
                        Map.of("#/warmth", "warmth", "#/warmth/value", "warmth-value")))
                .containsOnlyKeys("warmth-value");
    }
}
