package varanid.intake.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.springframework.http.CacheControl;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;

/** Documents about animals, for people to read and to print, that are there in several types. */
public final class Documents {

    private static final String NOTHING_ACTIVE = "default-src 'none'; style-src 'self'; img-src 'self' data:;"
            + " base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
    private static final int LONGEST_NAME = 40;

    private Documents() {}

    /**
     * The type that the request likes best; the first of all where it does not mind; empty where it accepts none.
     *
     * @param offered in order of preference
     */
    public static Optional<MediaType> choose(HttpServletRequest request, List<MediaType> offered) {
        if (!request.getHeaders(HttpHeaders.ACCEPT).hasMoreElements()) {
            return Optional.of(offered.get(0));
        }
        return Accepted.find(request).stream()
                .flatMap(List::stream)
                .flatMap(type -> offered.stream().filter(type::includes))
                .findFirst();
    }

    /**
     * A reply that nobody keeps and in which nothing acts by itself; shown where it is opened.
     *
     * @param fileName what it is saved under
     */
    public static ResponseEntity.BodyBuilder reply(MediaType type, String fileName) {
        return ResponseEntity.ok()
                .contentType(type)
                .cacheControl(CacheControl.noStore())
                .varyBy(HttpHeaders.ACCEPT)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.inline()
                                .filename(fileName, StandardCharsets.UTF_8)
                                .build()
                                .toString())
                .header("Content-Security-Policy", NOTHING_ACTIVE);
    }

    /**
     * The beginning of a name of people's as it may stand in a file's name: letters and digits alone, for that is the
     * last place to be hostile in. With a hyphen after it; nothing where nothing is left.
     */
    public static String inFileName(String name) {
        String plain = name.replaceAll("[^\\p{L}\\p{N}]+", "-").replaceAll("^-|-$", "");
        return plain.isEmpty()
                ? ""
                : plain.substring(
                                0,
                                plain.offsetByCodePoints(
                                        0, Math.min(LONGEST_NAME, plain.codePointCount(0, plain.length()))))
                        + "-";
    }
}
