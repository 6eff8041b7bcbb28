package varanid.intake.checklist;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import varanid.intake.scoring.Answer;
import varanid.intake.scoring.Look;
import varanid.intake.scoring.Result;

/**
 * What healthy monitors do and keepers take for illness: gaping to cool down, threatening, pumping air with the throat
 * (Owerkowicz et al. 1999, Science 284:1661), being slow when cold. The rest is common practice.
 */
class NormalMonitorsTest {

    @ParameterizedTest(name = "{0}")
    @MethodSource("normals")
    void isNoReasonForAVetWithin24Hours(String what, Map<String, String> seen, Set<String> conditions) {
        Map<String, Answer> answers = ShippedChecklist.nothingWrong();
        seen.forEach((finding, level) -> answers.put(finding, Answer.seen(level)));

        Result result = ShippedChecklist.SCORER.score(
                new Look(answers, Map.of("lifeStage", "juvenile", "origin", "W"), conditions));

        assertThat(ShippedChecklist.rank(result.urgency().recommended()))
                .as(what)
                .isLessThan(ShippedChecklist.rank("asap"));
    }

    static Stream<Arguments> normals() {
        return Stream.of(
                Arguments.of("everything as it should be", Map.of(), Set.of()),
                Arguments.of(
                        "gapes under the lamp", Map.of("open-mouth-breathing", "intermittent"), Set.of("overheated")),
                Arguments.of("breathes hard after a chase", Map.of("laboured-breathing", "mild"), Set.of("handled")),
                Arguments.of("hisses and lashes its tail", Map.of("defence-display", "present"), Set.of()),
                Arguments.of(
                        "hisses and gapes after being held",
                        Map.of("defence-display", "present", "open-mouth-breathing", "intermittent"),
                        Set.of("handled")),
                Arguments.of("pumps its throat", Map.of("throat-pumping", "present"), Set.of()),
                Arguments.of(
                        "is cold and slow",
                        Map.of("dull", "mild", "appetite", "refuses", "no-tongue-flick", "present"),
                        Set.of("cold")),
                Arguments.of("stays frozen", Map.of("settles-after-approach", "stays-frozen"), Set.of()),
                Arguments.of("has a white crust of salt", Map.of("nasal-discharge", "dry-white-crust"), Set.of()),
                Arguments.of("drips after a dive", Map.of("nasal-discharge", "clear"), Set.of("wet")),
                Arguments.of("is slow with a full belly", Map.of("dull", "mild"), Set.of("fed")),
                Arguments.of("shows a paired organ for a moment", Map.of("tissue-from-vent", "slips-back"), Set.of()));
    }
}
