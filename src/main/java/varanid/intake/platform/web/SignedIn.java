package varanid.intake.platform.web;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * All that a session holds: who signed in, when and how, and the SHA-256 of the key that only their browser has. Nothing of
 * what the person may do.
 *
 * @param keyHash in hexadecimal digits
 */
record SignedIn(UUID organisationId, UUID personId, UUID id, Instant at, Sessions.How how, String keyHash) {

    /** One line, as it is stored. */
    String text() {
        return Stream.of(organisationId, personId, id, at, how, keyHash)
                .map(Object::toString)
                .collect(Collectors.joining(" "));
    }

    /** Nothing where it is no such line: another version of the service may have written it. */
    static Optional<SignedIn> parse(String text) {
        String[] parts = text.split(" ", -1);
        if (parts.length != 6) {
            return Optional.empty();
        }
        try {
            return Optional.of(new SignedIn(
                    UUID.fromString(parts[0]),
                    UUID.fromString(parts[1]),
                    UUID.fromString(parts[2]),
                    Instant.parse(parts[3]),
                    Sessions.How.valueOf(parts[4]),
                    parts[5]));
        } catch (IllegalArgumentException | DateTimeException e) {
            return Optional.empty();
        }
    }

    boolean isOpenedBy(String key) {
        return MessageDigest.isEqual(
                hash(key).getBytes(StandardCharsets.US_ASCII), keyHash.getBytes(StandardCharsets.US_ASCII));
    }

    static String hash(String key) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(key.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(hash);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
