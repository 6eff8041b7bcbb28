package varanid.intake.page;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Locale;
import java.util.Optional;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ModelAttribute;
import varanid.intake.account.PeopleNames;
import varanid.intake.platform.time.ReaderDates;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Sessions;

/** Gives every page of this package its frame. */
@ControllerAdvice(basePackageClasses = FrameAdvice.class)
class FrameAdvice {

    private final PeopleNames names;

    FrameAdvice(PeopleNames names) {
        this.names = names;
    }

    @ModelAttribute("frame")
    Frame frame(HttpServletRequest request) {
        Optional<Caller> caller = Sessions.findCaller();
        String csrf =
                request.getAttribute(CsrfToken.class.getName()) instanceof CsrfToken token ? token.getToken() : null;
        return new Frame(
                caller.flatMap(who -> names.find(who.organisationId(), who.personId()))
                        .orElse(null),
                caller.map(Caller::personId).orElse(null),
                csrf,
                Frame.places(caller, request.getRequestURI()));
    }

    /** Writes days and moments as the reader does. */
    @ModelAttribute("dates")
    ReaderDates dates(Locale locale) {
        return ReaderDates.of(locale);
    }
}
