package varanid.intake.platform.web;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The reply to a POST, in a form that can be stored and given again.
 *
 * @param status the HTTP status
 * @param headers beside {@code Content-Type}
 * @param body written as JSON
 */
public record Reply(int status, Map<String, String> headers, Object body) {

    /** 201 with the path of the new thing. */
    public static Reply created(String path, @Nullable Long version, Object body) {
        Map<String, String> headers = new LinkedHashMap<>();
        headers.put("Location", path);
        if (version != null) {
            headers.put("ETag", Version.tag(version));
        }
        return new Reply(201, headers, body);
    }

    /** 200. */
    public static Reply ok(Object body) {
        return new Reply(200, Map.of(), body);
    }
}
