package varanid.intake.platform.web;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A secret that is given out once, and of which only a hash is stored: a prefix (so that a scanner of leaked secrets
 * knows it), the organisation, and 256 random bits, each in base64url, with dots between. The organisation is in it
 * because a row is found by organisation first.
 *
 * @param prefix what sort of secret it is to be
 * @param text the whole of it, whatever somebody sent
 */
public record SecretText(String prefix, String text) {

    private static final int SECRET_BYTES = 32;
    private static final int HINT_CHARACTERS = 6;
    private static final Pattern REST = Pattern.compile("\\.([A-Za-z0-9_-]{22})\\.([A-Za-z0-9_-]{43})");
    private static final SecureRandom RANDOM = new SecureRandom();
    private static final UUID NOBODY = new UUID(0, 0);

    /** A new one. */
    public static SecretText random(String prefix, UUID organisationId) {
        byte[] secret = new byte[SECRET_BYTES];
        RANDOM.nextBytes(secret);
        byte[] organisation = ByteBuffer.allocate(16)
                .putLong(organisationId.getMostSignificantBits())
                .putLong(organisationId.getLeastSignificantBits())
                .array();
        return new SecretText(prefix, prefix + "." + base64(organisation) + "." + base64(secret));
    }

    /** The organisation it names; one that nobody has where it is no such secret. */
    public UUID organisationId() {
        return match().map(parts -> {
                    ByteBuffer bytes = ByteBuffer.wrap(Base64.getUrlDecoder().decode(parts.group(1)));
                    return new UUID(bytes.getLong(), bytes.getLong());
                })
                .orElse(NOBODY);
    }

    /** SHA-256 of the whole text: of 256 random bits, a slow hash would add nothing. */
    public byte[] hash() {
        try {
            return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** The first characters of its secret part, to know it again in a list: 36 of the 256 bits. */
    public String hint() {
        return match().map(parts -> prefix + ".…" + parts.group(2).substring(0, HINT_CHARACTERS) + "…")
                .orElse(prefix + ".…");
    }

    private Optional<Matcher> match() {
        if (!text.startsWith(prefix)) {
            return Optional.empty();
        }
        Matcher matcher = REST.matcher(text).region(prefix.length(), text.length());
        return matcher.matches() ? Optional.of(matcher) : Optional.empty();
    }

    private static String base64(byte[] bytes) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    @Override
    public String toString() {
        return hint();
    }
}
