package varanid.intake.page.record;

import com.ibm.icu.util.LocaleData;
import com.ibm.icu.util.ULocale;
import jakarta.servlet.http.HttpServletRequest;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.ModelAndView;
import varanid.intake.page.JsonForm;
import varanid.intake.page.SeeOther;
import varanid.intake.page.SentForms;
import varanid.intake.platform.time.ReaderDates;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.SentForm;
import varanid.intake.visit.PageView;
import varanid.intake.visit.Shown;

/** Shows a sheet, and keeps what was filled in. */
@Component
class RecordForms {

    /** By UCUM. */
    private static final Set<String> CUSTOMARY = Set.of("[degF]", "[in_i]");

    private final Shown shown;
    private final SentForms forms;

    RecordForms(Shown shown, SentForms forms) {
        this.shown = shown;
        this.forms = forms;
    }

    /** The empty sheet, with what is kept already. */
    ModelAndView show(Caller caller, UUID animalId, Sheet sheet, boolean kept) {
        ModelAndView page = page(HttpStatus.OK, caller, animalId, sheet, inUnitsOfTheReader(sheet), Map.of(), false);
        page.addObject("kept", kept);
        return page;
    }

    /** A sheet that is filled in already, to be corrected. */
    ModelAndView showFilledIn(Caller caller, UUID animalId, Sheet sheet, SentForm typed) {
        return page(HttpStatus.OK, caller, animalId, sheet, typed, Map.of(), false);
    }

    /**
     * @param keeping reads the request and keeps it
     * @return where to go on; the sheet again, with everything that was filled in, where something is wrong
     */
    ModelAndView keep(
            Caller caller, UUID animalId, Sheet sheet, HttpServletRequest sent, Consumer<JsonRequest> keeping) {
        SentForm form = SentForm.of(sent);
        JsonForm read = new JsonForm(form);
        sheet.groups().forEach(group -> group.fields().forEach(field -> field.read(read)));
        String path = "/animals/" + animalId + sheet.path();
        SentForms.Outcome outcome = forms.keep(
                caller,
                "POST " + path,
                form,
                read.document(),
                request -> {
                    keeping.accept(request);
                    return "/animals/" + animalId + sheet.back() + "?kept";
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
        PageView view = shown.find(
                        caller.organisationId(),
                        caller.zone(),
                        animalId,
                        ReaderDates.of(LocaleContextHolder.getLocale()))
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
        page.addObject("mayKeep", caller.isKeeperOrClinician());
        page.addObject("key", SentForms.nextKey(form, sentBefore));
        return page;
    }

    /** An empty sheet. Where people measure in inches and degrees Fahrenheit, those are chosen already. */
    private static SentForm inUnitsOfTheReader(Sheet sheet) {
        ULocale reader = ULocale.forLocale(LocaleContextHolder.getLocale());
        if (LocaleData.getMeasurementSystem(reader) != LocaleData.MeasurementSystem.US) {
            return SentForm.empty();
        }
        Map<String, String> chosen = new HashMap<>();
        for (FormGroup group : sheet.groups()) {
            for (FormField field : group.fields()) {
                if (field.kind() == FormField.Kind.UNIT) {
                    field.options().stream()
                            .map(FormField.Option::code)
                            .filter(CUSTOMARY::contains)
                            .forEach(code -> chosen.put(field.name(), code));
                }
            }
        }
        return SentForm.filledWith(chosen);
    }
}
