package varanid.intake.platform.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import org.springframework.http.HttpMethod;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.security.web.util.matcher.RequestMatcher;
import org.springframework.web.filter.OncePerRequestFilter;

/** Sees to it that nothing repeats the address of a secret path. */
final class SecretPathFilter extends OncePerRequestFilter implements RequestMatcher {

    private final List<Open> open;

    private record Open(String pattern, RequestMatcher get, RequestMatcher head) {

        static Open of(SecretPath path) {
            PathPatternRequestMatcher.Builder matching = PathPatternRequestMatcher.withDefaults();
            return new Open(
                    path.pattern(),
                    matching.matcher(HttpMethod.GET, path.pattern()),
                    matching.matcher(HttpMethod.HEAD, path.pattern()));
        }

        boolean matches(HttpServletRequest request) {
            return get.matches(request) || head.matches(request);
        }
    }

    SecretPathFilter(List<SecretPath> paths) {
        this.open = paths.stream().map(Open::of).toList();
    }

    @Override
    public boolean matches(HttpServletRequest request) {
        return open.stream().anyMatch(each -> each.matches(request));
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        open.stream()
                .filter(each -> each.matches(request))
                .findFirst()
                .ifPresent(each -> Requests.showInstead(request, each.pattern()));
        chain.doFilter(request, response);
    }
}
