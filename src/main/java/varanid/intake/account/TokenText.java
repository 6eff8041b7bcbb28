package varanid.intake.account;

import java.util.UUID;
import varanid.intake.platform.web.SecretText;

/**
 * What a person sends with a request: a {@link SecretText} that begins with {@code vi1}.
 *
 * @param text the whole of it
 */
record TokenText(String text) {

    private static final String PREFIX = "vi1";

    static TokenText random(UUID organisationId) {
        return new TokenText(SecretText.random(PREFIX, organisationId).text());
    }

    /** The organisation it names; one that nobody has where it is no token. */
    UUID organisationId() {
        return secret().organisationId();
    }

    /** SHA-256 of the whole text. */
    byte[] hash() {
        return secret().hash();
    }

    /** Its first characters, to know it again in a list. */
    String hint() {
        return secret().hint();
    }

    private SecretText secret() {
        return new SecretText(PREFIX, text);
    }

    @Override
    public String toString() {
        return hint();
    }
}
