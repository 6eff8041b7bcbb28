package varanid.intake.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.springframework.http.HttpHeaders;
import org.springframework.http.InvalidMediaTypeException;
import org.springframework.http.MediaType;
import org.springframework.util.InvalidMimeTypeException;
import org.springframework.util.MimeTypeUtils;

/** What a request accepts (RFC 9110, 12.5.1). */
public final class Accepted {

    private Accepted() {}

    /** The types it accepts, the best liked first, and of those the most specific; empty where they cannot be read. */
    public static Optional<List<MediaType>> find(HttpServletRequest request) {
        try {
            List<MediaType> wanted =
                    MediaType.parseMediaTypes(Collections.list(request.getHeaders(HttpHeaders.ACCEPT)));
            MimeTypeUtils.sortBySpecificity(wanted);
            return Optional.of(wanted.stream()
                    .filter(type -> type.getQualityValue() > 0)
                    .sorted((one, other) -> Double.compare(other.getQualityValue(), one.getQualityValue()))
                    .toList());
        } catch (InvalidMediaTypeException | InvalidMimeTypeException e) {
            return Optional.empty();
        }
    }
}
