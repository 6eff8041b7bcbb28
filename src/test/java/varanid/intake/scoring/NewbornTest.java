package varanid.intake.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A published score of which few points are bad news. Its thresholds (7-10, 4-6, 0-3) are from memory. */
class NewbornTest {

    private static final List<String> SIGNS = List.of("colour", "heart-rate", "response", "tone", "breathing");
    private final Checklist checklist = TestChecklists.NEWBORN;
    private final Scorer scorer = new Scorer(checklist);

    /**
     * Published totals: the HL7 FHIR examples at one minute (0) and five minutes (10); the Australian digital-health
     * guide at one minute (3) and five minutes (10).
     */
    @ParameterizedTest
    @CsvSource({
        "0 0 0 0 0, 0, nought-to-three",
        "2 2 2 2 2, 10, seven-to-ten",
        "0 0 1 1 1, 3, nought-to-three",
        "1 2 2 1 1, 7, seven-to-ten",
        "1 1 2 1 1, 6, four-to-six",
        "1 1 1 1 0, 4, four-to-six",
    })
    void addsTheSignsUpToThePublishedTotal(String points, String total, String band) {
        Result result = score(points);

        assertThat(result.score().lowest()).isEqualByComparingTo(total);
        assertThat(result.score().highest()).isEqualByComparingTo(total);
        assertThat(result.score().maximum()).isEqualByComparingTo("10");
        assertThat(result.urgency().lowest()).isEqualTo(band);
        assertThat(result.urgency().highest()).isEqualTo(band);
    }

    @Test
    void agreesWithAPlainSumOnEveryPossibleNewborn() {
        for (int n = 0; n < 243; n++) {
            StringBuilder points = new StringBuilder();
            int total = 0;
            for (int sign = 0, rest = n; sign < 5; sign++, rest /= 3) {
                points.append(rest % 3).append(' ');
                total += rest % 3;
            }
            Result result = score(points.toString().trim());

            assertThat(result.score().lowest()).isEqualByComparingTo(String.valueOf(total));
            assertThat(result.urgency().lowest())
                    .isEqualTo(total <= 3 ? "nought-to-three" : total <= 6 ? "four-to-six" : "seven-to-ten");
        }
    }

    @Test
    void takesAMissingSignForAnythingFromGoodToBad() {
        Result result = score("1 1 2 2 -");

        assertThat(result.score().lowest()).isEqualByComparingTo("6");
        assertThat(result.score().highest()).isEqualByComparingTo("8");
        assertThat(result.urgency().lowest()).isEqualTo("seven-to-ten");
        assertThat(result.urgency().highest()).isEqualTo("four-to-six");
        assertThat(result.settling().looks()).containsExactly("breathing");
    }

    private Result score(String points) {
        Map<String, Answer> answers = new HashMap<>();
        String[] each = points.split(" ");
        for (int s = 0; s < each.length; s++) {
            if (!each[s].equals("-")) {
                List<ChecklistDraft.Level> levels =
                        checklist.findFinding(SIGNS.get(s)).orElseThrow().levels();
                answers.put(
                        SIGNS.get(s),
                        Answer.seen(levels.get(2 - Integer.parseInt(each[s])).code()));
            }
        }
        return scorer.score(new Look(answers, Map.of(), Set.of()));
    }
}
