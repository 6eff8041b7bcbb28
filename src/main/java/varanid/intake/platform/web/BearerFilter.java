package varanid.intake.platform.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.http.HttpHeaders;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Reads the bearer token (RFC 6750). A request without one goes on and is refused where one is needed; one with a bad
 * one is refused here, before anything of the body is read.
 */
final class BearerFilter extends OncePerRequestFilter {

    private static final String SCHEME = "bearer ";

    private final CallerLookup callers;
    private final ProblemWriter problems;

    BearerFilter(CallerLookup callers, ProblemWriter problems) {
        this.callers = callers;
        this.problems = problems;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        List<String> headers = Collections.list(request.getHeaders(HttpHeaders.AUTHORIZATION));
        if (headers.isEmpty()) {
            chain.doFilter(request, response);
            return;
        }
        String header = headers.get(0);
        if (headers.size() > 1 || !header.toLowerCase(Locale.ROOT).startsWith(SCHEME)) {
            refuse(request, response, "The Authorization header is not one Bearer token.");
            return;
        }
        CallerLookup.Result result;
        try {
            result = callers.find(header.substring(SCHEME.length()).strip());
        } catch (RuntimeException e) {
            logger.error("A token could not be looked up", e);
            problems.write(
                    new ProblemException(
                            ProblemType.UNAVAILABLE,
                            "Repeat the request in a moment.",
                            List.of(),
                            Map.of(HttpHeaders.RETRY_AFTER, "5")),
                    request,
                    response);
            return;
        }
        if (result instanceof CallerLookup.Known known) {
            SecurityContext context = SecurityContextHolder.createEmptyContext();
            context.setAuthentication(new CallerToken(known.caller(), false));
            SecurityContextHolder.setContext(context);
            chain.doFilter(request, response);
        } else if (result instanceof CallerLookup.Refused refused) {
            refuse(request, response, refused.why());
        }
    }

    private void refuse(HttpServletRequest request, HttpServletResponse response, String why) throws IOException {
        problems.write(
                new ProblemException(
                        ProblemType.UNAUTHENTICATED,
                        why,
                        List.of(),
                        Map.of(
                                HttpHeaders.WWW_AUTHENTICATE,
                                "Bearer realm=\"varanid-intake\", error=\"invalid_token\"")),
                request,
                response);
    }
}
