package varanid.intake.page.animal;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
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
import varanid.intake.page.SentForms;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.SentForm;

/** Registers a newcomer by what is known of it, however little; then it is looked over. */
@Controller
class NewAnimalPage {

    private static final String PATH = "/animals/new";
    private static final String EVIDENCE = "evidence.";

    /** The fields of what is wrong, by where it stands in the request. */
    private static final Map<String, String> FIELDS = Map.of(
            "#/weights/0/unit",
            "unit",
            "#/weights/0/resolution",
            "resolution",
            "#/weights/0/scale",
            "scale",
            "#/weights",
            "weight");

    private final Arrivals arrivals;
    private final Asked asked;
    private final SentForms forms;

    NewAnimalPage(Arrivals arrivals, Asked asked, SentForms forms) {
        this.arrivals = arrivals;
        this.asked = asked;
        this.forms = forms;
    }

    @GetMapping(PATH)
    ModelAndView form(Caller caller) {
        caller.require(Role.KEEPER);
        return page(HttpStatus.OK, SentForm.filledWith(Map.of("unit", "g")), Map.of(), false);
    }

    @PostMapping(PATH)
    ModelAndView register(Caller caller, HttpServletRequest sent) {
        caller.require(Role.KEEPER);
        SentForm form = SentForm.of(sent);
        SentForms.Outcome outcome = forms.keep(
                caller,
                "POST " + PATH,
                form,
                document(form),
                request -> "/animals/" + arrivals.addAnimal(caller, request) + "/look",
                FIELDS);
        return outcome.next()
                .map(SeeOther::path)
                .orElseGet(() -> page(HttpStatus.UNPROCESSABLE_CONTENT, form, outcome.faults(), outcome.sentBefore()));
    }

    private ObjectNode document(SentForm form) {
        ObjectNode animal = JsonNodeFactory.instance.objectNode();
        for (String field : List.of("name", "tag", "lifeStage", "sex", "arrivedOn", "declaredOrigin", "notes")) {
            form.putText(animal, field);
        }
        form.find("species").ifPresent(name -> animal.putObject("species").put("name", name));
        // A step or a scale without a weight is asked about, not dropped.
        if (Stream.of("weight", "resolution", "scale")
                .anyMatch(field -> form.find(field).isPresent())) {
            TypedWeighing.put(form, animal.putArray("weights").addObject());
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

    private ModelAndView page(HttpStatus status, SentForm form, Map<String, List<String>> faults, boolean sentBefore) {
        ModelAndView page = new ModelAndView("new-animal", status);
        page.addObject("sheets", List.of("animal"));
        page.addObject("typed", form);
        page.addObject("faults", faults);
        page.addObject("sentBefore", sentBefore);
        page.addObject("key", SentForms.nextKey(form, sentBefore));
        page.addObject("species", asked.species());
        page.addObject("origins", asked.origins());
        page.addObject("originsAnswered", form.names().stream().anyMatch(field -> field.startsWith(EVIDENCE)));
        page.addObject("codes", asked.sourceCodes());
        return page;
    }
}
