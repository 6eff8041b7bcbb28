package varanid.intake.share;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.UUID;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Service;
import varanid.intake.animal.Animals;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.PublicAddress;
import varanid.intake.platform.web.Reply;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.SecretText;

/** Gives out links, for the interface and for the page on which people do it. */
@Service
public class GiveLinks {

    private static final SecureRandom RANDOM = new SecureRandom();
    private static final int SALT_BYTES = 16;

    private final ShareLinkRows rows;
    private final Animals animals;
    private final PublicAddress address;
    private final Ids ids;
    private final Once once;
    private final Clock clock;

    GiveLinks(ShareLinkRows rows, Animals animals, PublicAddress address, Ids ids, Once once, Clock clock) {
        this.rows = rows;
        this.animals = animals;
        this.address = address;
        this.ids = ids;
        this.once = once;
        this.clock = clock;
    }

    /**
     * Gives out a link, as a request says it.
     *
     * @return 201 with the address as the member {@code address} of its body, which is never shown again
     * @throws ProblemException 403 for who is neither keeper nor clinician; 404 where there is no such animal; 422 with
     *     every fault
     */
    public ResponseEntity<byte[]> give(Caller caller, UUID animalId, JsonRequest request, HttpServletRequest servlet) {
        requireHandler(caller);
        requireAnimal(caller, animalId);
        LinkController.NewLink wanted = request.read(LinkController.NewLink::reader);
        URI base = address.resolve(servlet, wanted.kind().path());
        return once.perform(caller, request, () -> {
            SecretText secret = SecretText.random(wanted.kind().prefix(), caller.organisationId());
            Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
            ShareLinkRow row = new ShareLinkRow(caller.key(ids.next()), animalId, wanted.kind());
            row.recipient = wanted.recipient();
            row.note = wanted.note();
            row.hint = secret.hint();
            row.secretHash = secret.hash();
            row.salt = new byte[SALT_BYTES];
            RANDOM.nextBytes(row.salt);
            row.confirms = wanted.kind() == LinkKind.REPLY && caller.may(Role.CLINICIAN);
            row.expiresAt = now.plus(Duration.ofDays(wanted.validDays()));
            row.recordedBy = caller.personId();
            row.recordedAt = now;
            rows.saveAndFlush(row);
            return Reply.created(
                    "/api/v1/animals/" + animalId + "/links/" + row.id(),
                    null,
                    new LinkController.GivenLink(
                            row.id(),
                            animalId,
                            wanted.kind().code(),
                            row.recipient,
                            row.confirms,
                            base.toString() + secret.text(),
                            row.expiresAt));
        });
    }

    static void requireHandler(Caller caller) {
        if (!caller.may(Role.CLINICIAN)) {
            caller.require(Role.KEEPER);
        }
    }

    void requireAnimal(Caller caller, UUID animalId) {
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
    }
}
