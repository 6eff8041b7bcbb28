package varanid.intake.page.animal;

import jakarta.servlet.http.HttpServletRequest;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.animal.Arrivals;
import varanid.intake.animal.Asked;
import varanid.intake.page.SeeOther;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.platform.web.Reply;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.SentForm;

/** Registers a newcomer by what is known of it, however little; then it is looked over. */
@Controller
class NewAnimalPage {

    private static final String EVIDENCE = "evidence.";

    /** The fields of what is wrong, by where it stands in the request. */
    private static final Map<String, String> FIELDS = fields();

    private final Arrivals arrivals;
    private final Asked asked;
    private final Once once;

    NewAnimalPage(Arrivals arrivals, Asked asked, Once once) {
        this.arrivals = arrivals;
        this.asked = asked;
        this.once = once;
    }

    @GetMapping("/animals/new")
    ModelAndView form(Caller caller) {
        caller.require(Role.KEEPER);
        return page(HttpStatus.OK, SentForm.empty(), Map.of());
    }

    @PostMapping("/animals/new")
    ModelAndView register(Caller caller, HttpServletRequest sent) {
        caller.require(Role.KEEPER);
        SentForm form = SentForm.of(sent);
        JsonRequest request = JsonRequest.ofForm(
                "POST /animals/new", document(form), form.key(AnimalPages.KEY).orElse(null));
        try {
            return SeeOther.path(Objects.requireNonNull(once.perform(caller, request, () -> {
                        UUID id = arrivals.addAnimal(caller, request);
                        return new Reply(303, Map.of("Location", "/animals/" + id + "/look"), Map.of());
                    })
                    .getHeaders()
                    .getFirst("Location")));
        } catch (ProblemException e) {
            if (!e.type().equals(ProblemType.INVALID_REQUEST)) {
                throw e;
            }
            return page(HttpStatus.UNPROCESSABLE_CONTENT, form, Faults.byField(e.faults(), FIELDS));
        }
    }

    private ObjectNode document(SentForm form) {
        ObjectNode animal = JsonNodeFactory.instance.objectNode();
        for (String field : List.of("name", "tag", "lifeStage", "sex", "arrivedOn", "declaredOrigin", "notes")) {
            AnimalPages.text(form, animal, field);
        }
        form.find("species").ifPresent(name -> animal.putObject("species").put("name", name));
        if (form.find("weight").isPresent()) {
            ObjectNode weight = animal.putArray("weights").addObject();
            form.find("weight").ifPresent(typed -> SentForm.number(weight, "value", typed));
            form.find("unit").ifPresent(unit -> weight.put("unit", unit));
            form.find("resolution").ifPresent(typed -> SentForm.number(weight, "resolution", typed));
        }
        ObjectNode evidence = JsonNodeFactory.instance.objectNode();
        asked.origins()
                .forEach(question -> form.find(EVIDENCE + question.code())
                        .ifPresent(answer -> evidence.put(question.code(), answer)));
        if (!evidence.isEmpty()) {
            animal.set("evidence", evidence);
        }
        return animal;
    }

    private ModelAndView page(HttpStatus status, SentForm form, Map<String, List<String>> faults) {
        ModelAndView page = new ModelAndView("new-animal", status);
        page.addObject("sheets", List.of("animal"));
        page.addObject("typed", form);
        page.addObject("faults", faults);
        page.addObject(
                "key",
                form.key(AnimalPages.KEY).orElseGet(() -> UUID.randomUUID().toString()));
        page.addObject("species", asked.species());
        page.addObject("origins", asked.origins());
        page.addObject("codes", asked.sourceCodes());
        return page;
    }

    private static Map<String, String> fields() {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("#/weights/0/unit", "unit");
        fields.put("#/weights/0/resolution", "resolution");
        fields.put("#/weights", "weight");
        return fields;
    }
}
