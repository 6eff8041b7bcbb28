package varanid.intake.share;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.account.ActivePeople;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.web.Allowance;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.SecretText;

/** Opens links. */
@Service
public class Links {

    private static final int PLACE_DIGITS = 8;

    /** What is opened where a form, or a body, was sent. */
    private static final String SENT = "reply";

    private final ShareLinkRows rows;
    private final ActivePeople people;
    private final LinkLocks locks;
    private final Refusals refusals;
    private final JdbcClient jdbc;
    private final Ids ids;
    private final Clock clock;
    private final Allowance<UUID> ofLink;
    private final Allowance<String> ofWrongSecrets;

    Links(
            ShareLinkRows rows,
            ActivePeople people,
            LinkLocks locks,
            Refusals refusals,
            JdbcClient jdbc,
            Ids ids,
            Clock clock) {
        this.rows = rows;
        this.people = people;
        this.locks = locks;
        this.refusals = refusals;
        this.jdbc = jdbc;
        this.ids = ids;
        this.clock = clock;
        // A vet opens it some times, in some forms; a program that fetches it all day is none.
        this.ofLink = new Allowance<>(clock, 40, Duration.ofSeconds(20));
        this.ofWrongSecrets = new Allowance<>(clock, 20, Duration.ofSeconds(10));
    }

    /**
     * Opens a link and writes the opening down. Once a revocation was answered, no opening is written any more.
     *
     * @param what the form that is opened: html, pdf, json, fhir, reply-form or reply
     * @param from the client's address, of which only a salted hash is kept
     * @throws ProblemException 404 where nothing opens by it, whatever the reason; 429 after too many
     */
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public OpenedLink open(LinkKind kind, String secret, String what, String from) {
        boolean sent = what.equals(SENT);
        SecretText text = new SecretText(kind.prefix(), secret);
        Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        Optional<ShareLinkRow> found = rows.findOpen(text.organisationId(), text.hash(), kind.code(), now);
        Optional<ZoneId> zone = found.flatMap(this::zoneWhileIssuerIsActive);
        if (found.isEmpty() || zone.isEmpty()) {
            throw refuse(from, sent);
        }
        ShareLinkRow link = found.get();
        Optional<Duration> wait = ofLink.take(link.id());
        if (wait.isPresent()) {
            throw refusals.openedTooOften(sent, wait.get());
        }
        locks.holdToOpen(link.id());
        // Looked at again: it may have been revoked while its lock was waited for.
        int written = jdbc.sql("INSERT INTO share_link_opening (organisation_id, id, link_id, opened_at, what, place)"
                        + " SELECT ?, ?, ?, ?, ?, ? WHERE NOT EXISTS"
                        + " (SELECT FROM share_link_revocation WHERE organisation_id = ? AND link_id = ?)")
                .params(
                        link.key.organisationId(),
                        ids.next(),
                        link.id(),
                        Timestamp.from(now),
                        what,
                        place(link, from),
                        link.key.organisationId(),
                        link.id())
                .update();
        if (written == 0) {
            throw refuse(from, sent);
        }
        return opened(link, zone.get());
    }

    /** Counted after looking: somebody else's wrong ones, sent through the same proxy, shut nobody out. */
    private ProblemException refuse(String from, boolean sent) {
        return ofWrongSecrets
                .take(from)
                .map(wait -> refusals.openedTooOften(sent, wait))
                .orElseGet(() -> refusals.opensNothing(sent));
    }

    /** Whether a secret opens a link to this animal; nothing is written down, for nothing is shown by it. */
    @Transactional(readOnly = true)
    public boolean opens(LinkKind kind, UUID organisationId, UUID animalId, String secret) {
        SecretText text = new SecretText(kind.prefix(), secret);
        return text.organisationId().equals(organisationId)
                && rows.findOpen(organisationId, text.hash(), kind.code(), clock.instant())
                        .filter(link -> link.animalId.equals(animalId))
                        .flatMap(this::zoneWhileIssuerIsActive)
                        .isPresent();
    }

    /** The organisation's zone; nothing where the person who gave the link out has left. */
    private Optional<ZoneId> zoneWhileIssuerIsActive(ShareLinkRow link) {
        return people.findZone(link.key.organisationId(), link.recordedBy);
    }

    private static OpenedLink opened(ShareLinkRow link, ZoneId zone) {
        return new OpenedLink(
                link.id(),
                link.key.organisationId(),
                zone,
                link.animalId,
                link.recordedBy,
                link.confirms,
                link.recipient);
    }

    private static String place(ShareLinkRow link, String from) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(link.salt);
            return HexFormat.of()
                    .formatHex(digest.digest(from.getBytes(StandardCharsets.UTF_8)))
                    .substring(0, PLACE_DIGITS);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
