package varanid.intake.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Objects;
import org.springframework.web.context.request.NativeWebRequest;

/** Small questions to a servlet request. */
final class Requests {

    private Requests() {}

    static HttpServletRequest servlet(NativeWebRequest request) {
        return Objects.requireNonNull(request.getNativeRequest(HttpServletRequest.class), "a servlet request");
    }

    /** The path with its query, as it was sent. */
    static String target(HttpServletRequest request) {
        String query = request.getQueryString();
        return query == null ? request.getRequestURI() : request.getRequestURI() + "?" + query;
    }
}
