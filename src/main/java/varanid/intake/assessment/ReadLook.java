package varanid.intake.assessment;

import java.util.Optional;
import java.util.UUID;
import tools.jackson.databind.JsonNode;
import varanid.intake.checklist.Edition;
import varanid.intake.scoring.LookReading;

/**
 * A look with all that is known of it, for features that show or compare it.
 *
 * @param kept what it came to
 * @param observerId the person who looked
 * @param edition the checklist by which it was scored
 * @param document as it was kept: the same that is served as the assessment
 * @param reading what each answer stands for
 * @param formKey the key of the form that it was made with
 */
public record ReadLook(
        KeptLook kept,
        UUID observerId,
        Edition edition,
        JsonNode document,
        LookReading reading,
        Optional<UUID> formKey) {

    /** The look that this one corrects. */
    public Optional<UUID> supersedes() {
        JsonNode id = document.path("supersedes");
        return id.isString() ? Optional.of(UUID.fromString(id.stringValue())) : Optional.empty();
    }

    /** Why it corrects that one; empty where nobody said. */
    public String reason() {
        return document.path("reason").stringValue("");
    }

    /** What was recommended, for people. */
    public String headline() {
        return document.at("/urgency/headline").stringValue(urgencyLabel());
    }

    /** The urgency, for people. */
    public String urgencyLabel() {
        return document.at("/urgency/label").stringValue(kept.urgency());
    }

    /** Whether it is as urgent as it is only because something was not seen. */
    public boolean isUrgentOnlyByUnseen() {
        return document.at("/urgency/basis").stringValue("").equals("unseen");
    }
}
