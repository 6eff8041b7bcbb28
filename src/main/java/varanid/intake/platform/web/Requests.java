package varanid.intake.platform.web;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Objects;
import org.springframework.http.MediaType;
import org.springframework.web.context.request.NativeWebRequest;

/** Small questions to a servlet request. */
final class Requests {

    private static final String SHOWN_PATH = Requests.class.getName() + ".shownPath";

    private static final MediaType ANY_JSON = new MediaType("application", "*+json");

    private Requests() {}

    static HttpServletRequest servlet(NativeWebRequest request) {
        return Objects.requireNonNull(request.getNativeRequest(HttpServletRequest.class), "a servlet request");
    }

    /** The path as it may be repeated in problems and the log. */
    static String shownPath(HttpServletRequest request) {
        if (request.getAttribute(SHOWN_PATH) instanceof String pattern) {
            return pattern;
        }
        // While an error is being told, the request's own path is that of the telling.
        return request.getAttribute(RequestDispatcher.ERROR_REQUEST_URI) instanceof String failed
                ? failed
                : request.getRequestURI();
    }

    /** From now on, this is what is shown instead of the path. */
    static void showInstead(HttpServletRequest request, String pattern) {
        request.setAttribute(SHOWN_PATH, pattern);
    }

    /**
     * Whether what it accepts names pages, and likes nothing that a program reads better: a browser. One that takes
     * whatever comes ({@code *}{@code /*}, or no word of it) is a program.
     */
    static boolean asksForPages(HttpServletRequest request) {
        return Accepted.find(request).stream()
                .flatMap(List::stream)
                .filter(type -> type.includes(MediaType.TEXT_HTML)
                        || type.isCompatibleWith(MediaType.APPLICATION_JSON)
                        || type.isCompatibleWith(ANY_JSON))
                .findFirst()
                .filter(type -> !type.isWildcardType())
                .filter(type -> type.includes(MediaType.TEXT_HTML))
                .isPresent();
    }

    /** Whether a browser asks for something to show, and not of the API. */
    static boolean wantsPage(HttpServletRequest request) {
        return !shownPath(request).startsWith("/api/") && asksForPages(request);
    }

    /** The path with its query, as it was sent. */
    static String target(HttpServletRequest request) {
        String query = request.getQueryString();
        return query == null ? request.getRequestURI() : request.getRequestURI() + "?" + query;
    }
}
