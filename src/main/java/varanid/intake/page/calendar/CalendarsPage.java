package varanid.intake.page.calendar;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.animal.Animals;
import varanid.intake.page.Faults;
import varanid.intake.page.SeeOther;
import varanid.intake.page.SentForms;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.PublicAddress;
import varanid.intake.platform.web.SentForm;
import varanid.intake.reminder.OwnCalendars;

/** What is due, in one's own calendar: of one animal or of all. */
@Controller
class CalendarsPage {

    private static final int MOST = 20;

    private final OwnCalendars calendars;
    private final Animals animals;
    private final PublicAddress address;
    private final JsonMapper json;

    CalendarsPage(OwnCalendars calendars, Animals animals, PublicAddress address, JsonMapper json) {
        this.calendars = calendars;
        this.animals = animals;
        this.address = address;
        this.json = json;
    }

    @GetMapping("/calendars")
    ModelAndView all(Caller caller, @RequestParam(required = false) @Nullable UUID after) {
        return page(HttpStatus.OK, caller, Optional.empty(), SentForm.empty(), Map.of(), Optional.ofNullable(after));
    }

    @GetMapping("/animals/{animalId}/calendar")
    ModelAndView ofAnimal(
            Caller caller, @PathVariable UUID animalId, @RequestParam(required = false) @Nullable UUID after) {
        return page(
                HttpStatus.OK, caller, Optional.of(animalId), SentForm.empty(), Map.of(), Optional.ofNullable(after));
    }

    @PostMapping("/calendars")
    ModelAndView makeOfAll(Caller caller, HttpServletRequest sent) {
        return make(caller, Optional.empty(), sent);
    }

    @PostMapping("/animals/{animalId}/calendar")
    ModelAndView makeOfAnimal(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        return make(caller, Optional.of(animalId), sent);
    }

    /** Shown at once and not behind a redirect: the address is nowhere to be read again. */
    private ModelAndView make(Caller caller, Optional<UUID> animalId, HttpServletRequest sent) {
        SentForm form = SentForm.of(sent);
        ObjectNode calendar = JsonNodeFactory.instance.objectNode();
        animalId.ifPresent(id -> calendar.put("animalId", id.toString()));
        form.putText(calendar, "label");
        form.putText(calendar, "form");
        JsonRequest request = JsonRequest.ofForm(
                "POST " + path(animalId),
                calendar,
                form.key(SentForms.KEY).map(key -> key + " " + calendar).orElse(null));
        try {
            byte[] made = Objects.requireNonNull(calendars.make(caller, request).getBody());
            String secret = json.readTree(made).path("address").stringValue("");
            ModelAndView page = page(HttpStatus.OK, caller, animalId, SentForm.empty(), Map.of(), Optional.empty());
            String whole = address.resolve(sent, secret).toString();
            page.addObject("made", whole);
            page.addObject("subscribe", whole.replaceFirst("^https?", "webcal"));
            return page;
        } catch (ProblemException e) {
            return page(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    caller,
                    animalId,
                    form,
                    Faults.byField(e, Map.of()),
                    Optional.empty());
        }
    }

    @PostMapping("/calendars/{id}/revocation")
    ModelAndView revoke(Caller caller, @PathVariable UUID id) {
        calendars.revoke(
                caller,
                id,
                JsonRequest.ofForm(
                        "POST /calendars/" + id + "/revocation", JsonNodeFactory.instance.objectNode(), null));
        return SeeOther.path("/calendars#made");
    }

    private ModelAndView page(
            HttpStatus status,
            Caller caller,
            Optional<UUID> animalId,
            SentForm form,
            Map<String, List<String>> faults,
            Optional<UUID> after) {
        Optional<Animals.Newcomer> animal = animalId.map(
                id -> animals.find(caller.organisationId(), id).orElseThrow(() -> ProblemException.notFound("animal")));
        List<OwnCalendars.Known> found = calendars.listOwn(caller, after, MOST + 1);
        ModelAndView page = new ModelAndView("calendars", status);
        page.addObject("sheets", List.of("animal"));
        page.addObject("path", path(animalId));
        page.addObject("animal", animalId.orElse(null));
        page.addObject("name", animal.flatMap(Animals.Newcomer::name).orElse(null));
        page.addObject("made", null);
        page.addObject("calendars", found.stream().limit(MOST).toList());
        page.addObject("next", found.size() > MOST ? found.get(MOST - 1).id() : null);
        page.addObject("typed", form);
        page.addObject("faults", faults);
        page.addObject("sentBefore", false);
        page.addObject("key", SentForms.nextKey(form, false));
        return page;
    }

    private static String path(Optional<UUID> animalId) {
        return animalId.map(id -> "/animals/" + id + "/calendar").orElse("/calendars");
    }
}
