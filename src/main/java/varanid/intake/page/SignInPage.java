package varanid.intake.page;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import varanid.intake.account.SignInLinks;
import varanid.intake.account.SignInPasswords;
import varanid.intake.account.SignedInPerson;
import varanid.intake.platform.web.Sessions;

/** Signing in, by a link that works once or by e-mail and password; and signing out. */
@Controller
class SignInPage {

    private final SignInLinks links;
    private final SignInPasswords passwords;
    private final Sessions sessions;

    SignInPage(SignInLinks links, SignInPasswords passwords, Sessions sessions) {
        this.links = links;
        this.passwords = passwords;
        this.sessions = sessions;
    }

    @GetMapping("/sign-in")
    ModelAndView form(@RequestParam(required = false) @Nullable String next) {
        LocalPath wanted = LocalPath.of(next);
        return Sessions.findCaller().isPresent()
                ? SeeOther.path(wanted.path())
                : form(HttpStatus.OK, "", wanted, null, 0);
    }

    @PostMapping("/sign-in")
    ModelAndView signIn(
            @RequestParam(defaultValue = "") String email,
            @RequestParam(defaultValue = "") String password,
            @RequestParam(required = false) @Nullable String next,
            HttpServletRequest request,
            HttpServletResponse response) {
        LocalPath wanted = LocalPath.of(next);
        SignInPasswords.Attempt attempt = passwords.check(email, password, request.getRemoteAddr());
        if (attempt instanceof SignInPasswords.Right right) {
            return start(right.person(), Sessions.How.PASSWORD, wanted, request, response);
        } else if (attempt instanceof SignInPasswords.TooMany many) {
            response.setHeader(
                    HttpHeaders.RETRY_AFTER, Long.toString(many.pause().toSeconds() + 1));
            return form(HttpStatus.TOO_MANY_REQUESTS, email, wanted, "sign-in.too-many", many.minutes());
        }
        return form(HttpStatus.UNPROCESSABLE_CONTENT, email, wanted, "sign-in.wrong", 0);
    }

    /** Uses nothing up: see {@link SignInLinks}. */
    @GetMapping("/sign-in/{secret}")
    ModelAndView link(@PathVariable String secret, HttpServletRequest request, HttpServletResponse response) {
        response.setHeader("Referrer-Policy", "no-referrer");
        response.setHeader("X-Robots-Tag", "noindex");
        return links.isGood(secret)
                ? new ModelAndView("sign-in-link", Map.of("secret", secret))
                : useless(request, response);
    }

    @PostMapping("/sign-in/link")
    ModelAndView useLink(
            @RequestParam(defaultValue = "") String secret, HttpServletRequest request, HttpServletResponse response) {
        Optional<SignedInPerson> person = links.use(secret);
        return person.isPresent()
                ? start(person.get(), Sessions.How.LINK, LocalPath.HOME, request, response)
                : useless(request, response);
    }

    @PostMapping("/sign-out")
    ModelAndView signOut(HttpServletRequest request, HttpServletResponse response) {
        sessions.end(request, response);
        return SeeOther.path("/sign-in");
    }

    private ModelAndView start(
            SignedInPerson person,
            Sessions.How how,
            LocalPath wanted,
            HttpServletRequest request,
            HttpServletResponse response) {
        sessions.start(request, response, person.organisationId(), person.personId(), how);
        return SeeOther.path(wanted.path());
    }

    private ModelAndView useless(HttpServletRequest request, HttpServletResponse response) {
        Optional<Duration> wait = links.countWrong(request.getRemoteAddr());
        wait.ifPresent(time -> response.setHeader(HttpHeaders.RETRY_AFTER, Long.toString(time.toSeconds() + 1)));
        HttpStatusCode status = wait.isPresent() ? HttpStatus.TOO_MANY_REQUESTS : HttpStatus.NOT_FOUND;
        return new ModelAndView("sign-in-useless", status);
    }

    private static ModelAndView form(
            HttpStatusCode status, String email, LocalPath next, @Nullable String fault, long minutes) {
        ModelAndView form = new ModelAndView("sign-in", status);
        form.addObject("email", email);
        form.addObject("next", next.path());
        form.addObject("fault", fault);
        form.addObject("minutes", minutes);
        return form;
    }
}
