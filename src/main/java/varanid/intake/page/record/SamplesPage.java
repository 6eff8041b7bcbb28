package varanid.intake.page.record;

import jakarta.servlet.http.HttpServletRequest;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
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
import varanid.intake.platform.web.SentForm;
import varanid.intake.sample.Samples;

/** What was taken from an animal to be examined, and what was found in it. */
@Controller
class SamplesPage {

    private static final List<String> OUTCOMES = List.of("negative", "positive", "equivocal", "unusable");

    private static final int USUAL_AGENTS = 3;

    private static final List<FormGroup> STEP = List.of(
            FormGroup.of("step", FormField.choice("step", Samples.steps()), FormField.of(Kind.LINE, "laboratory")));

    private final Samples samples;
    private final RecordForms forms;
    private final Sheet sheet;
    private final List<Option> methods;

    SamplesPage(Samples samples, RecordForms forms) {
        this.samples = samples;
        this.forms = forms;
        SamplingDefaults known = samples.known();
        this.methods = Stream.concat(
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
    }

    /** @param agents how many can be named */
    private List<FormGroup> result(int agents) {
        List<FormField> fields = new ArrayList<>();
        fields.add(FormField.of(Kind.HIDDEN, "supersedes"));
        fields.add(FormField.choice(Kind.CHOICE, "method", methods));
        fields.add(FormField.choice("outcome", OUTCOMES));
        for (int i = 0; i < agents; i++) {
            fields.add(FormField.choice("found." + i + ".agent", samples.known().listAgents()));
            fields.add(FormField.of(Kind.TICK, "found." + i + ".significant"));
        }
        fields.add(FormField.of(Kind.DAY, "reportedOn"));
        fields.add(FormField.of(Kind.LINE, "laboratory"));
        fields.add(FormField.of(Kind.PROSE, "report"));
        return List.of(new FormGroup("result", null, null, fields));
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
            @RequestParam Map<String, String> query,
            @RequestParam(required = false) @Nullable UUID corrects) {
        List<Samples.KeptResult> results = listResults(caller, animalId, sampleId);
        Sheet asked = result(sampleId, results);
        ModelAndView page = corrects == null
                ? forms.show(caller, animalId, asked, query.containsKey("kept"))
                : forms.showFilledIn(caller, animalId, asked, filledIn(results, corrects));
        page.addObject("steps", Samples.steps());
        page.addObject("results", results);
        page.addObject("sample", sampleId);
        page.addObject("methods", methods.stream().collect(Collectors.toMap(Option::code, Option::label)));
        return page;
    }

    private static SentForm filledIn(List<Samples.KeptResult> results, UUID id) {
        Samples.KeptResult result = results.stream()
                .filter(each -> each.id().equals(id))
                .findFirst()
                .orElseThrow(() -> ProblemException.notFound("result"));
        Map<String, String> typed = new LinkedHashMap<>();
        typed.put("supersedes", id.toString());
        typed.put("method", result.method());
        typed.put("outcome", result.outcome());
        for (int i = 0; i < result.found().size(); i++) {
            Samples.KeptResult.Agent found = result.found().get(i);
            typed.put("found." + i + ".agent", found.agent());
            if (found.significant()) {
                typed.put("found." + i + ".significant", "true");
            }
        }
        typed.put("reportedOn", result.reportedOn().toString());
        result.laboratory().ifPresent(laboratory -> typed.put("laboratory", laboratory));
        result.report().ifPresent(report -> typed.put("report", report));
        return SentForm.filledWith(typed);
    }

    @PostMapping("/animals/{animalId}/samples/{sampleId}")
    ModelAndView keepResult(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID sampleId, HttpServletRequest sent) {
        caller.requireKeeperOrClinician();
        return forms.keep(
                caller,
                animalId,
                result(sampleId, listResults(caller, animalId, sampleId)),
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

    private List<Samples.KeptResult> listResults(Caller caller, UUID animalId, UUID sampleId) {
        if (!samples.isThere(caller.organisationId(), animalId, sampleId)) {
            throw ProblemException.notFound("sample");
        }
        return samples.listResults(caller.organisationId(), animalId, sampleId);
    }

    private Sheet result(UUID sampleId, List<Samples.KeptResult> results) {
        int most = results.stream().mapToInt(each -> each.found().size()).max().orElse(0);
        return new Sheet("result", "/samples/" + sampleId, result(Math.max(USUAL_AGENTS, most)), List.of("samples"));
    }
}
