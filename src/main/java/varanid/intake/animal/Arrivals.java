package varanid.intake.animal;

import java.time.Clock;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;

/**
 * Records consignments and animals that are described in the form of the API's requests but not sent over it. All of it
 * is checked as if it had been sent.
 */
@Service
@Transactional(propagation = Propagation.MANDATORY)
public class Arrivals {

    private final Consignments consignments;
    private final AnimalStore store;
    private final ReferenceData reference;
    private final Ids ids;
    private final Clock clock;

    Arrivals(Consignments consignments, AnimalStore store, ReferenceData reference, Ids ids, Clock clock) {
        this.consignments = consignments;
        this.store = store;
        this.reference = reference;
        this.ids = ids;
        this.clock = clock;
    }

    /**
     * Records a consignment.
     *
     * @return its id
     * @throws ProblemException 422 with every fault
     */
    public UUID addConsignment(Caller caller, JsonRequest request) {
        Present present = Present.at(clock, caller.zone());
        return consignments
                .save(request.read(fields -> ConsignmentController.ConsignmentRequest.reader(fields, present))
                        .row(caller, ids.next(), present.now()))
                .id();
    }

    /**
     * Registers an animal.
     *
     * @return its id
     * @throws ProblemException 422 with every fault
     */
    public UUID addAnimal(Caller caller, JsonRequest request) {
        Present present = Present.at(clock, caller.zone());
        AnimalReader reader = new AnimalReader(reference, present, id -> consignments.existsById(caller.key(id)));
        return store.add(caller, request.read(reader::registration), present.now())
                .id();
    }
}
