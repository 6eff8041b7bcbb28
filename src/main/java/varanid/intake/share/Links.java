package varanid.intake.share;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.http.HttpHeaders;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.account.Zones;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.web.Allowance;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.platform.web.SecretText;

/** Opens links. */
@Service
public class Links {

    private static final int PLACE_DIGITS = 8;

    private final ShareLinkRows rows;
    private final Zones zones;
    private final JdbcClient jdbc;
    private final Ids ids;
    private final Clock clock;
    private final Allowance<UUID> ofLink;
    private final Allowance<String> ofWrongSecrets;

    Links(ShareLinkRows rows, Zones zones, JdbcClient jdbc, Ids ids, Clock clock) {
        this.rows = rows;
        this.zones = zones;
        this.jdbc = jdbc;
        this.ids = ids;
        this.clock = clock;
        // A vet opens it some times, in some forms; a program that fetches it all day is none.
        this.ofLink = new Allowance<>(clock, 40, Duration.ofSeconds(20));
        this.ofWrongSecrets = new Allowance<>(clock, 20, Duration.ofSeconds(10));
    }

    /**
     * Opens a link and writes the opening down.
     *
     * @param what the form that is opened: html, pdf, json, fhir, reply-form or reply
     * @param from the client's address, of which only a salted hash is kept
     * @throws ProblemException 404 where nothing opens by it, whatever the reason; 429 after too many
     */
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public OpenedLink open(LinkKind kind, String secret, String what, String from) {
        SecretText text = new SecretText(kind.prefix(), secret);
        Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        Optional<ShareLinkRow> found = rows.findOpen(text.organisationId(), text.hash(), kind.code(), now);
        if (found.isEmpty()) {
            // Counted after looking: somebody else's wrong ones, sent through the same proxy, shut nobody out.
            refuseTooMany(ofWrongSecrets.take(from));
            throw refusal(
                    ProblemType.NOT_FOUND, "Nothing opens by this link. Ask whoever sent it for a new one.", Map.of());
        }
        ShareLinkRow link = found.get();
        refuseTooMany(ofLink.take(link.id()));
        jdbc.sql("INSERT INTO share_link_opening (organisation_id, id, link_id, opened_at, what, place)"
                        + " VALUES (?, ?, ?, ?, ?, ?)")
                .params(link.key.organisationId(), ids.next(), link.id(), Timestamp.from(now), what, place(link, from))
                .update();
        return opened(link);
    }

    /** The link that a secret opens, if it is of this animal; nothing is written down, for nothing is shown by it. */
    @Transactional(readOnly = true)
    public boolean opens(LinkKind kind, UUID organisationId, UUID animalId, String secret) {
        SecretText text = new SecretText(kind.prefix(), secret);
        return text.organisationId().equals(organisationId)
                && rows.findOpen(organisationId, text.hash(), kind.code(), clock.instant())
                        .filter(link -> link.animalId.equals(animalId))
                        .isPresent();
    }

    private OpenedLink opened(ShareLinkRow link) {
        return new OpenedLink(
                link.id(),
                link.key.organisationId(),
                zones.get(link.key.organisationId()),
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

    private static void refuseTooMany(Optional<Duration> wait) {
        wait.ifPresent(time -> {
            throw refusal(
                    ProblemType.TOO_MANY_REQUESTS,
                    "Ask again later.",
                    Map.of(
                            HttpHeaders.RETRY_AFTER,
                            Long.toString(time.plusMillis(999).toSeconds())));
        });
    }

    /** With a disposition: the framework would give one by how the address ends, and refusals are to look the same. */
    private static ProblemException refusal(ProblemType type, String detail, Map<String, String> headers) {
        Map<String, String> all = new HashMap<>(headers);
        all.put(HttpHeaders.CONTENT_DISPOSITION, "inline");
        all.put(HttpHeaders.CACHE_CONTROL, "no-store");
        return new ProblemException(type, detail, List.of(), all);
    }
}
