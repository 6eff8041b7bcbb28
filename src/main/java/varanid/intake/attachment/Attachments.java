package varanid.intake.attachment;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.animal.AnimalChanged;
import varanid.intake.animal.Animals;
import varanid.intake.assessment.Looks;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.FileRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.sample.Samples;

/** Keeps photographs and laboratory reports of animals. */
@Service
public class Attachments {

    /** Withdrawn ones count, because their bytes are still there. */
    static final int MOST_OF_AN_ANIMAL = 200;

    private static final UUID BEFORE_ALL = new UUID(0, 0);

    private final AttachmentStore store;
    private final Animals animals;
    private final Looks looks;
    private final Samples samples;
    private final OrganisationLock lock;
    private final ApplicationEventPublisher events;
    private final Ids ids;
    private final Clock clock;

    Attachments(
            AttachmentStore store,
            Animals animals,
            Looks looks,
            Samples samples,
            OrganisationLock lock,
            ApplicationEventPublisher events,
            Ids ids,
            Clock clock) {
        this.store = store;
        this.animals = animals;
        this.looks = looks;
        this.samples = samples;
        this.lock = lock;
        this.events = events;
        this.ids = ids;
        this.clock = clock;
    }

    /** Those of the animal that are not withdrawn, in the order they were added; of an unknown animal none. */
    @Transactional(readOnly = true)
    public List<KeptAttachment> list(UUID organisationId, UUID animalId) {
        return store.list(organisationId, animalId, BEFORE_ALL, MOST_OF_AN_ANIMAL).stream()
                .filter(each -> each.withdrawal().isEmpty())
                .toList();
    }

    /** A picture, small, as JPEG; nothing of what is withdrawn or no picture. */
    @Transactional(readOnly = true)
    public Optional<byte[]> findThumbnail(UUID organisationId, UUID animalId, UUID id) {
        return store.find(organisationId, animalId, id)
                .filter(each -> each.withdrawal().isEmpty())
                .flatMap(each -> store.thumbnail(organisationId, animalId, id));
    }

    /** Reads what was sent, and writes a picture anew. It takes a while, so it is done before any transaction. */
    NewAttachment read(Caller caller, UUID animalId, FileRequest request) {
        UUID organisation = caller.organisationId();
        Present present = Present.at(clock, caller.zone());
        return request.read(fields -> NewAttachment.read(
                fields,
                request.file().orElse(null),
                present,
                id -> looks.findFindings(organisation, animalId, id).orElse(null),
                id -> samples.isThere(organisation, animalId, id)));
    }

    @Transactional(propagation = Propagation.MANDATORY)
    KeptAttachment keep(Caller caller, UUID animalId, NewAttachment attachment) {
        lock.hold(caller.organisationId());
        if (store.count(caller.organisationId(), animalId) >= MOST_OF_AN_ANIMAL) {
            throw new ProblemException(
                    ProblemType.CONFLICT,
                    "The animal has " + MOST_OF_AN_ANIMAL + " attachments already, withdrawn ones counted, and cannot"
                            + " have more.");
        }
        UUID id = ids.next();
        store.add(caller, animalId, id, attachment, sha256(attachment.checked().content()), clock.instant());
        events.publishEvent(AnimalChanged.of(caller.organisationId(), animalId));
        return get(caller, animalId, id);
    }

    @Transactional(propagation = Propagation.MANDATORY)
    KeptAttachment withdraw(Caller caller, UUID animalId, UUID id, String reason) {
        lock.hold(caller.organisationId());
        if (get(caller, animalId, id).withdrawal().isPresent()) {
            throw new ProblemException(ProblemType.CONFLICT, "That attachment was withdrawn already.");
        }
        store.withdraw(caller, id, reason, clock.instant());
        events.publishEvent(AnimalChanged.of(caller.organisationId(), animalId));
        return get(caller, animalId, id);
    }

    /** @throws ProblemException 404 where the animal has no such attachment */
    KeptAttachment get(Caller caller, UUID animalId, UUID id) {
        return store.find(caller.organisationId(), animalId, id)
                .orElseThrow(() -> ProblemException.notFound("attachment"));
    }

    /** @throws ProblemException 404 where the organisation has no such animal */
    void requireAnimal(Caller caller, UUID animalId) {
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
    }

    private static byte[] sha256(byte[] content) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(content);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
