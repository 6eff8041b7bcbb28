package varanid.intake.page.animal;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.animal.Animals;
import varanid.intake.diary.DiaryKeeper;
import varanid.intake.page.SeeOther;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.platform.web.QrCode;
import varanid.intake.platform.web.Reply;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.SentForm;
import varanid.intake.share.GiveLinks;
import varanid.intake.visit.PageView;
import varanid.intake.visit.Shown;
import varanid.intake.weight.Weighings;

/** The animals, one of them, and what is kept of it with a tap. */
@Controller
class AnimalPages {

    /** The field with a form's own key. */
    static final String KEY = "key";

    private static final int MOST = 50;
    private static final int QR_PIXELS = 200;

    private static final Map<String, String> WEIGHING =
            Map.of("#/value", "weight", "#/unit", "unit", "#/resolution", "resolution");

    private final Animals animals;
    private final Shown shown;
    private final DiaryKeeper diary;
    private final Weighings weighings;
    private final GiveLinks links;
    private final Once once;
    private final JsonMapper json;

    AnimalPages(
            Animals animals,
            Shown shown,
            DiaryKeeper diary,
            Weighings weighings,
            GiveLinks links,
            Once once,
            JsonMapper json) {
        this.animals = animals;
        this.shown = shown;
        this.diary = diary;
        this.weighings = weighings;
        this.links = links;
        this.once = once;
        this.json = json;
    }

    @GetMapping("/animals")
    ModelAndView animals(Caller caller, @RequestParam(required = false) @Nullable UUID after) {
        List<Animals.Newcomer> found = animals.list(caller.organisationId(), Optional.ofNullable(after), MOST + 1);
        ModelAndView page = new ModelAndView("animals");
        page.addObject("sheets", List.of("animal"));
        page.addObject("animals", found.stream().limit(MOST).toList());
        page.addObject("next", found.size() > MOST ? found.get(MOST - 1).id() : null);
        return page;
    }

    @GetMapping("/animals/{animalId}")
    ModelAndView animal(
            Caller caller, @PathVariable UUID animalId, @RequestParam(required = false) @Nullable String kept) {
        return page(HttpStatus.OK, caller, animalId, SentForm.empty(), Map.of(), kept);
    }

    /** Where the decision leads for what is due, and when. */
    @GetMapping("/animals/{animalId}/calendar")
    ModelAndView calendar(@PathVariable UUID animalId) {
        return SeeOther.path("/animals/" + animalId + "#done-and-not-done");
    }

    @PostMapping("/animals/{animalId}/diary")
    ModelAndView log(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        SentForm form = SentForm.of(sent);
        ObjectNode entry = JsonNodeFactory.instance.objectNode();
        for (String field : List.of("ate", "food", "drank", "seen", "demeanour", "cleaning", "miteCheck", "note")) {
            text(form, entry, field);
        }
        ObjectNode passed = JsonNodeFactory.instance.objectNode();
        text(form, passed, "stool");
        text(form, passed, "urate");
        if (!passed.isEmpty()) {
            entry.set("passed", passed);
        }
        return keep(caller, animalId, form, entry, "diary", request -> diary.keep(caller, animalId, request), Map.of());
    }

    @PostMapping("/animals/{animalId}/weighings")
    ModelAndView weigh(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        SentForm form = SentForm.of(sent);
        ObjectNode weighing = JsonNodeFactory.instance.objectNode();
        form.find("weight").ifPresent(typed -> SentForm.number(weighing, "value", typed));
        text(form, weighing, "unit");
        form.find("resolution").ifPresent(typed -> SentForm.number(weighing, "resolution", typed));
        return keep(
                caller,
                animalId,
                form,
                weighing,
                "weighings",
                request -> weighings.keep(caller, animalId, request),
                WEIGHING);
    }

    @GetMapping("/animals/{animalId}/hand-over")
    ModelAndView handOver(Caller caller, @PathVariable UUID animalId) {
        return handOver(HttpStatus.OK, caller, animalId, SentForm.empty(), Map.of());
    }

    /** Shown at once and not behind a redirect: the address is nowhere to be read again. */
    @PostMapping("/animals/{animalId}/hand-over")
    ModelAndView giveLink(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        SentForm form = SentForm.of(sent);
        ObjectNode link = JsonNodeFactory.instance.objectNode();
        text(form, link, "kind");
        text(form, link, "recipient");
        JsonRequest request = JsonRequest.ofForm(
                "POST /animals/" + animalId + "/hand-over", link, form.key(KEY).orElse(null));
        try {
            ResponseEntity<byte[]> given = links.give(caller, animalId, request, sent);
            JsonNode body = json.readTree(Objects.requireNonNull(given.getBody()));
            String address = body.path("address").stringValue("");
            ModelAndView page = handOver(HttpStatus.OK, caller, animalId, SentForm.empty(), Map.of());
            page.addObject("address", address);
            page.addObject("recipient", body.path("recipient").stringValue(""));
            page.addObject("reply", body.path("kind").stringValue("").equals("reply"));
            page.addObject("qr", QrCode.svg(address, body.path("recipient").stringValue(""), QR_PIXELS));
            return page;
        } catch (ProblemException e) {
            if (!e.type().equals(ProblemType.INVALID_REQUEST)) {
                throw e;
            }
            return handOver(
                    HttpStatus.UNPROCESSABLE_CONTENT, caller, animalId, form, Faults.byField(e.faults(), Map.of()));
        }
    }

    /** Puts what was typed into a field, where anything was, under the same name. */
    static void text(SentForm form, ObjectNode into, String field) {
        form.find(field).ifPresent(text -> into.put(field, text));
    }

    /** Keeps what a form says. */
    private interface Keeping {
        UUID keep(JsonRequest request);
    }

    private ModelAndView keep(
            Caller caller,
            UUID animalId,
            SentForm form,
            JsonNode document,
            String what,
            Keeping keeping,
            Map<String, String> fieldOf) {
        caller.require(Role.KEEPER);
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
        JsonRequest request = JsonRequest.ofForm(
                "POST /animals/" + animalId + "/" + what,
                document,
                form.key(KEY).orElse(null));
        try {
            once.perform(caller, request, () -> {
                keeping.keep(request);
                return new Reply(303, Map.of(), Map.of());
            });
        } catch (ProblemException e) {
            if (!e.type().equals(ProblemType.INVALID_REQUEST)) {
                throw e;
            }
            return page(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    caller,
                    animalId,
                    form,
                    Faults.byField(e.faults(), fieldOf),
                    null);
        }
        return SeeOther.path("/animals/" + animalId + "?kept=" + what);
    }

    private ModelAndView page(
            HttpStatus status,
            Caller caller,
            UUID animalId,
            SentForm form,
            Map<String, List<String>> faults,
            @Nullable String kept) {
        ModelAndView page = new ModelAndView("animal", status);
        page.addObject("sheets", List.of("animal"));
        page.addObject("animal", animalId);
        page.addObject("it", view(caller, animalId));
        page.addObject("typed", form);
        page.addObject("faults", faults);
        page.addObject("kept", kept);
        page.addObject("key", UUID.randomUUID().toString());
        return page;
    }

    private ModelAndView handOver(
            HttpStatus status, Caller caller, UUID animalId, SentForm form, Map<String, List<String>> faults) {
        ModelAndView page = new ModelAndView("hand-over", status);
        page.addObject("sheets", List.of("animal"));
        page.addObject("animal", animalId);
        page.addObject("it", view(caller, animalId));
        page.addObject("typed", form);
        page.addObject("faults", faults);
        page.addObject("key", UUID.randomUUID().toString());
        return page;
    }

    private PageView view(Caller caller, UUID animalId) {
        return shown.find(caller.organisationId(), caller.zone(), animalId)
                .orElseThrow(() -> ProblemException.notFound("animal"));
    }
}
