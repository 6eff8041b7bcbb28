package varanid.intake.platform.web;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import java.util.Collections;
import java.util.Locale;
import java.util.Objects;
import org.springframework.http.HttpHeaders;
import org.springframework.web.context.request.NativeWebRequest;

/** Small questions to a servlet request. */
final class Requests {

    private static final String SHOWN_PATH = Requests.class.getName() + ".shownPath";

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

    /** Whether a browser asks for something to show: it names HTML, which programs do not, and it is not the API. */
    static boolean wantsPage(HttpServletRequest request) {
        return !shownPath(request).startsWith("/api/")
                && Collections.list(request.getHeaders(HttpHeaders.ACCEPT)).stream()
                        .anyMatch(accepted -> accepted.toLowerCase(Locale.ROOT).contains("text/html"));
    }

    /** The path with its query, as it was sent. */
    static String target(HttpServletRequest request) {
        String query = request.getQueryString();
        return query == null ? request.getRequestURI() : request.getRequestURI() + "?" + query;
    }
}
