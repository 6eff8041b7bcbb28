package varanid.intake.platform.web;

import java.nio.charset.StandardCharsets;

/**
 * A secret text that does not print itself.
 *
 * @param text the secret
 */
public record Secret(String text) {

    byte[] bytes() {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    @Override
    public String toString() {
        return "(secret)";
    }
}
