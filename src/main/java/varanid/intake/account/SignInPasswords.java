package varanid.intake.account;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.text.Normalizer;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Base64;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.bcrypt.BCryptPasswordEncoder;
import org.springframework.security.crypto.password.DelegatingPasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;
import varanid.intake.platform.web.Allowance;
import varanid.intake.platform.web.Caller;

/**
 * Signing in with e-mail and password. What is asked of a password is NIST SP 800-63B-4 (August 2025), section 3.1.1.2:
 * at least 15 characters where nothing else is asked for, 64 and more possible, no rules of composition, all of it
 * compared, a list of those that everybody tries, and an end after 100 wrong ones.
 *
 * <p>Whether an e-mail is known cannot be told from the answer, and hardly from how long it takes: the same query, the
 * same hash and the same count are made for any.
 */
@Component
public class SignInPasswords {

    /** In characters (code points), once in normal form. */
    public static final int SHORTEST = 15;

    /** More than anybody types, and little enough to hash. */
    public static final int LONGEST = 256;

    /** After so many wrong ones in a row, none is right any more until the person sets another. */
    static final int MOST_FAILURES = 100;

    private static final int WORK = 12;
    private static final int LONGEST_EMAIL = 254;
    private static final String LABEL = "varanid-intake sign-in password";

    private final JdbcClient jdbc;
    private final Clock clock;
    private final ExpectedPasswords expected;
    private final PasswordEncoder encoder =
            new DelegatingPasswordEncoder("bcrypt", Map.of("bcrypt", new BCryptPasswordEncoder(WORK)));

    /** What the password of an unknown e-mail is compared with. */
    private final String nobodys;

    private final Allowance<String> ofEmail;
    private final Allowance<String> ofAddress;

    SignInPasswords(JdbcClient jdbc, Clock clock, ExpectedPasswords expected) {
        this.jdbc = jdbc;
        this.clock = clock;
        this.expected = expected;
        this.nobodys = encode(UUID.randomUUID().toString());
        this.ofEmail = new Allowance<>(clock, 8, Duration.ofMinutes(1));
        this.ofAddress = new Allowance<>(clock, 30, Duration.ofSeconds(10));
    }

    /** What became of an attempt. */
    public sealed interface Attempt {}

    /** It is them. */
    public record Right(SignedInPerson person) implements Attempt {}

    /** It is not, for whatever reason. */
    public record Wrong() implements Attempt {}

    /** There were too many; nothing was compared. */
    public record TooMany(Duration pause) implements Attempt {

        /** How long to wait, in whole minutes. */
        public long minutes() {
            return Math.max(1, pause.plusSeconds(59).toMinutes());
        }
    }

    /** What is wrong with an e-mail or a password that somebody wants to sign in with. */
    public enum Fault {
        EMAIL_SHAPE,
        EMAIL_TAKEN,
        TOO_SHORT,
        TOO_LONG,
        EXPECTED
    }

    /** @param from the address of who tries */
    public Attempt check(String email, String password, String from) {
        String key = key(email);
        Optional<Duration> wait = ofAddress.take(from).or(() -> ofEmail.take(key));
        if (wait.isPresent()) {
            return new TooMany(wait.get());
        }
        // Counted before it is compared: many at the same moment are as many.
        Optional<Stored> stored = jdbc.sql("""
                        UPDATE sign_in_password s SET failures = failures + 1
                        FROM person p
                        WHERE s.email = ? AND s.failures < ?
                            AND p.organisation_id = s.organisation_id AND p.id = s.person_id AND p.active
                        RETURNING s.organisation_id, s.person_id, s.password_hash""")
                .params(key, MOST_FAILURES)
                .query((row, number) -> new Stored(
                        new SignedInPerson(
                                row.getObject("organisation_id", UUID.class), row.getObject("person_id", UUID.class)),
                        row.getString("password_hash")))
                .optional();
        boolean same = encoder.matches(
                whole(password), stored.map(Stored::passwordHash).orElse(nobodys));
        if (!same || stored.isEmpty()) {
            return new Wrong();
        }
        SignedInPerson person = stored.get().person();
        jdbc.sql("UPDATE sign_in_password SET failures = 0 WHERE organisation_id = ? AND person_id = ?")
                .params(person.organisationId(), person.personId())
                .update();
        return new Right(person);
    }

    /** The e-mail the person signs in with, if they have set a password. */
    public Optional<String> findEmail(Caller caller) {
        return jdbc.sql("SELECT email FROM sign_in_password WHERE organisation_id = ? AND person_id = ?")
                .params(caller.organisationId(), caller.personId())
                .query(String.class)
                .optional();
    }

    /** Sets what the person signs in with from now on, or says why not. */
    public Optional<Fault> set(Caller caller, String email, String password) {
        String key = key(email);
        int length = normal(password).codePointCount(0, normal(password).length());
        if (!key.matches("[^\\s@\\p{Cntrl}]+@[^\\s@\\p{Cntrl}]+") || key.length() > LONGEST_EMAIL) {
            return Optional.of(Fault.EMAIL_SHAPE);
        } else if (length < SHORTEST) {
            return Optional.of(Fault.TOO_SHORT);
        } else if (length > LONGEST) {
            return Optional.of(Fault.TOO_LONG);
        } else if (expected.contains(normal(password), key)) {
            return Optional.of(Fault.EXPECTED);
        }
        Instant now = clock.instant();
        try {
            jdbc.sql("""
                            INSERT INTO sign_in_password
                                (organisation_id, person_id, email, password_hash, failures, changed_at)
                            VALUES (?, ?, ?, ?, 0, ?)
                            ON CONFLICT (organisation_id, person_id) DO UPDATE
                            SET email = EXCLUDED.email, password_hash = EXCLUDED.password_hash, failures = 0,
                                changed_at = EXCLUDED.changed_at""")
                    .params(
                            caller.organisationId(),
                            caller.personId(),
                            key,
                            encode(password),
                            now.atOffset(ZoneOffset.UTC))
                    .update();
        } catch (DuplicateKeyException e) {
            return Optional.of(Fault.EMAIL_TAKEN);
        }
        return Optional.empty();
    }

    private String encode(String password) {
        String encoded = encoder.encode(whole(password));
        if (encoded == null) {
            throw new IllegalStateException("every text has a hash");
        }
        return encoded;
    }

    /**
     * The password as bcrypt gets it. Bcrypt reads 72 bytes and no more, so it gets a digest of all of them, as 64
     * characters; a digest with a label, so that one that leaked elsewhere is no help.
     */
    private static String whole(String password) {
        try {
            Mac mac = Mac.getInstance("HmacSHA384");
            mac.init(new SecretKeySpec(LABEL.getBytes(StandardCharsets.UTF_8), "HmacSHA384"));
            return Base64.getEncoder()
                    .encodeToString(mac.doFinal(normal(password).getBytes(StandardCharsets.UTF_8)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java has HmacSHA384", e);
        }
    }

    /** The same characters, however the keyboard composes them. */
    private static String normal(String password) {
        return Normalizer.normalize(password, Normalizer.Form.NFC);
    }

    private static String key(String email) {
        return Normalizer.normalize(email.strip(), Normalizer.Form.NFC).toLowerCase(Locale.ROOT);
    }

    private record Stored(SignedInPerson person, String passwordHash) {}
}
