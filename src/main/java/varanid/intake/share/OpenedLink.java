package varanid.intake.share;

import java.time.ZoneId;
import java.util.UUID;

/**
 * A link that was opened.
 *
 * @param zone the organisation's
 * @param issuedBy the person who gave it out
 * @param confirms whether what is answered through it counts as a vet's own: a clinician's account gave it out
 * @param recipient who it was given to
 */
public record OpenedLink(
        UUID linkId,
        UUID organisationId,
        ZoneId zone,
        UUID animalId,
        UUID issuedBy,
        boolean confirms,
        String recipient) {}
