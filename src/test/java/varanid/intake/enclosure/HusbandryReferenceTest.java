package varanid.intake.enclosure;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

class HusbandryReferenceTest {

    private final HusbandryRules rules = new HusbandryReference().rules();

    @Test
    void namesOnlyFindingsAndConditionsThatTheChecklistHas() {
        assertThat(ids("findings"))
                .containsAll(rules.signs().stream()
                        .flatMap(each -> each.lessCertain().stream())
                        .collect(Collectors.toSet()));
        assertThat(ids("conditions"))
                .containsAll(rules.lookConditions().stream()
                        .map(HusbandryRules.LookCondition::condition)
                        .toList());
    }

    /** What may kill within the hour counts at once, warm or cold. */
    @Test
    void explainsNothingThatMayKillWithinTheHour() {
        assertThat(rules.signs())
                .flatExtracting(HusbandryRules.Sign::lessCertain)
                .doesNotContain(
                        "laboured-breathing",
                        "open-mouth-breathing",
                        "bleeding",
                        "tissue-from-vent",
                        "unresponsive",
                        "seizure",
                        "tremor");
    }

    @Test
    void hasAdviceForEverySideOfEveryRange() {
        Set<String> wanted = new TreeSet<>();
        for (HusbandryRange each : rules.ranges()) {
            if (each.kind() != HusbandryRange.Kind.FIELD && each.lowest() != null) {
                wanted.add(each.quantity().code() + "-below");
            }
        }
        for (Quantity quantity : Quantity.values()) {
            List<HusbandryRange> judged = rules.ranges().stream()
                    .filter(each -> each.quantity() == quantity && each.kind() != HusbandryRange.Kind.FIELD)
                    .toList();
            if (!judged.isEmpty() && judged.stream().allMatch(each -> each.highest() != null)) {
                wanted.add(quantity.code() + "-above");
            }
        }
        wanted.addAll(Set.of(
                "surface-wet",
                "surface-nearly-wet",
                "surface-mould",
                "night-wet",
                "uv-unsafe",
                "uv-below",
                "uv-above",
                "basking-surface-held-back"));
        assertThat(rules.signs()).extracting(HusbandryRules.Sign::code).containsExactlyInAnyOrderElementsOf(wanted);
    }

    private static Set<String> ids(String part) {
        try (InputStream file = Objects.requireNonNull(
                HusbandryReferenceTest.class.getResourceAsStream("/shared/checklists/varanid-intake.v1.yaml"))) {
            Set<String> ids = new TreeSet<>();
            for (JsonNode each : new YAMLMapper().readTree(file).get(part)) {
                ids.add(each.get("id").asString());
            }
            return ids;
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
