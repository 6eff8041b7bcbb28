package varanid.intake.page.record;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import varanid.intake.infection.SamplingDefaults;
import varanid.intake.page.record.FormField.Kind;
import varanid.intake.page.record.FormField.Option;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Role;
import varanid.intake.sample.Samples;

/** What was taken from an animal to be examined, and what was found in it. */
@Controller
class SamplesPage {

    private static final List<String> OUTCOMES = List.of("negative", "positive", "equivocal", "unusable");

    private static final List<FormGroup> STEP = List.of(
            FormGroup.of("step", FormField.choice("step", Samples.steps()), FormField.of(Kind.LINE, "laboratory")));

    private final Samples samples;
    private final RecordForms forms;
    private final Sheet sheet;
    private final List<FormGroup> result;

    SamplesPage(Samples samples, RecordForms forms) {
        this.samples = samples;
        this.forms = forms;
        SamplingDefaults known = samples.known();
        List<Option> methods = Stream.concat(
                        known.methods().stream().map(each -> new Option(each.id(), each.name())),
                        known.otherMethods().stream().map(each -> new Option(each.id(), each.name())))
                .toList();
        this.sheet = new Sheet(
                "samples",
                "/samples",
                List.of(FormGroup.of(
                        "sample",
                        FormField.choice("kind", Samples.kinds()),
                        FormField.of(Kind.NUMBER, "freshHours"),
                        FormField.choice(Kind.SEVERAL, "methods", methods),
                        FormField.of(Kind.LINE, "laboratory"),
                        FormField.choice("storage", Samples.storages()),
                        FormField.of(Kind.PROSE, "note"))),
                List.of("samples"));
        this.result = List.of(FormGroup.of(
                "result",
                FormField.choice(Kind.CHOICE, "method", methods),
                FormField.choice("outcome", OUTCOMES),
                FormField.choice("found.0.agent", known.listAgents()),
                FormField.choice("found.1.agent", known.listAgents()),
                FormField.choice("found.2.agent", known.listAgents()),
                FormField.of(Kind.DAY, "reportedOn"),
                FormField.of(Kind.LINE, "laboratory"),
                FormField.of(Kind.PROSE, "report")));
    }

    @GetMapping("/animals/{animalId}/samples")
    ModelAndView show(Caller caller, @PathVariable UUID animalId, @RequestParam Map<String, String> query) {
        ModelAndView page = forms.show(caller, animalId, sheet, query.containsKey("kept"));
        page.addObject("samples", samples.list(caller.organisationId(), animalId));
        return page;
    }

    @PostMapping("/animals/{animalId}/samples")
    ModelAndView keep(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        caller.require(Role.KEEPER);
        return forms.keep(caller, animalId, sheet, sent, request -> samples.keep(caller, animalId, request));
    }

    @GetMapping("/animals/{animalId}/samples/{sampleId}")
    ModelAndView showResult(
            Caller caller,
            @PathVariable UUID animalId,
            @PathVariable UUID sampleId,
            @RequestParam Map<String, String> query) {
        ModelAndView page = forms.show(caller, animalId, result(caller, animalId, sampleId), query.containsKey("kept"));
        page.addObject("steps", Samples.steps());
        return page;
    }

    @PostMapping("/animals/{animalId}/samples/{sampleId}")
    ModelAndView keepResult(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID sampleId, HttpServletRequest sent) {
        caller.requireKeeperOrClinician();
        return forms.keep(
                caller,
                animalId,
                result(caller, animalId, sampleId),
                sent,
                request -> samples.keepResult(caller, animalId, sampleId, request));
    }

    /** Where a sample is on its way, told with one tap. */
    @PostMapping("/animals/{animalId}/samples/{sampleId}/steps")
    ModelAndView keepStep(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID sampleId, HttpServletRequest sent) {
        caller.require(Role.KEEPER);
        return forms.keep(
                caller,
                animalId,
                new Sheet("step", "/samples/" + sampleId + "/steps", "/samples/" + sampleId, STEP, List.of("samples")),
                sent,
                request -> samples.keepStep(caller, animalId, sampleId, request));
    }

    private Sheet result(Caller caller, UUID animalId, UUID sampleId) {
        if (!samples.isThere(caller.organisationId(), animalId, sampleId)) {
            throw ProblemException.notFound("sample");
        }
        return new Sheet("result", "/samples/" + sampleId, result, List.of("samples"));
    }
}
