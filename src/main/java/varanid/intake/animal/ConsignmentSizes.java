package varanid.intake.animal;

import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.platform.id.RowKey;

/** What other features may know about a consignment. */
@Service
public class ConsignmentSizes {

    private final Consignments consignments;

    ConsignmentSizes(Consignments consignments) {
        this.consignments = consignments;
    }

    /** How many animals of it are registered; nothing where the organisation has no such consignment. */
    @Transactional(readOnly = true)
    public Optional<Integer> find(UUID organisationId, UUID id) {
        return consignments.existsById(new RowKey(organisationId, id))
                ? Optional.of(consignments.countAnimals(organisationId, id))
                : Optional.empty();
    }
}
