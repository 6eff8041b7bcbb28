package varanid.intake.account;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.web.Allowance;
import varanid.intake.platform.web.SecretText;

/**
 * Links that sign a person in, each once. Opening one shows a button and uses nothing up, so that a program which looks
 * at links before people do cannot burn it.
 */
@Component
public class SignInLinks {

    /** How long a link opens that an administrator made, unless they say otherwise. */
    static final Duration USUAL_LIFE = Duration.ofHours(24);

    /** What stands before the secret. */
    static final String PATH = "/sign-in/";

    private static final String PREFIX = "vs1";

    private final JdbcClient jdbc;
    private final Ids ids;
    private final Clock clock;
    private final Allowance<String> ofWrongSecrets;

    SignInLinks(JdbcClient jdbc, Ids ids, Clock clock) {
        this.jdbc = jdbc;
        this.ids = ids;
        this.clock = clock;
        this.ofWrongSecrets = new Allowance<>(clock, 20, Duration.ofSeconds(10));
    }

    /**
     * A link as it was made: its secret is nowhere else.
     *
     * @param path of this service
     */
    record Made(UUID id, String path, Instant expiresAt) {

        @Override
        public String toString() {
            return id.toString();
        }
    }

    /** @param issuedBy null: the service itself, for who sits at the machine */
    Made make(UUID organisationId, UUID personId, @Nullable UUID issuedBy, Instant expiresAt) {
        SecretText secret = SecretText.random(PREFIX, organisationId);
        UUID id = ids.next();
        jdbc.sql("""
                        INSERT INTO sign_in_link
                            (organisation_id, id, person_id, issued_by, secret_hash, expires_at, recorded_at)
                        VALUES (?, ?, ?, ?, ?, ?, ?)""")
                .param(organisationId)
                .param(id)
                .param(personId)
                .param(issuedBy)
                .param(secret.hash())
                .param(utc(expiresAt))
                .param(utc(clock.instant()))
                .update();
        return new Made(id, PATH + secret.text(), expiresAt);
    }

    /** Whether it would sign somebody in. */
    public boolean isGood(String secret) {
        SecretText text = new SecretText(PREFIX, secret);
        return jdbc.sql("""
                        SELECT count(*) FROM sign_in_link l
                        JOIN person p ON p.organisation_id = l.organisation_id AND p.id = l.person_id
                        WHERE l.organisation_id = ? AND l.secret_hash = ? AND l.used_at IS NULL AND l.expires_at > ?
                            AND p.active""")
                        .params(text.organisationId(), text.hash(), utc(clock.instant()))
                        .query(Integer.class)
                        .single()
                > 0;
    }

    /**
     * Uses the link up. Of several at the same moment, one gets the person: the row is changed only while it is unused.
     *
     * @return nothing where it is unknown, used, too old, or its person is not active any more
     */
    public Optional<SignedInPerson> use(String secret) {
        SecretText text = new SecretText(PREFIX, secret);
        OffsetDateTime now = utc(clock.instant());
        return jdbc.sql("""
                        UPDATE sign_in_link l SET used_at = ?
                        FROM person p
                        WHERE l.organisation_id = ? AND l.secret_hash = ? AND l.used_at IS NULL AND l.expires_at > ?
                            AND p.organisation_id = l.organisation_id AND p.id = l.person_id AND p.active
                        RETURNING l.organisation_id, l.person_id""")
                .params(now, text.organisationId(), text.hash(), now)
                .query((row, number) -> new SignedInPerson(
                        row.getObject("organisation_id", UUID.class), row.getObject("person_id", UUID.class)))
                .optional();
    }

    /** Counts a wrong secret; where there were too many from there, says how long to wait. */
    public Optional<Duration> countWrong(String from) {
        return ofWrongSecrets.take(from);
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
