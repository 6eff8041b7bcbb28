package varanid.intake.page;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import varanid.intake.account.SignInPasswords;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.Sessions;

/** What a person signs in with. */
@Controller
class AccountPage {

    private final SignInPasswords passwords;
    private final Sessions sessions;

    AccountPage(SignInPasswords passwords, Sessions sessions) {
        this.passwords = passwords;
        this.sessions = sessions;
    }

    @GetMapping("/account")
    ModelAndView account(
            Caller caller, @RequestParam(required = false) @Nullable String kept, HttpServletRequest request) {
        ModelAndView page =
                page(HttpStatus.OK, caller, request, passwords.findEmail(caller).orElse(""), null);
        page.addObject("kept", kept != null);
        return page;
    }

    @PostMapping("/account")
    ModelAndView keep(
            Caller caller,
            @RequestParam(defaultValue = "") String email,
            @RequestParam(defaultValue = "") String password,
            @RequestParam(defaultValue = "") String current,
            HttpServletRequest request) {
        Optional<String> known = passwords.findEmail(caller);
        if (known.isPresent() && !sessions.isBy(Sessions.How.LINK, request)) {
            SignInPasswords.Attempt attempt = passwords.check(known.get(), current, request.getRemoteAddr());
            if (attempt instanceof SignInPasswords.TooMany many) {
                return faulty(caller, request, email, new Fault("current", "too-many", many.minutes()));
            } else if (!(attempt instanceof SignInPasswords.Right)) {
                return faulty(caller, request, email, new Fault("current", "wrong", 0));
            }
        }
        Optional<SignInPasswords.Fault> fault = passwords.set(caller, email, password);
        if (fault.isPresent()) {
            return faulty(caller, request, email, Fault.of(fault.get()));
        }
        sessions.endOthers(request, caller.personId());
        return SeeOther.path("/account?kept");
    }

    private ModelAndView faulty(Caller caller, HttpServletRequest request, String email, Fault fault) {
        return page(HttpStatus.UNPROCESSABLE_CONTENT, caller, request, email, fault);
    }

    private ModelAndView page(
            HttpStatusCode status, Caller caller, HttpServletRequest request, String email, @Nullable Fault fault) {
        ModelAndView page = new ModelAndView("account", status);
        boolean hasPassword = passwords.findEmail(caller).isPresent();
        page.addObject("roles", caller.roles().stream().sorted().toList());
        page.addObject("email", email);
        page.addObject("fault", fault);
        page.addObject("hasPassword", hasPassword);
        page.addObject("asksCurrent", hasPassword && !sessions.isBy(Sessions.How.LINK, request));
        page.addObject("shortest", SignInPasswords.SHORTEST);
        page.addObject("mayChangeOrganisation", caller.may(Role.ADMINISTRATOR));
        page.addObject("kept", false);
        return page;
    }

    /**
     * What is wrong, and where.
     *
     * @param field the id of the field
     * @param code the end of the text's key
     * @param number a number that the text may name
     */
    public record Fault(String field, String code, long number) {

        static Fault of(SignInPasswords.Fault fault) {
            return switch (fault) {
                case EMAIL_SHAPE -> new Fault("email", "email-shape", 0);
                case EMAIL_TAKEN -> new Fault("email", "email-taken", 0);
                case TOO_SHORT -> new Fault("password", "too-short", SignInPasswords.SHORTEST);
                case TOO_LONG -> new Fault("password", "too-long", SignInPasswords.LONGEST);
                case EXPECTED -> new Fault("password", "expected", 0);
            };
        }
    }
}
