package varanid.intake.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.Base64;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.csrf.CsrfTokenRepository;
import org.springframework.session.FindByIndexNameSessionRepository;
import org.springframework.session.Session;
import org.springframework.stereotype.Component;

/**
 * Begins and ends what a browser is signed in by: a session in the database, and a key that only the browser has. Of the
 * key the session holds the hash: who reads the database, or a backup of it, is not signed in by that.
 */
@Component
public class Sessions {

    /** However busy somebody is, after that they sign in again. NIST SP 800-63B-4 has 30 days at most for AAL1. */
    static final Duration LONGEST = Duration.ofDays(7);

    private static final String ATTRIBUTE = "signed-in";
    private static final int KEY_BYTES = 32;
    private static final SecureRandom RANDOM = new SecureRandom();

    private final FindByIndexNameSessionRepository<? extends Session> stored;
    private final CsrfTokenRepository csrf;
    private final PageCookies cookies;
    private final Clock clock;

    /** How somebody has shown who they are. */
    public enum How {
        LINK,
        PASSWORD
    }

    Sessions(
            FindByIndexNameSessionRepository<? extends Session> stored,
            CsrfTokenRepository csrf,
            PageCookies cookies,
            Clock clock) {
        this.stored = stored;
        this.csrf = csrf;
        this.cookies = cookies;
        this.clock = clock;
    }

    /** Signs the person in: a new session with a new id, whatever the browser had before. */
    public void start(
            HttpServletRequest request, HttpServletResponse response, UUID organisationId, UUID personId, How how) {
        invalidate(request);
        csrf.saveToken(null, request, response);
        byte[] random = new byte[KEY_BYTES];
        RANDOM.nextBytes(random);
        String key = Base64.getUrlEncoder().withoutPadding().encodeToString(random);
        SignedIn who =
                new SignedIn(organisationId, personId, UUID.randomUUID(), clock.instant(), how, SignedIn.hash(key));
        HttpSession session = request.getSession(true);
        session.setAttribute(ATTRIBUTE, who.text());
        session.setAttribute(FindByIndexNameSessionRepository.PRINCIPAL_NAME_INDEX_NAME, personId.toString());
        cookies.writeKey(key, request, response);
    }

    /** Signs out whoever is signed in with this browser. */
    public void end(HttpServletRequest request, HttpServletResponse response) {
        invalidate(request);
        cookies.removeKey(request, response);
        csrf.saveToken(null, request, response);
    }

    private static void invalidate(HttpServletRequest request) {
        @Nullable HttpSession session = request.getSession(false);
        if (session != null) {
            session.invalidate();
        }
    }

    /** Signs the person out everywhere else. */
    public void endOthers(HttpServletRequest request, UUID personId) {
        @Nullable HttpSession own = request.getSession(false);
        stored.findByPrincipalName(personId.toString()).keySet().stream()
                .filter(id -> own == null || !id.equals(own.getId()))
                .forEach(stored::deleteById);
    }

    /** Who sends the request that is being answered, where that is known. */
    public static Optional<Caller> findCaller() {
        return SecurityContextHolder.getContext().getAuthentication() instanceof CallerToken token
                ? Optional.of(token.caller())
                : Optional.empty();
    }

    /** Whether somebody is signed in with this browser, and did it that way. */
    public boolean isBy(How how, HttpServletRequest request) {
        return find(request).filter(found -> found.who().how() == how).isPresent();
    }

    /** Who is signed in with this browser, if the session still stands. */
    Optional<Found> find(HttpServletRequest request) {
        Optional<String> key = cookies.readKey(request);
        if (key.isEmpty()) {
            return Optional.empty();
        }
        @Nullable HttpSession session = request.getSession(false);
        return session != null && session.getAttribute(ATTRIBUTE) instanceof String text
                ? SignedIn.parse(text)
                        .filter(who -> who.isOpenedBy(key.get()))
                        .filter(who -> clock.instant().isBefore(who.at().plus(LONGEST)))
                        .map(who -> new Found(who, new Secret(key.get())))
                : Optional.empty();
    }

    /** A session that stands, and the key that opened it. */
    record Found(SignedIn who, Secret key) {}
}
