package varanid.intake.checklist;

import java.util.Comparator;
import tools.jackson.databind.JsonNode;
import varanid.intake.scoring.Checklist;
import varanid.intake.scoring.Scorer;

/**
 * One version of a checklist, ready to score.
 *
 * @param sha256 of the file's bytes, 64 lower-case hexadecimal digits: two editions with one digest are one
 * @param file its text
 * @param content what the file says, key by key
 */
public record Edition(
        String id, int version, String sha256, boolean published, String file, JsonNode content, Scorer scorer) {

    static final Comparator<Edition> IN_ORDER =
            Comparator.comparing(Edition::id).thenComparingInt(Edition::version);

    public Checklist checklist() {
        return scorer.checklist();
    }
}
