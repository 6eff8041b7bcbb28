package varanid.intake.diary;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;

/** A reason to look the animal over now. Advice; it adds no points. */
@Schema(name = "LookNow")
record LookNow(
        @Schema(allowableValues = {"dull", "mite-seen", "suddenly-calm"})
        String reason,

        String text,
        List<String> sources) {

    static LookNow of(DemeanourRules rules, String id) {
        DemeanourRules.LookNow it = rules.getLookNow(id);
        return new LookNow(it.id(), it.text(), it.source());
    }
}
