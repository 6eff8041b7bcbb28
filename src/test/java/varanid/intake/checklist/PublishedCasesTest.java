package varanid.intake.checklist;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.scoring.Look;
import varanid.intake.scoring.Result;

/**
 * Published case reports of lizards, encoded from the signs at presentation (src/test/resources/cases names the source
 * of each): none is recommended less urgent than what happened to the animal justified.
 */
class PublishedCasesTest {

    private record PublishedCase(String id, String source, String justified, Look look) {

        @Override
        public String toString() {
            return id + " (" + justified + ")";
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void noCaseIsRecommendedLessUrgentThanItsCourseJustified(PublishedCase it) {
        Result result = ShippedChecklist.SCORER.score(it.look());

        assertThat(ShippedChecklist.rank(result.urgency().recommended()))
                .as(
                        "%s: recommended %s, justified %s",
                        it.source(), result.urgency().recommended(), it.justified())
                .isGreaterThanOrEqualTo(ShippedChecklist.rank(it.justified()));
    }

    @Test
    void atLeastTenCasesSayWhereTheyWereRead() throws IOException {
        List<PublishedCase> cases = cases();
        long metByLowest = cases.stream()
                .filter(it -> ShippedChecklist.rank(ShippedChecklist.SCORER
                                .score(it.look())
                                .urgency()
                                .lowest())
                        >= ShippedChecklist.rank(it.justified()))
                .count();
        System.out.printf(
                "published cases: %d; at least as urgent as justified by the lowest alone: %d%n",
                cases.size(), metByLowest);

        assertThat(cases).hasSizeGreaterThanOrEqualTo(10);
        assertThat(cases).allSatisfy(it -> assertThat(it.source()).isNotBlank());
    }

    static List<PublishedCase> cases() throws IOException {
        JsonNode file;
        try (var in =
                Objects.requireNonNull(PublishedCasesTest.class.getResourceAsStream("/cases/published-cases.yaml"))) {
            file = new YAMLMapper().readTree(in.readAllBytes());
        }
        List<PublishedCase> cases = new ArrayList<>();
        for (JsonNode it : file.get("cases")) {
            Set<String> conditions = new HashSet<>();
            it.get("conditions").forEach(condition -> conditions.add(condition.stringValue()));
            cases.add(new PublishedCase(
                    it.get("id").stringValue(),
                    it.get("source").stringValue(),
                    it.get("justified").stringValue(),
                    new Look(
                            ShippedChecklist.read(it.get("answers")),
                            Map.of(
                                    "lifeStage", it.get("lifeStage").stringValue(),
                                    "origin", it.get("origin").stringValue()),
                            conditions)));
        }
        return cases;
    }
}
