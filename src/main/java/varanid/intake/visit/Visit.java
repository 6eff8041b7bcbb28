package varanid.intake.visit;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;
import varanid.intake.animal.Animals;

/**
 * What a part of a summary is read for.
 *
 * @param zone the organisation's
 * @param now the moment of the summary
 * @param today the day of it in the zone
 */
record Visit(UUID organisationId, ZoneId zone, Animals.Newcomer animal, Instant now, LocalDate today) {

    UUID animalId() {
        return animal.id();
    }
}
