package varanid.intake.page;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.ErrorPage;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Sessions;

/** Says what happened and what to do next. */
@Component
class PageErrors implements ErrorPage {

    /** The statuses that have words of their own in {@code messages.properties}; another has those of its hundred. */
    private static final Set<Integer> OWN_WORDS = Set.of(400, 401, 403, 404, 405, 409, 412, 413, 422, 429, 500, 503);

    /** The types that have words of their own, whatever their status. */
    private static final Set<String> OWN_TYPES = Set.of("not-from-our-page", "worklist-not-ready");

    private final ITemplateEngine templates;

    PageErrors(ITemplateEngine templates) {
        this.templates = templates;
    }

    @Override
    public byte[] write(ProblemException problem) {
        int status = problem.type().status();
        int words = OWN_WORDS.contains(status) ? status : status / 100 * 100;
        Locale locale = LocaleContextHolder.getLocale();
        Map<String, Object> shown = Map.of(
                "frame",
                // No form to sign out with: what went wrong may be just that no form can be made.
                new Frame(
                        null,
                        Sessions.findCaller().map(Caller::personId).orElse(null),
                        null,
                        Frame.places(Sessions.findCaller(), "")),
                "key",
                "error."
                        + (OWN_TYPES.contains(problem.type().name())
                                ? problem.type().name()
                                : words),
                "status",
                status);
        return templates.process("error-page", new Context(locale, shown)).getBytes(StandardCharsets.UTF_8);
    }
}
