package varanid.intake.platform.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Ends a request with a problem. */
public final class ProblemException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient ProblemType type;
    private final String detail;
    private final transient List<Fault> faults;
    private final transient Map<String, String> headers;
    private final transient Optional<String> page;

    public ProblemException(ProblemType type, String detail) {
        this(type, detail, List.of());
    }

    public ProblemException(ProblemType type, String detail, List<Fault> faults) {
        this(type, detail, faults, Map.of());
    }

    public ProblemException(ProblemType type, String detail, List<Fault> faults, Map<String, String> headers) {
        this(type, detail, faults, headers, Optional.empty());
    }

    private ProblemException(
            ProblemType type, String detail, List<Fault> faults, Map<String, String> headers, Optional<String> page) {
        super(type.name() + ": " + detail, null, false, false);
        this.type = type;
        this.detail = detail;
        this.faults = List.copyOf(faults);
        this.headers = Map.copyOf(headers);
        this.page = page;
    }

    /** 404. Also for what belongs to another organisation: that it exists is nobody else's business. */
    public static ProblemException notFound(String what) {
        return new ProblemException(ProblemType.NOT_FOUND, "There is no such " + what + ".");
    }

    /** 403. */
    public static ProblemException forbidden(String detail) {
        return new ProblemException(ProblemType.FORBIDDEN, detail);
    }

    /** 400. */
    public static ProblemException malformed(String detail) {
        return new ProblemException(ProblemType.MALFORMED_REQUEST, detail);
    }

    /**
     * The same problem, which a browser is shown as a page: where people come who know nothing of programs.
     *
     * @param html a whole page, with everything in it escaped
     */
    public ProblemException shownAs(String html) {
        return new ProblemException(type, detail, faults, headers, Optional.of(html));
    }

    public ProblemType type() {
        return type;
    }

    public String detail() {
        return detail;
    }

    public List<Fault> faults() {
        return faults;
    }

    /** Headers that go with the problem, such as {@code Allow}. */
    public Map<String, String> headers() {
        return headers;
    }

    /** What a browser is shown instead, if anything. */
    Optional<String> page() {
        return page;
    }
}
