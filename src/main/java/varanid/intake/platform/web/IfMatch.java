package varanid.intake.platform.web;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which version a PUT or PATCH means to change: a controller takes it as a parameter, which makes the header
 * {@code If-Match} needed (428 without), and {@link #require requires} the version it found.
 */
public final class IfMatch {

    private final List<String> tags;

    IfMatch(List<String> tags) {
        this.tags = tags;
    }

    /** For that version, as a form says that was made from it. */
    public static IfMatch of(long version) {
        return new IfMatch(List.of(Version.tag(version)));
    }

    /** For the version that a form was made from; for one that there never is where it names none. */
    public static IfMatch of(SentForm form) {
        return of(form.find("version")
                .filter(text -> text.matches("\\d{1,18}"))
                .map(Long::parseLong)
                .orElse(-1L));
    }

    static IfMatch parse(String header) {
        return new IfMatch(Arrays.stream(header.split(",")).map(String::strip).toList());
    }

    /**
     * Compares strongly (RFC 9110 section 13.1.1). The row's own version check at commit catches who comes between.
     *
     * @throws ProblemException 412 where none of the tags is the current one
     */
    public void require(@Nullable Long version) {
        String current = Version.tag(version);
        if (!tags.contains("*") && !tags.contains(current)) {
            throw new ProblemException(
                    ProblemType.STALE,
                    "If-Match does not name the current version; read it again and decide whether your change still"
                            + " holds.");
        }
    }
}
