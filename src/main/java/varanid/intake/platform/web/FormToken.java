package varanid.intake.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Locale;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.security.web.csrf.CsrfTokenRequestHandler;
import org.springframework.security.web.csrf.XorCsrfTokenRequestAttributeHandler;

/**
 * Where the proof that a request comes from our own page is looked for. In each page it is written another way (XOR
 * with random bytes), so that compressing the page does not give it away.
 */
final class FormToken implements CsrfTokenRequestHandler {

    private final CsrfTokenRequestHandler masked = new XorCsrfTokenRequestAttributeHandler();
    private final boolean alsoInForm;

    private FormToken(boolean alsoInForm) {
        this.alsoInForm = alsoInForm;
    }

    /** In the header only: the body is not read before it is known who sends it. */
    static FormToken inHeader() {
        return new FormToken(false);
    }

    /** In the header or in a field of the form; where the form brings a file, only of who is signed in. */
    static FormToken inHeaderOrForm() {
        return new FormToken(true);
    }

    @Override
    public void handle(HttpServletRequest request, HttpServletResponse response, Supplier<CsrfToken> token) {
        masked.handle(request, response, token);
    }

    @Override
    public @Nullable String resolveCsrfTokenValue(HttpServletRequest request, CsrfToken token) {
        boolean look = request.getHeader(token.getHeaderName()) != null
                || (alsoInForm && (!bringsFile(request) || isSignedIn()));
        return look ? masked.resolveCsrfTokenValue(request, token) : null;
    }

    private static boolean bringsFile(HttpServletRequest request) {
        @Nullable String type = request.getContentType();
        return type != null && type.toLowerCase(Locale.ROOT).startsWith("multipart/");
    }

    private static boolean isSignedIn() {
        return SecurityContextHolder.getContext().getAuthentication() instanceof CallerToken;
    }
}
