package varanid.intake.visit;

import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import varanid.intake.assessment.Looks;
import varanid.intake.assessment.ReadLook;

/** The last look that stands, and those before it. */
@Component
class LatestLook {

    private final Looks looks;

    LatestLook(Looks looks) {
        this.looks = looks;
    }

    /** The last look up to the moment of the summary. */
    Optional<ReadLook> find(Visit visit) {
        List<ReadLook> all = list(visit);
        return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
    }

    /** Every look that stands, oldest first. */
    List<ReadLook> list(Visit visit) {
        return visit.once("looks", () -> looks.listRead(visit.organisationId(), visit.animalId()));
    }
}
