package varanid.intake.page.record;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.time.LocalDate;
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
import varanid.intake.animal.LengthReading;
import varanid.intake.condition.Lengths;
import varanid.intake.page.record.FormField.Kind;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Role;

/** How long an animal is, against which its mass is asked about. */
@Controller
class LengthsPage {

    private static final Sheet SHEET = new Sheet(
            "lengths",
            "/lengths",
            List.of(
                    FormGroup.of(
                            "length",
                            FormField.choice(
                                    "of",
                                    Stream.of(LengthReading.Part.values())
                                            .map(LengthReading.Part::code)
                                            .toList()),
                            FormField.of(Kind.NUMBER, "value"),
                            FormField.unit("unit", List.of("cm", "mm", "[in_i]")),
                            FormField.of(Kind.CONFIRMATION, "confirmed"),
                            FormField.of(Kind.NUMBER, "resolution"),
                            FormField.of(Kind.LINE, "tool")),
                    FormGroup.of("note", FormField.of(Kind.PROSE, "note"))),
            List.of("weight"));

    private final Lengths lengths;
    private final RecordForms forms;
    private final Clock clock;

    LengthsPage(Lengths lengths, RecordForms forms, Clock clock) {
        this.lengths = lengths;
        this.forms = forms;
        this.clock = clock;
    }

    @GetMapping("/animals/{animalId}/lengths")
    ModelAndView show(Caller caller, @PathVariable UUID animalId, @RequestParam Map<String, String> query) {
        ModelAndView page = forms.show(caller, animalId, SHEET, query.containsKey("kept"));
        page.addObject(
                "lengths",
                lengths.list(
                        caller.organisationId(),
                        caller.zone(),
                        animalId,
                        LocalDate.ofInstant(clock.instant(), caller.zone())));
        return page;
    }

    @PostMapping("/animals/{animalId}/lengths")
    ModelAndView keep(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        caller.require(Role.KEEPER);
        return forms.keep(caller, animalId, SHEET, sent, request -> lengths.keep(caller, animalId, request));
    }
}
