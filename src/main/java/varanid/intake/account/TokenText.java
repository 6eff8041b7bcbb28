package varanid.intake.account;

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
 * What a person sends: {@code vi1.} (so that a scanner of leaked secrets knows it), the organisation, and 256 random
 * bits, each in base64url. The organisation is in it because a row is found by organisation first.
 *
 * @param text the whole of it
 */
record TokenText(String text) {

    private static final String PREFIX = "vi1.";
    private static final int SECRET_BYTES = 32;
    private static final int HINT_CHARACTERS = 6;
    private static final Pattern FORM = Pattern.compile("vi1\\.([A-Za-z0-9_-]{22})\\.([A-Za-z0-9_-]{43})");
    private static final SecureRandom RANDOM = new SecureRandom();
    private static final UUID NOBODY = new UUID(0, 0);

    static TokenText random(UUID organisationId) {
        byte[] secret = new byte[SECRET_BYTES];
        RANDOM.nextBytes(secret);
        byte[] organisation = ByteBuffer.allocate(16)
                .putLong(organisationId.getMostSignificantBits())
                .putLong(organisationId.getLeastSignificantBits())
                .array();
        return new TokenText(PREFIX + base64(organisation) + "." + base64(secret));
    }

    /** The organisation it names; one that nobody has where it is no token. */
    UUID organisationId() {
        return match().map(parts -> {
                    ByteBuffer bytes = ByteBuffer.wrap(Base64.getUrlDecoder().decode(parts.group(1)));
                    return new UUID(bytes.getLong(), bytes.getLong());
                })
                .orElse(NOBODY);
    }

    /** SHA-256 of the whole text. */
    byte[] hash() {
        try {
            return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** Its first characters, to know it again in a list: 36 of the 256 bits. */
    String hint() {
        int start = text.lastIndexOf('.') + 1;
        return PREFIX + "…" + text.substring(start, start + HINT_CHARACTERS) + "…";
    }

    private Optional<Matcher> match() {
        Matcher matcher = FORM.matcher(text);
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
