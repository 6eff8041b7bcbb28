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
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.scoring.Look;
import varanid.intake.scoring.Result;

/**
 * Ninety invented intake stories with three blind readings each (src/test/resources/practice): how far the shipped
 * checklist agrees with the readers. It was tuned on these stories, so this holds what was reached; it is no evidence
 * that the checklist is right.
 */
class PracticeStoriesTest {

    private record Scored(String id, Result result, int least, int median, int most, boolean wantsStrict) {

        int lowest() {
            return ShippedChecklist.rank(result.urgency().lowest());
        }

        int recommended() {
            return ShippedChecklist.rank(result.urgency().recommended());
        }

        boolean isStrict() {
            return Objects.requireNonNull(result.isolation()).recommended().equals("strict");
        }
    }

    @Test
    void agreesWithTheReadersOfTheNinetyStories() throws IOException {
        List<Scored> stories = scored();
        List<Scored> under =
                stories.stream().filter(it -> it.recommended() < it.least()).toList();
        List<Scored> over =
                stories.stream().filter(it -> it.lowest() > it.most()).toList();
        long exact = stories.stream().filter(it -> it.lowest() == it.median()).count();
        double kappa = linearKappa(stories);
        long isolationMissed = stories.stream()
                .filter(it -> it.wantsStrict() && !it.isStrict())
                .count();

        System.out.printf(
                "practice stories: %d; under-triage on recommended %d %s; over-triage on lowest %d %s; exact on lowest"
                        + " %d; linear kappa %.3f; strict isolation wanted by most readers and not recommended %d%n",
                stories.size(), under.size(), ids(under), over.size(), ids(over), exact, kappa, isolationMissed);

        assertThat(stories).hasSize(90);
        assertThat(ids(under)).isEmpty();
        assertThat(ids(over)).hasSizeLessThanOrEqualTo(3);
        assertThat(kappa).isGreaterThanOrEqualTo(0.92);
        assertThat(isolationMissed).isZero();
    }

    /** The worked values of Landis and Koch's and the husband-and-wife tables are checked with the statistics; here 1. */
    @Test
    void kappaIsOneForReadersWhoAgreeOnEverything() {
        assertThat(linearKappa(new int[][] {{3, 0}, {0, 5}})).isEqualTo(1.0);
    }

    /**
     * Diagnoses of multiple sclerosis by two neurologists, Winnipeg patients (Landis and Koch 1977; data of the R
     * package vcd): linear weighted kappa 0.3797305.
     */
    @Test
    void kappaReproducesAPublishedTable() {
        double kappa = linearKappa(new int[][] {{38, 5, 0, 1}, {33, 11, 3, 0}, {10, 14, 5, 6}, {3, 7, 3, 10}});

        assertThat(kappa).isCloseTo(0.3797305, org.assertj.core.data.Offset.offset(1e-7));
    }

    private static List<Scored> scored() throws IOException {
        JsonNode stories;
        try (var in = Objects.requireNonNull(PracticeStoriesTest.class.getResourceAsStream("/practice/stories.json"))) {
            stories = JsonMapper.shared().readTree(in.readAllBytes());
        }
        List<Scored> scored = new ArrayList<>();
        for (JsonNode story : stories) {
            Set<String> conditions = new HashSet<>();
            story.get("conditions").forEach(condition -> conditions.add(condition.stringValue()));
            Result result = ShippedChecklist.SCORER.score(new Look(
                    ShippedChecklist.read(story.get("answers")),
                    Map.of(
                            "lifeStage", story.get("lifeStage").stringValue(),
                            "origin", story.get("origin").stringValue()),
                    conditions));
            JsonNode readings = story.get("readings");
            scored.add(new Scored(
                    story.get("id").stringValue(),
                    result,
                    ShippedChecklist.rank(readings.get("leastAcceptable").stringValue()),
                    ShippedChecklist.rank(readings.get("median").stringValue()),
                    ShippedChecklist.rank(readings.get("mostAcceptable").stringValue()),
                    readings.get("strictIsolationVotes").intValue() >= 2));
        }
        return scored;
    }

    private static List<String> ids(List<Scored> stories) {
        return stories.stream().map(Scored::id).toList();
    }

    private static double linearKappa(List<Scored> stories) {
        int[][] table = new int[4][4];
        stories.forEach(it -> table[it.lowest()][it.median()]++);
        return linearKappa(table);
    }

    /** Cohen 1968: one less the weighted disagreement over that expected by chance, weights |i - j|. */
    private static double linearKappa(int[][] table) {
        int size = table.length;
        double total = 0;
        double[] rows = new double[size];
        double[] columns = new double[size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                total += table[i][j];
                rows[i] += table[i][j];
                columns[j] += table[i][j];
            }
        }
        double seen = 0;
        double expected = 0;
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                seen += Math.abs(i - j) * table[i][j] / total;
                expected += Math.abs(i - j) * rows[i] * columns[j] / (total * total);
            }
        }
        return 1 - seen / expected;
    }
}
