package varanid.intake.platform.web;

import java.nio.charset.StandardCharsets;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.convert.support.GenericConversionService;
import org.springframework.security.web.csrf.CsrfTokenRepository;
import org.springframework.session.config.SessionRepositoryCustomizer;
import org.springframework.session.jdbc.JdbcIndexedSessionRepository;
import org.springframework.session.jdbc.PostgreSqlJdbcIndexedSessionRepositoryCustomizer;
import org.springframework.session.web.http.CookieSerializer;

/** How sessions are kept: see {@code docs/decisions/0031}. */
@Configuration(proxyBeanMethods = false)
class SessionConfiguration {

    @Bean
    PageCookies pageCookies(PublicAddress address) {
        return new PageCookies(address);
    }

    @Bean
    CookieSerializer sessionCookie(PageCookies cookies) {
        return cookies.session();
    }

    @Bean
    CsrfTokenRepository csrfTokens(PageCookies cookies) {
        return cookies.csrf();
    }

    /** Two requests of one browser at the same moment may both write. */
    @Bean
    SessionRepositoryCustomizer<JdbcIndexedSessionRepository> writesThatMeet() {
        return new PostgreSqlJdbcIndexedSessionRepositoryCustomizer();
    }

    /**
     * What a session holds is text, and is read as text: no object is ever made from bytes of the database. The name is
     * the one that Spring Session asks for.
     */
    @Bean
    GenericConversionService springSessionConversionService() {
        GenericConversionService textOnly = new GenericConversionService();
        textOnly.addConverter(Object.class, byte[].class, value -> {
            if (value instanceof String text) {
                return text.getBytes(StandardCharsets.UTF_8);
            }
            throw new IllegalArgumentException("a session holds text only, not " + value.getClass());
        });
        textOnly.addConverter(byte[].class, Object.class, bytes -> new String(bytes, StandardCharsets.UTF_8));
        return textOnly;
    }
}
