package varanid.intake.platform.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.stream.Stream;
import org.springframework.http.HttpMethod;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.security.web.util.matcher.RequestMatcher;
import org.springframework.web.filter.OncePerRequestFilter;

/** Sees to it that nothing repeats the address of a secret path. */
final class SecretPathFilter extends OncePerRequestFilter implements RequestMatcher {

    private final List<Open> open;

    private record Open(String pattern, List<RequestMatcher> matchers) {

        static Open of(SecretPath path) {
            PathPatternRequestMatcher.Builder matching = PathPatternRequestMatcher.withDefaults();
            return new Open(
                    path.pattern(),
                    Stream.of(HttpMethod.GET, HttpMethod.HEAD, HttpMethod.POST)
                            .filter(method -> path.takesPosts() || method != HttpMethod.POST)
                            .<RequestMatcher>map(method -> matching.matcher(method, path.pattern()))
                            .toList());
        }

        boolean matches(HttpServletRequest request) {
            return matchers.stream().anyMatch(each -> each.matches(request));
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
