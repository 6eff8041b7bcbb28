package varanid.intake.assessment;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import java.util.Map;
import java.util.Set;
import varanid.intake.enclosure.HusbandryRules;
import varanid.intake.enclosure.Surroundings;

/**
 * An answer that the surroundings on that day may explain. It keeps its points and its urgency: a wrong enclosure makes
 * a sign less sure, never less urgent.
 *
 * @param finding which
 * @param because what about the surroundings
 */
@Schema(name = "LessCertainAnswer")
record LessCertain(String finding, List<Because> because) {

    @Schema(name = "LessCertainBecause")
    record Because(
            @Schema(description = "a code of shared/reference/husbandry.yaml")
            String sign,

            String advice) {}

    /** Those of the given answers that the surroundings may explain, by finding. */
    static List<LessCertain> of(Set<String> answered, Surroundings surroundings) {
        return surroundings.lessCertain().entrySet().stream()
                .filter(each -> answered.contains(each.getKey()))
                .map(each -> new LessCertain(each.getKey(), because(each, surroundings)))
                .toList();
    }

    private static List<Because> because(Map.Entry<String, ? extends Set<String>> finding, Surroundings surroundings) {
        return surroundings.signs().stream()
                .filter(sign -> finding.getValue().contains(sign.code()))
                .map((HusbandryRules.Sign sign) -> new Because(sign.code(), sign.advice()))
                .toList();
    }
}
