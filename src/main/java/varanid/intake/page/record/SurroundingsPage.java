package varanid.intake.page.record;

import jakarta.servlet.http.HttpServletRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import varanid.intake.enclosure.EnclosureReadings;
import varanid.intake.enclosure.HusbandryRules;
import varanid.intake.enclosure.Quantity;
import varanid.intake.page.record.FormField.Kind;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Role;

/** What was measured and seen of an animal's enclosure. */
@Controller
class SurroundingsPage {

    private static final List<String> DEGREES = List.of("Cel", "[degF]");
    private static final List<String> LENGTHS = List.of("cm", "mm", "[in_i]");

    private final EnclosureReadings readings;
    private final RecordForms forms;
    private final Sheet sheet;

    SurroundingsPage(EnclosureReadings readings, RecordForms forms) {
        this.readings = readings;
        this.forms = forms;
        this.sheet = new Sheet("surroundings", "/surroundings", groups(readings.rules()), List.of("surroundings"));
    }

    private static List<FormGroup> groups(HusbandryRules rules) {
        Map<String, String> how = rules.measures().stream()
                .collect(Collectors.toMap(HusbandryRules.Measure::id, HusbandryRules.Measure::text));
        List<FormField> warmth = new ArrayList<>();
        for (Quantity quantity : Quantity.values()) {
            if (quantity.place().isPresent()) {
                measured(warmth, "temperatures." + quantity.code(), how.get(quantity.code()), DEGREES);
            }
        }
        List<FormField> air = new ArrayList<>();
        air.add(FormField.of(Kind.NUMBER, "humidity.percent").hinted(how.get(Quantity.HUMIDITY.code())));
        measured(air, "humidity.at", null, DEGREES);
        air.add(FormField.of(Kind.NUMBER, "uvIndexAtBack").hinted(how.get("uv-index")));
        List<FormField> facts = rules.facts().stream()
                .map(fact ->
                        FormField.choice("facts." + fact.id(), fact.values()).asking(fact.text(), null))
                .toList();
        List<FormField> sizes = new ArrayList<>();
        for (HusbandryRules.Size size : rules.sizes()) {
            sizes.add(FormField.of(Kind.NUMBER, "sizes." + size.id() + ".value").asking(size.text(), null));
            sizes.add(FormField.unit("sizes." + size.id() + ".unit", LENGTHS));
            sizes.add(FormField.of(Kind.TICK, "sizes." + size.id() + ".confirmed"));
        }
        return List.of(
                new FormGroup("warmth", null, null, warmth),
                new FormGroup("air", null, null, air),
                new FormGroup("setup", null, null, facts),
                new FormGroup("sizes", null, null, sizes),
                FormGroup.of("note", FormField.of(Kind.PROSE, "note")));
    }

    private static void measured(List<FormField> into, String name, @Nullable String how, List<String> units) {
        into.add(FormField.of(Kind.NUMBER, name + ".value").hinted(how));
        into.add(FormField.unit(name + ".unit", units));
        into.add(FormField.of(Kind.CONFIRMATION, name + ".confirmed"));
    }

    @GetMapping("/animals/{animalId}/surroundings")
    ModelAndView show(Caller caller, @PathVariable UUID animalId, @RequestParam Map<String, String> query) {
        return forms.show(caller, animalId, sheet, query.containsKey("kept"));
    }

    @PostMapping("/animals/{animalId}/surroundings")
    ModelAndView keep(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        caller.require(Role.KEEPER);
        return forms.keep(caller, animalId, sheet, sent, request -> readings.keep(caller, animalId, request));
    }
}
