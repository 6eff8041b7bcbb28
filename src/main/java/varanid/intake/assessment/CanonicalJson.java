package varanid.intake.assessment;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.databind.cfg.DateTimeFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * JSON that is the same bytes for the same content: UTF-8, no blanks, members in their declared order, numbers written
 * out, moments and durations as ISO 8601, nothing that is null.
 *
 * @param sha256 of the UTF-8 bytes, in lower-case hexadecimal digits
 */
public record CanonicalJson(String text, String sha256) {

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .disable(DateTimeFeature.WRITE_DATES_AS_TIMESTAMPS)
            .disable(DateTimeFeature.WRITE_DURATIONS_AS_TIMESTAMPS)
            .changeDefaultPropertyInclusion(inclusion -> inclusion.withValueInclusion(JsonInclude.Include.NON_NULL))
            .build();

    public static CanonicalJson of(Object content) {
        String text = MAPPER.writeValueAsString(content);
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return new CanonicalJson(text, HexFormat.of().formatHex(digest));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    public byte[] bytes() {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** A strong entity tag: the bytes never change, so neither does it. */
    public String eTag() {
        return '"' + sha256 + '"';
    }
}
