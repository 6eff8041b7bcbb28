package varanid.intake.platform.web;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.json.JsonMapper;

/**
 * Does the effect of a POST in one transaction, and once per {@code Idempotency-Key}.
 *
 * <p>The reply is stored with the effect, in the same transaction: after a crash both are there or neither, and the
 * same request with the same key gets the same reply with {@code Idempotency-Replayed: true}. A key belongs to one token
 * and is kept for {@link #KEPT}. A reply may hold a secret, so it is stored sealed with the key that only the sender
 * knows ({@link SealedReply}).
 */
@Component
public class Once {

    /** How long a key is remembered. */
    public static final Duration KEPT = Duration.ofHours(24);

    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final JsonMapper json;
    private final Clock clock;

    Once(JdbcClient jdbc, PlatformTransactionManager transactions, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.transaction = new TransactionTemplate(transactions);
        this.json = json;
        this.clock = clock;
    }

    /**
     * Does the effect, unless it was done before under the same key.
     *
     * @param effect stores things and says what to reply; what it throws rolls everything back
     * @throws ProblemException 409 while a request with the same key is worked on, 422 where the key was used for
     *     another request, and whatever the effect throws
     */
    public ResponseEntity<byte[]> perform(Caller caller, KeyedRequest request, Supplier<Reply> effect) {
        ResponseEntity<byte[]> reply = transaction.execute(status -> {
            if (request.key().isEmpty()) {
                return write(effect.get());
            }
            return performOnce(caller, request, request.key().get(), effect);
        });
        if (reply == null) {
            throw new IllegalStateException("a transaction without a reply");
        }
        return reply;
    }

    private ResponseEntity<byte[]> performOnce(
            Caller caller, KeyedRequest request, String key, Supplier<Reply> effect) {
        byte[] keyHash = sha256(key);
        byte[] requestHash = request.hash();
        takeLock(caller, keyHash);
        Instant now = clock.instant();
        forget(caller, keyHash, now.minus(KEPT));
        Optional<Stored> stored = find(caller, keyHash);
        if (stored.isPresent()) {
            if (!MessageDigest.isEqual(stored.get().requestHash(), requestHash)) {
                throw new ProblemException(
                        ProblemType.KEY_REUSED,
                        "This Idempotency-Key came with another method, path or body before. Use a new key for a new"
                                + " request.");
            }
            return replay(SealedReply.open(stored.get().sealedReply(), caller, key));
        }
        ResponseEntity<byte[]> reply = write(effect.get());
        store(caller, keyHash, requestHash, SealedReply.seal(plain(reply), caller, key), now);
        return reply;
    }

    /** Held to the end of the transaction, so whoever gets it next sees what was stored. */
    private void takeLock(Caller caller, byte[] keyHash) {
        long lock = ByteBuffer.wrap(sha256(caller.organisationId() + " " + caller.tokenId(), keyHash))
                .getLong();
        boolean taken = jdbc.sql("SELECT pg_try_advisory_xact_lock(?)")
                .param(lock)
                .query(Boolean.class)
                .single();
        if (!taken) {
            throw new ProblemException(
                    ProblemType.IN_FLIGHT,
                    "The first request with this Idempotency-Key has not ended yet. Ask again in a moment.",
                    List.of(),
                    Map.of("Retry-After", "1"));
        }
    }

    private void forget(Caller caller, byte[] keyHash, Instant before) {
        jdbc.sql("""
                        DELETE FROM idempotency_reply
                        WHERE organisation_id = ? AND token_id = ? AND key_hash = ? AND recorded_at < ?""")
                .params(caller.organisationId(), caller.tokenId(), keyHash, utc(before))
                .update();
    }

    private Optional<Stored> find(Caller caller, byte[] keyHash) {
        return jdbc.sql("""
                        SELECT request_hash, sealed_reply FROM idempotency_reply
                        WHERE organisation_id = ? AND token_id = ? AND key_hash = ?""")
                .params(caller.organisationId(), caller.tokenId(), keyHash)
                .query((row, number) -> new Stored(row.getBytes(1), row.getBytes(2)))
                .optional();
    }

    private void store(Caller caller, byte[] keyHash, byte[] requestHash, byte[] sealedReply, Instant now) {
        jdbc.sql("""
                        INSERT INTO idempotency_reply
                        (organisation_id, token_id, key_hash, request_hash, sealed_reply, recorded_at)
                        VALUES (?, ?, ?, ?, ?, ?)""")
                .params(caller.organisationId(), caller.tokenId(), keyHash, requestHash, sealedReply, utc(now))
                .update();
    }

    /** Removes what is kept no longer. */
    @Scheduled(fixedDelayString = "PT1H", initialDelayString = "PT5M")
    void purge() {
        jdbc.sql("DELETE FROM idempotency_reply WHERE recorded_at < ?")
                .param(utc(clock.instant().minus(KEPT)))
                .update();
    }

    private ResponseEntity<byte[]> write(Reply reply) {
        ResponseEntity.BodyBuilder builder = ResponseEntity.status(reply.status());
        reply.headers().forEach(builder::header);
        return builder.contentType(MediaType.APPLICATION_JSON).body(json.writeValueAsBytes(reply.body()));
    }

    private byte[] plain(ResponseEntity<byte[]> reply) {
        byte[] body = reply.getBody() == null ? new byte[0] : reply.getBody();
        return json.writeValueAsBytes(
                new Kept(reply.getStatusCode().value(), reply.getHeaders().toSingleValueMap(), body));
    }

    private ResponseEntity<byte[]> replay(byte[] plain) {
        Kept kept = json.readValue(plain, Kept.class);
        ResponseEntity.BodyBuilder builder = ResponseEntity.status(kept.status());
        kept.headers().forEach(builder::header);
        return builder.header("Idempotency-Replayed", "true").body(kept.body());
    }

    private static OffsetDateTime utc(Instant instant) {
        return instant.atOffset(ZoneOffset.UTC);
    }

    static byte[] sha256(String text, byte[]... more) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(text.getBytes(StandardCharsets.UTF_8));
            for (byte[] each : more) {
                digest.update((byte) '\n');
                digest.update(each);
            }
            return digest.digest();
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private record Stored(byte[] requestHash, byte[] sealedReply) {}

    /** What of a reply is stored. */
    record Kept(int status, Map<String, String> headers, byte[] body) {}
}
