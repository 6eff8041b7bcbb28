package varanid.intake.platform.web;

import jakarta.servlet.DispatcherType;
import jakarta.servlet.http.HttpServletRequest;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.authentication.ProviderNotFoundException;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.AccessDeniedHandler;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.security.web.context.RequestAttributeSecurityContextRepository;
import org.springframework.security.web.csrf.CsrfException;
import org.springframework.security.web.csrf.CsrfFilter;
import org.springframework.security.web.csrf.CsrfTokenRepository;
import org.springframework.security.web.firewall.RequestRejectedHandler;
import org.springframework.security.web.header.HeaderWriterFilter;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter;
import org.springframework.security.web.header.writers.StaticHeadersWriter;

/**
 * Who may ask at all: whoever has a token or is signed in, and anybody for what is open. What a person may do,
 * controllers ask.
 */
@Configuration(proxyBeanMethods = false)
class SecurityConfiguration {

    /** Nothing from elsewhere, nothing in the page itself that acts or styles, no frame around it, forms only to here. */
    static final String CONTENT_POLICY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
                    + " font-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self';"
                    + " frame-ancestors 'none'; base-uri 'none'";

    private static final Set<String> READING = Set.of("GET", "HEAD", "TRACE", "OPTIONS");

    /** Before the other chains: what is asked for here needs no token, and nothing else is let through. */
    @Bean
    @Order(1)
    SecurityFilterChain secretPaths(HttpSecurity http, ObjectProvider<SecretPath> paths) {
        SecretPathFilter filter = new SecretPathFilter(paths.orderedStream().toList());
        return withoutSpringsOwn(http.securityMatcher(filter)
                        .csrf(AbstractHttpConfigurer::disable)
                        .authorizeHttpRequests(all -> all.anyRequest().permitAll())
                        .headers(headers -> headers.referrerPolicy(
                                        policy -> policy.policy(ReferrerPolicyHeaderWriter.ReferrerPolicy.NO_REFERRER))
                                .addHeaderWriter(new StaticHeadersWriter("X-Robots-Tag", "noindex")))
                        .addFilterBefore(filter, HeaderWriterFilter.class))
                .build();
    }

    /** Programs by token; and the scripts of our own pages by session, who then prove that the page was ours. */
    @Bean
    @Order(2)
    SecurityFilterChain programs(
            HttpSecurity http,
            CallerLookup callers,
            Sessions sessions,
            SessionCallerLookup people,
            CsrfTokenRepository csrf,
            ProblemWriter problems) {
        return withoutSpringsOwn(http.securityMatcher(SecurityConfiguration::isForPrograms)
                        .csrf(guard -> guard.csrfTokenRepository(csrf)
                                .csrfTokenRequestHandler(FormToken.inHeader())
                                .sessionAuthenticationStrategy((who, request, response) -> {})
                                .requireCsrfProtectionMatcher(
                                        request -> !READING.contains(request.getMethod()) && isBySession()))
                        .authorizeHttpRequests(paths -> paths.dispatcherTypeMatchers(DispatcherType.ERROR)
                                .permitAll()
                                .requestMatchers(
                                        HttpMethod.GET,
                                        "/actuator/health",
                                        "/v3/api-docs",
                                        "/v3/api-docs.yaml",
                                        "/paper/**")
                                .permitAll()
                                .anyRequest()
                                .authenticated())
                        .addFilterBefore(new SessionFilter(sessions, people, problems), CsrfFilter.class)
                        .addFilterBefore(new BearerFilter(callers, problems), AuthorizationFilter.class)
                        .exceptionHandling(
                                handling -> handling.authenticationEntryPoint((request, response, exception) ->
                                                problems.write(tokenNeeded(), request, response))
                                        .accessDeniedHandler(refusal(problems))))
                .build();
    }

    /** Everything else is for people in a browser. */
    @Bean
    @Order(3)
    SecurityFilterChain pages(
            HttpSecurity http,
            Sessions sessions,
            SessionCallerLookup people,
            CsrfTokenRepository csrf,
            ProblemWriter problems) {
        AccessDeniedHandler refusal = refusal(problems);
        return withoutSpringsOwn(http.csrf(guard -> guard.csrfTokenRepository(csrf)
                                .csrfTokenRequestHandler(FormToken.inHeaderOrForm())
                                .sessionAuthenticationStrategy((who, request, response) -> {}))
                        .authorizeHttpRequests(paths -> paths.dispatcherTypeMatchers(DispatcherType.ERROR)
                                .permitAll()
                                .requestMatchers("/sign-in", "/sign-in/*")
                                .permitAll()
                                .requestMatchers(HttpMethod.GET, "/page/**", "/paper/**")
                                .permitAll()
                                .anyRequest()
                                .authenticated())
                        .headers(headers -> headers.contentSecurityPolicy(
                                        policy -> policy.policyDirectives(CONTENT_POLICY))
                                .referrerPolicy(
                                        policy -> policy.policy(ReferrerPolicyHeaderWriter.ReferrerPolicy.SAME_ORIGIN)))
                        .addFilterBefore(
                                new SecretPathFilter(List.of(new SecretPath("/sign-in/*", true))),
                                HeaderWriterFilter.class)
                        .addFilterBefore(new SessionFilter(sessions, people, problems), CsrfFilter.class)
                        .exceptionHandling(handling -> handling.authenticationEntryPoint(
                                        (request, response, exception) -> {
                                            if (Requests.wantsPage(request)) {
                                                response.setStatus(303);
                                                response.setHeader(HttpHeaders.LOCATION, signIn(request));
                                            } else {
                                                problems.write(tokenNeeded(), request, response);
                                            }
                                        })
                                .accessDeniedHandler((request, response, exception) -> {
                                    // A program without a token; telling it about forms would help nobody.
                                    if (!Requests.wantsPage(request) && !isBySession()) {
                                        problems.write(tokenNeeded(), request, response);
                                    } else {
                                        refusal.handle(request, response, exception);
                                    }
                                })))
                .build();
    }

    private static boolean isForPrograms(HttpServletRequest request) {
        String path = request.getRequestURI();
        return request.getHeader(HttpHeaders.AUTHORIZATION) != null
                || path.startsWith("/api/")
                || path.startsWith("/v3/")
                || path.startsWith("/actuator");
    }

    private static boolean isBySession() {
        return SecurityContextHolder.getContext().getAuthentication() instanceof CallerToken token && token.bySession();
    }

    /** The way to the sign-in page, and back again where the page only shows something. */
    private static String signIn(HttpServletRequest request) {
        return request.getMethod().equals("GET") && !Requests.target(request).equals("/")
                ? "/sign-in?next=" + URLEncoder.encode(Requests.target(request), StandardCharsets.UTF_8)
                : "/sign-in";
    }

    private static ProblemException tokenNeeded() {
        return new ProblemException(
                ProblemType.UNAUTHENTICATED,
                "Send a token as Authorization: Bearer. The first start wrote an administrator's into the file token in"
                        + " the data folder.",
                List.of(),
                Map.of(HttpHeaders.WWW_AUTHENTICATE, "Bearer realm=\"varanid-intake\""));
    }

    private static AccessDeniedHandler refusal(ProblemWriter problems) {
        return (request, response, exception) -> problems.write(
                exception instanceof CsrfException
                        ? new ProblemException(
                                ProblemType.NOT_FROM_OUR_PAGE,
                                "Who is signed in by session sends X-CSRF-TOKEN with every change, from the page's"
                                        + " <meta name=\"csrf\">; a program sends a token as Authorization: Bearer.")
                        : ProblemException.forbidden("This is not allowed."),
                request,
                response);
    }

    /** Who asks is found out anew at each request; left to itself, Spring would give the session a new id each time. */
    private static HttpSecurity withoutSpringsOwn(HttpSecurity http) {
        return http.sessionManagement(AbstractHttpConfigurer::disable)
                .securityContext(
                        context -> context.securityContextRepository(new RequestAttributeSecurityContextRepository()))
                .formLogin(AbstractHttpConfigurer::disable)
                .httpBasic(AbstractHttpConfigurer::disable)
                .logout(AbstractHttpConfigurer::disable)
                .requestCache(AbstractHttpConfigurer::disable);
    }

    /** Who people are, this service finds out itself; without this, a password would be made up and printed. */
    @Bean
    AuthenticationManager noPasswordsOfSprings() {
        return authentication -> {
            throw new ProviderNotFoundException("nobody is asked here");
        };
    }

    /** A path or header with characters that have no business there. */
    @Bean
    RequestRejectedHandler unreadablePaths(ProblemWriter problems) {
        return (request, response, exception) -> problems.write(
                ProblemException.malformed(
                        "The request line, a header or the path has characters that are not allowed there."),
                request,
                response);
    }
}
