package varanid.intake.page.record;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.ModelAndView;
import varanid.intake.page.JsonForm;
import varanid.intake.page.SeeOther;
import varanid.intake.page.SentForms;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.SentForm;
import varanid.intake.visit.PageView;
import varanid.intake.visit.Shown;

/** Shows a sheet, and keeps what was filled in. */
@Component
class RecordForms {

    private final Shown shown;
    private final SentForms forms;

    RecordForms(Shown shown, SentForms forms) {
        this.shown = shown;
        this.forms = forms;
    }

    /** The empty sheet, with what is kept already. */
    ModelAndView show(Caller caller, UUID animalId, Sheet sheet, boolean kept) {
        ModelAndView page = page(HttpStatus.OK, caller, animalId, sheet, SentForm.empty(), Map.of(), false);
        page.addObject("kept", kept);
        return page;
    }

    /**
     * @param keeping reads the request and keeps it
     * @return where to go on; the sheet again, with everything that was filled in, where something is wrong
     */
    ModelAndView keep(
            Caller caller, UUID animalId, Sheet sheet, HttpServletRequest sent, Function<JsonRequest, UUID> keeping) {
        SentForm form = SentForm.of(sent);
        JsonForm read = new JsonForm(form);
        sheet.groups().forEach(group -> group.fields().forEach(field -> field.read(read)));
        String path = "/animals/" + animalId + sheet.path();
        SentForms.Outcome outcome = forms.keep(
                caller,
                "POST " + path,
                form.key(SentForms.KEY).orElse(null),
                read.document(),
                request -> {
                    keeping.apply(request);
                    return path + "?kept";
                },
                read.fieldsByPointer());
        return outcome.next()
                .map(SeeOther::path)
                .orElseGet(() -> page(
                        HttpStatus.UNPROCESSABLE_CONTENT,
                        caller,
                        animalId,
                        sheet,
                        form,
                        outcome.faults(),
                        outcome.sentBefore()));
    }

    private ModelAndView page(
            HttpStatus status,
            Caller caller,
            UUID animalId,
            Sheet sheet,
            SentForm form,
            Map<String, List<String>> faults,
            boolean sentBefore) {
        PageView view = shown.find(caller.organisationId(), caller.zone(), animalId)
                .orElseThrow(() -> ProblemException.notFound("animal"));
        ModelAndView page = new ModelAndView("record", status);
        page.addObject("sheets", List.of("animal"));
        page.addObject("animal", animalId);
        page.addObject("it", view);
        page.addObject("sheet", sheet);
        page.addObject(
                "parts",
                view.sections().stream()
                        .filter(section -> sheet.parts().contains(section.code()))
                        .toList());
        page.addObject("typed", form);
        page.addObject("faults", faults);
        page.addObject("sentBefore", sentBefore);
        page.addObject("kept", false);
        page.addObject("mayKeep", caller.may(Role.KEEPER) || caller.may(Role.CLINICIAN));
        page.addObject(
                "key",
                form.key(SentForms.KEY)
                        .filter(key -> !sentBefore)
                        .orElseGet(() -> UUID.randomUUID().toString()));
        return page;
    }
}
