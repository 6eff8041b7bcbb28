package varanid.intake.share;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.security.SecureRandom;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.http.ResponseEntity;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
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

/** Gives out links, lists and revokes them, for the interface and for the page on which people do it. */
@Service
public class GiveLinks {

    private static final SecureRandom RANDOM = new SecureRandom();
    private static final int SALT_BYTES = 16;

    private final ShareLinkRows rows;
    private final Animals animals;
    private final PublicAddress address;
    private final Ids ids;
    private final LinkUses uses;
    private final LinkLocks locks;
    private final JdbcClient jdbc;
    private final Once once;
    private final Clock clock;

    GiveLinks(
            ShareLinkRows rows,
            Animals animals,
            PublicAddress address,
            Ids ids,
            LinkUses uses,
            LinkLocks locks,
            JdbcClient jdbc,
            Once once,
            Clock clock) {
        this.rows = rows;
        this.uses = uses;
        this.locks = locks;
        this.jdbc = jdbc;
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
        caller.requireKeeperOrClinician();
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

    /**
     * The links that were given out for an animal, the last first.
     *
     * @param before the last one that was seen; empty: from the last given out
     * @param most at most so many
     */
    @Transactional(readOnly = true)
    public List<Known> listLatest(Caller caller, UUID animalId, Optional<UUID> before, int most) {
        List<ShareLinkRow> found = before.map(
                        id -> rows.listBefore(caller.organisationId(), animalId, id, Limit.of(most)))
                .orElseGet(() -> rows.listLatest(caller.organisationId(), animalId, Limit.of(most)));
        Map<UUID, LinkUse> used = uses.of(found);
        Instant now = clock.instant();
        return found.stream()
                .map(link -> known(link, Objects.requireNonNull(used.get(link.id()), "the link's use"), now))
                .toList();
    }

    private static Known known(ShareLinkRow link, LinkUse use, Instant now) {
        return new Known(
                link.id(),
                link.linkKind(),
                link.recipient,
                link.hint,
                use.state(link.expiresAt, now),
                link.expiresAt,
                use.openings(),
                Optional.ofNullable(use.lastOpenedAt()),
                link.recordedAt);
    }

    /**
     * Revokes a link, at once and for good. Once that is done, no opening is written any more.
     *
     * @throws ProblemException 403 for who is neither keeper nor clinician; 404 where the animal has no such link
     */
    @Transactional
    public void revoke(Caller caller, UUID animalId, UUID id) {
        caller.requireKeeperOrClinician();
        if (rows.find(caller.organisationId(), animalId, id).isEmpty()) {
            throw ProblemException.notFound("link");
        }
        locks.holdToRevoke(id);
        jdbc.sql("INSERT INTO share_link_revocation (organisation_id, link_id, recorded_by, recorded_at)"
                        + " VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING")
                .params(
                        caller.organisationId(),
                        id,
                        caller.personId(),
                        Timestamp.from(clock.instant().truncatedTo(ChronoUnit.MILLIS)))
                .update();
    }

    void requireAnimal(Caller caller, UUID animalId) {
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
    }

    /**
     * A link that was given out, without its address.
     *
     * @param hint enough of its address to know it again
     * @param state open, expired, revoked or issuer-left
     * @param openings how often it was opened
     */
    public record Known(
            UUID id,
            LinkKind kind,
            String recipient,
            String hint,
            String state,
            Instant expiresAt,
            int openings,
            Optional<Instant> lastOpenedAt,
            Instant recordedAt) {}
}
