package varanid.intake.assessment;

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
 */
public record ReadLook(KeptLook kept, UUID observerId, Edition edition, JsonNode document, LookReading reading) {}
