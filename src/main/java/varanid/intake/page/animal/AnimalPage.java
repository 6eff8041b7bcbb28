package varanid.intake.page.animal;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.animal.Animals;
import varanid.intake.diary.Diary;
import varanid.intake.diary.DiaryKeeper;
import varanid.intake.page.SeeOther;
import varanid.intake.page.SentForms;
import varanid.intake.platform.time.ReaderDates;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.SentForm;
import varanid.intake.quarantine.FollowUps;
import varanid.intake.visit.PageView;
import varanid.intake.visit.Shown;
import varanid.intake.visit.Story;
import varanid.intake.weight.Weighings;

/** One animal: how it stands, what is next, what happened, and what is kept of it with a tap. */
@Controller
class AnimalPage {

    private static final int USUAL_EVENTS = 10;
    private static final int MORE_EVENTS = 40;
    private static final int MOST_LOOKS = 8;

    /** Parts of the summary that the page shows by themselves, or in another way. */
    private static final Set<String> OWN_PLACE =
            Set.of("who-and-why", "vets-answers", "findings", "weight", "samples", "done-and-not-done");

    private static final Map<String, String> WEIGHING = Map.of("#/value", "weight");

    private final Animals animals;
    private final Shown shown;
    private final Story story;
    private final FollowUps followUps;
    private final DiaryKeeper keeper;
    private final Diary diary;
    private final Weighings weighings;
    private final SentForms forms;
    private final Clock clock;

    AnimalPage(
            Animals animals,
            Shown shown,
            Story story,
            FollowUps followUps,
            DiaryKeeper keeper,
            Diary diary,
            Weighings weighings,
            SentForms forms,
            Clock clock) {
        this.animals = animals;
        this.shown = shown;
        this.story = story;
        this.followUps = followUps;
        this.keeper = keeper;
        this.diary = diary;
        this.weighings = weighings;
        this.forms = forms;
        this.clock = clock;
    }

    /**
     * @param kept what was just kept: diary or weighing
     * @param entry of a diary: which entry
     * @param correct the line of the diary that is to be corrected
     * @param weighed which weighing was just kept
     * @param weighing the weighing that is to be corrected
     * @param events how many of what happened are shown
     */
    @GetMapping("/animals/{animalId}")
    ModelAndView animal(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestParam(defaultValue = "") String kept,
            @RequestParam(required = false) @Nullable UUID entry,
            @RequestParam(required = false) @Nullable UUID correct,
            @RequestParam(required = false) @Nullable UUID weighed,
            @RequestParam(required = false) @Nullable UUID weighing,
            @RequestParam(defaultValue = "" + USUAL_EVENTS) int events) {
        ModelAndView page = page(HttpStatus.OK, caller, animalId, Math.max(1, events));
        page.addObject("kept", kept);
        page.addObject("entry", entry);
        page.addObject("weighed", weighed);
        if (weighing != null) {
            page.addObject(
                    "typed",
                    weighings
                            .findStanding(caller.organisationId(), caller.zone(), animalId, weighing)
                            .map(TypedWeighing::of)
                            .orElseThrow(() -> ProblemException.notFound("weighing")));
            page.addObject("refused", "weighing");
        }
        if (correct != null) {
            page.addObject(
                    "typed",
                    diary.find(caller.organisationId(), animalId, correct)
                            .map(TypedEntry::of)
                            .orElseThrow(() -> ProblemException.notFound("line of the diary")));
            page.addObject("refused", "diary");
        }
        page.addObject(
                "lookNow",
                entry == null ? List.of() : keeper.listReasonsToLookNow(caller.organisationId(), animalId, entry));
        return page;
    }

    /** Where the rounds lead to keep what was seen. */
    @GetMapping("/animals/{animalId}/log")
    ModelAndView log(@PathVariable UUID animalId) {
        return SeeOther.path("/animals/" + animalId + "#log");
    }

    @PostMapping("/animals/{animalId}/diary")
    ModelAndView log(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        caller.require(Role.KEEPER);
        SentForm form = SentForm.of(sent);
        ObjectNode entry = TypedEntry.read(form);
        // Every button of the page has the same key: who goes back and presses another one says another thing.
        @Nullable
        String key = form.key(SentForms.KEY).map(each -> each + " " + entry).orElse(null);
        SentForms.Outcome outcome = forms.keep(
                caller,
                "POST /animals/" + animalId + "/diary",
                key,
                entry,
                request -> "/animals/" + animalId + "?kept=diary&entry=" + keeper.keep(caller, animalId, request),
                Map.of());
        return outcome.next().map(SeeOther::path).orElseGet(() -> refused(caller, animalId, "diary", form, outcome));
    }

    @PostMapping("/animals/{animalId}/weighings")
    ModelAndView weigh(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        caller.require(Role.KEEPER);
        SentForm form = SentForm.of(sent);
        ObjectNode weighing = JsonNodeFactory.instance.objectNode();
        TypedWeighing.put(form, weighing);
        TypedWeighing.putCorrected(form, weighing);
        form.putTick(weighing, "wet");
        SentForms.Outcome outcome = forms.keep(
                caller,
                "POST /animals/" + animalId + "/weighings",
                form,
                weighing,
                request ->
                        "/animals/" + animalId + "?kept=weighing&weighed=" + weighings.keep(caller, animalId, request),
                WEIGHING);
        return outcome.next().map(SeeOther::path).orElseGet(() -> refused(caller, animalId, "weighing", form, outcome));
    }

    private ModelAndView refused(Caller caller, UUID animalId, String which, SentForm form, SentForms.Outcome outcome) {
        ModelAndView page = page(HttpStatus.UNPROCESSABLE_CONTENT, caller, animalId, USUAL_EVENTS);
        page.addObject("refused", which);
        page.addObject("typed", form);
        page.addObject("faults", outcome.faults());
        page.addObject("sentBefore", outcome.sentBefore());
        if (!outcome.sentBefore()) {
            form.key(SentForms.KEY).ifPresent(key -> page.addObject(which + "Key", key));
        }
        return page;
    }

    private ModelAndView page(HttpStatus status, Caller caller, UUID animalId, int events) {
        UUID organisation = caller.organisationId();
        Animals.Newcomer animal =
                animals.find(organisation, animalId).orElseThrow(() -> ProblemException.notFound("animal"));
        Instant now = clock.instant();
        PageView view = shown.find(
                        organisation, caller.zone(), animalId, ReaderDates.of(LocaleContextHolder.getLocale()))
                .orElseThrow(() -> ProblemException.notFound("animal"));
        Map<String, PageView.SectionView> parts = new LinkedHashMap<>();
        view.sections().forEach(section -> parts.put(section.code(), section));
        ModelAndView page = new ModelAndView("animal", status);
        page.addObject("sheets", List.of("animal"));
        page.addObject("animal", animalId);
        page.addObject("it", view);
        page.addObject("parts", parts);
        page.addObject(
                "others",
                view.sections().stream()
                        .filter(section -> !OWN_PLACE.contains(section.code()))
                        .toList());
        page.addObject(
                "quarantine",
                followUps
                        .find(organisation, caller.zone(), animalId, LocalDate.ofInstant(now, caller.zone()))
                        .map(ShownQuarantine::of)
                        .orElseThrow());
        Story.Told told = story.read(organisation, caller.zone(), animal, now, MOST_LOOKS);
        page.addObject("signs", told.signs());
        page.addObject("signPlots", SignPlot.of(told.signs()));
        List<Story.Event> all = told.events();
        page.addObject("events", all.stream().limit(events).toList());
        page.addObject("eventsMore", all.size() > events ? events + MORE_EVENTS : null);
        page.addObject("zone", caller.zone());
        page.addObject("mayKeep", caller.may(Role.KEEPER));
        page.addObject("mayHandOver", caller.isKeeperOrClinician());
        addForms(page, caller, animalId);
        return page;
    }

    /** The forms as they are before anything was typed: the scale is the last one's. */
    private void addForms(ModelAndView page, Caller caller, UUID animalId) {
        Optional<Weighings.Instrument> last =
                weighings.findLastInstrument(caller.organisationId(), caller.zone(), animalId);
        Map<String, String> typed = new HashMap<>();
        typed.put("unit", last.map(Weighings.Instrument::unit).orElse("g"));
        last.flatMap(Weighings.Instrument::step).ifPresent(step -> typed.put("resolution", step.toPlainString()));
        last.flatMap(Weighings.Instrument::scale).ifPresent(scale -> typed.put("scale", scale));
        page.addObject("typed", SentForm.filledWith(typed));
        page.addObject("faults", Map.of());
        page.addObject("sentBefore", false);
        page.addObject("refused", "");
        page.addObject("kept", "");
        page.addObject("entry", null);
        page.addObject("weighed", null);
        page.addObject("choices", TypedEntry.CHOICES);
        page.addObject("lookNow", List.of());
        page.addObject("diaryKey", UUID.randomUUID().toString());
        page.addObject("weighingKey", UUID.randomUUID().toString());
    }
}
