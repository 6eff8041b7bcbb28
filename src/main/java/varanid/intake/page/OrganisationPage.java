package varanid.intake.page;

import jakarta.servlet.http.HttpServletRequest;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import varanid.intake.account.OwnOrganisation;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.IfMatch;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.SentForm;

/** What the organisation is called, where it is, and whom to call. For administrators. */
@Controller
class OrganisationPage {

    private static final String PATH = "/organisation";

    private final OwnOrganisation own;
    private final SentForms forms;

    OrganisationPage(OwnOrganisation own, SentForms forms) {
        this.own = own;
        this.forms = forms;
    }

    @GetMapping(PATH)
    ModelAndView show(Caller caller, @RequestParam Map<String, String> query) {
        caller.require(Role.ADMINISTRATOR);
        OwnOrganisation.Known known = find(caller);
        SentForm form = SentForm.filledWith(Map.of(
                "name",
                known.name(),
                "zone",
                known.zone(),
                "phone",
                known.phone().orElse(""),
                "version",
                String.valueOf(known.version())));
        ModelAndView page = page(HttpStatus.OK, form, Map.of());
        page.addObject("kept", query.containsKey("kept"));
        return page;
    }

    @PostMapping(PATH)
    ModelAndView keep(Caller caller, HttpServletRequest sent) {
        caller.require(Role.ADMINISTRATOR);
        SentForm form = SentForm.of(sent);
        JsonForm read = new JsonForm(form).texts("name", "zone", "phone");
        SentForms.Outcome outcome = forms.keep(
                caller,
                "POST " + PATH,
                form,
                read.document(),
                request -> {
                    own.change(caller, IfMatch.of(form), request);
                    return PATH + "?kept";
                },
                read.fieldsByPointer());
        return outcome.next().map(SeeOther::path).orElseGet(() -> {
            ModelAndView page = page(HttpStatus.UNPROCESSABLE_CONTENT, form, outcome.faults());
            page.addObject("sentBefore", outcome.sentBefore());
            return page;
        });
    }

    private OwnOrganisation.Known find(Caller caller) {
        return own.find(caller.organisationId()).orElseThrow(() -> ProblemException.notFound("organisation"));
    }

    private static ModelAndView page(HttpStatus status, SentForm form, Map<String, List<String>> faults) {
        ModelAndView page = new ModelAndView("organisation", status);
        page.addObject("typed", form);
        page.addObject("faults", faults);
        page.addObject("sentBefore", false);
        page.addObject("kept", false);
        page.addObject("zones", ZoneId.getAvailableZoneIds().stream().sorted().toList());
        page.addObject("key", UUID.randomUUID().toString());
        return page;
    }
}
