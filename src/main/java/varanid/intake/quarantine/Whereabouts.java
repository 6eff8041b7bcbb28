package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;

/** Where animals stand, and stood. */
@Component
class Whereabouts {

    private final PlacementRows placements;

    Whereabouts(PlacementRows placements) {
        this.placements = placements;
    }

    /** What was last recorded of where the animal is; nothing where it was never placed. */
    Optional<PlacementRow> findLast(UUID organisationId, UUID animalId) {
        List<PlacementRow> standing = placements.listStanding(organisationId, animalId);
        return standing.isEmpty() ? Optional.empty() : Optional.of(standing.get(standing.size() - 1));
    }

    /** The same as of the end of a day. */
    Optional<PlacementRow> findLast(UUID organisationId, UUID animalId, LocalDate day) {
        List<PlacementRow> upTo = placements.listStanding(organisationId, animalId).stream()
                .filter(row -> !row.onDay.isAfter(day))
                .toList();
        return upTo.isEmpty() ? Optional.empty() : Optional.of(upTo.get(upTo.size() - 1));
    }

    List<Stay> listStays(UUID organisationId, UUID animalId) {
        return Stay.list(placements.listStanding(organisationId, animalId));
    }
}
