package varanid.intake.platform.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.http.HttpHeaders;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;

/** Knows a signed-in person by their session. Where a request brings a token, the token alone counts. */
final class SessionFilter extends OncePerRequestFilter {

    private final Sessions sessions;
    private final SessionCallerLookup callers;
    private final ProblemWriter problems;

    SessionFilter(Sessions sessions, SessionCallerLookup callers, ProblemWriter problems) {
        this.sessions = sessions;
        this.callers = callers;
        this.problems = problems;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (request.getHeader(HttpHeaders.AUTHORIZATION) == null) {
            Optional<Caller> caller;
            try {
                caller = sessions.find(request)
                        .flatMap(found -> callers.find(
                                found.who().organisationId(),
                                found.who().personId(),
                                found.who().id(),
                                found.key()));
            } catch (RuntimeException e) {
                logger.error("A session could not be looked up", e);
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
            caller.ifPresent(known -> {
                SecurityContext context = SecurityContextHolder.createEmptyContext();
                context.setAuthentication(new CallerToken(known, true));
                SecurityContextHolder.setContext(context);
            });
        }
        chain.doFilter(request, response);
    }
}
