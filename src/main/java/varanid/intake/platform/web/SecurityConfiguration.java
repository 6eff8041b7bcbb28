package varanid.intake.platform.web;

import jakarta.servlet.DispatcherType;
import java.util.List;
import java.util.Map;
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
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.security.web.firewall.RequestRejectedHandler;
import org.springframework.security.web.header.HeaderWriterFilter;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter;
import org.springframework.security.web.header.writers.StaticHeadersWriter;

/** Who may ask at all: whoever has a token, and anybody for what is open. What a person may do, controllers ask. */
@Configuration(proxyBeanMethods = false)
class SecurityConfiguration {

    /** Before the other chain: what is asked for here needs no token, and nothing else is let through. */
    @Bean
    @Order(1)
    SecurityFilterChain secretPaths(HttpSecurity http, ObjectProvider<SecretPath> paths) {
        SecretPathFilter filter = new SecretPathFilter(paths.orderedStream().toList());
        return withoutSessions(http.securityMatcher(filter)
                        .authorizeHttpRequests(all -> all.anyRequest().permitAll())
                        .headers(headers -> headers.referrerPolicy(
                                        policy -> policy.policy(ReferrerPolicyHeaderWriter.ReferrerPolicy.NO_REFERRER))
                                .addHeaderWriter(new StaticHeadersWriter("X-Robots-Tag", "noindex")))
                        .addFilterBefore(filter, HeaderWriterFilter.class))
                .build();
    }

    @Bean
    SecurityFilterChain bearerOnly(HttpSecurity http, CallerLookup callers, ProblemWriter problems) {
        AuthenticationEntryPoint tokenNeeded = (request, response, exception) -> problems.write(
                new ProblemException(
                        ProblemType.UNAUTHENTICATED,
                        "Send a token as Authorization: Bearer. The first start wrote an administrator's into the file"
                                + " token in the data folder.",
                        List.of(),
                        Map.of(HttpHeaders.WWW_AUTHENTICATE, "Bearer realm=\"varanid-intake\"")),
                request,
                response);
        return withoutSessions(http.authorizeHttpRequests(paths -> paths.dispatcherTypeMatchers(DispatcherType.ERROR)
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
                        .addFilterBefore(new BearerFilter(callers, problems), AuthorizationFilter.class)
                        .exceptionHandling(handling -> handling.authenticationEntryPoint(tokenNeeded)
                                .accessDeniedHandler((request, response, exception) -> problems.write(
                                        ProblemException.forbidden("This is not allowed."), request, response))))
                .build();
    }

    private static HttpSecurity withoutSessions(HttpSecurity http) {
        return http.sessionManagement(sessions -> sessions.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
                .csrf(AbstractHttpConfigurer::disable)
                .formLogin(AbstractHttpConfigurer::disable)
                .httpBasic(AbstractHttpConfigurer::disable)
                .logout(AbstractHttpConfigurer::disable)
                .requestCache(AbstractHttpConfigurer::disable);
    }

    /** There are no passwords; without this, one would be made up and printed. */
    @Bean
    AuthenticationManager noPasswords() {
        return authentication -> {
            throw new ProviderNotFoundException("there are only tokens");
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
