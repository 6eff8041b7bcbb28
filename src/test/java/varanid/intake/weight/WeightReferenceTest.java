package varanid.intake.weight;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.util.Objects;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

class WeightReferenceTest {

    private final WeightRules rules = new WeightReference().rules();

    /** Our own proposals, as they were decided; no cut-off published for lizards was found. */
    @Test
    void holdsTheProposedThresholdsTheMostUrgentFirst() {
        assertThat(rules.thresholds())
                .extracting(each -> each.id() + " " + each.atMostPercent() + " " + each.urgency())
                .containsExactly(
                        "loss-20 -20 asap",
                        "loss-10-in-30-days -10 urgent",
                        "loss-5-in-7-days -5 urgent",
                        "no-gain-in-28-days 0 routine");
        assertThat(rules.thresholds())
                .allSatisfy(each -> assertThat(each.source()).contains("X"));
    }

    /** The answer is taken by the checklist as it is: same ends, same longest time, same due day. */
    @Test
    void answersWithinWhatTheChecklistTakes() throws IOException {
        try (InputStream file = Objects.requireNonNull(
                WeightReferenceTest.class.getResourceAsStream("/shared/checklists/varanid-intake.v1.yaml"))) {
            JsonNode finding = StreamSupport.stream(
                            new YAMLMapper().readTree(file).get("findings").spliterator(), false)
                    .filter(each -> each.get("id").asString().equals("weight-trend"))
                    .findFirst()
                    .orElseThrow();
            JsonNode measure = finding.get("measure");
            assertThat(rules.answer().lowestPercent())
                    .isEqualByComparingTo(measure.get("min").decimalValue());
            assertThat(rules.answer().highestPercent())
                    .isEqualByComparingTo(measure.get("max").decimalValue());
            assertThat(rules.answer().longestDays())
                    .isEqualTo(measure.get("companion").get("max").asInt());
            assertThat("P" + rules.answer().dueAfterDays() + "D")
                    .isEqualTo(finding.get("notYetDue").get("after").asString());
        }
    }
}
