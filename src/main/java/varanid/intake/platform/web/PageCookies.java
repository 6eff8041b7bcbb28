package varanid.intake.platform.web;

import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Duration;
import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseCookie;
import org.springframework.security.web.csrf.CookieCsrfTokenRepository;
import org.springframework.session.web.http.DefaultCookieSerializer;

/**
 * The cookies of the pages. None can be read by a script or comes along from another site with anything but a plain
 * link. Where people reach the service by https, their names begin with {@code __Host-} (RFC 6265bis, section 4.1.3.2):
 * no neighbouring host, and nobody on an unprotected line, can put them there.
 */
final class PageCookies {

    private static final String SAME_SITE = "Lax";

    private final boolean https;

    PageCookies(PublicAddress address) {
        this.https = address.isHttps();
    }

    DefaultCookieSerializer session() {
        DefaultCookieSerializer cookie = new DefaultCookieSerializer();
        cookie.setCookieName(name("session"));
        cookie.setCookiePath("/");
        cookie.setUseHttpOnlyCookie(true);
        cookie.setSameSite(SAME_SITE);
        if (https) {
            cookie.setUseSecureCookie(true);
        }
        return cookie;
    }

    CookieCsrfTokenRepository csrf() {
        CookieCsrfTokenRepository tokens = new CookieCsrfTokenRepository();
        tokens.setCookieName(name("csrf"));
        tokens.setCookiePath("/");
        tokens.setHeaderName("X-CSRF-TOKEN");
        tokens.setCookieCustomizer(cookie -> {
            cookie.httpOnly(true).sameSite(SAME_SITE);
            if (https) {
                cookie.secure(true);
            }
        });
        return tokens;
    }

    Optional<String> readKey(HttpServletRequest request) {
        Cookie @Nullable [] cookies = request.getCookies();
        return cookies == null
                ? Optional.empty()
                : Arrays.stream(cookies)
                        .filter(cookie -> cookie.getName().equals(name("key")))
                        .map(Cookie::getValue)
                        .findFirst();
    }

    void writeKey(String key, HttpServletRequest request, HttpServletResponse response) {
        write(ResponseCookie.from(name("key"), key), request, response);
    }

    void removeKey(HttpServletRequest request, HttpServletResponse response) {
        write(ResponseCookie.from(name("key"), "").maxAge(Duration.ZERO), request, response);
    }

    private void write(
            ResponseCookie.ResponseCookieBuilder cookie, HttpServletRequest request, HttpServletResponse response) {
        response.addHeader(
                HttpHeaders.SET_COOKIE,
                cookie.path("/")
                        .httpOnly(true)
                        .sameSite(SAME_SITE)
                        .secure(https || request.isSecure())
                        .build()
                        .toString());
    }

    private String name(String what) {
        return (https ? "__Host-" : "") + "varanid-" + what;
    }
}
