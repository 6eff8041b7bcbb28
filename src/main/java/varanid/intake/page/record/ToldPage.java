package varanid.intake.page.record;

import jakarta.servlet.http.HttpServletRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import varanid.intake.page.record.FormField.Kind;
import varanid.intake.page.record.FormField.Option;
import varanid.intake.platform.web.Caller;
import varanid.intake.report.ReportWords;
import varanid.intake.report.Reports;

/** What people tell of an animal that nobody here has seen. */
@Controller
class ToldPage {

    private static final List<String> DEGREES = List.of("Cel", "[degF]");

    private final Reports reports;
    private final RecordForms forms;
    private final Sheet sheet;

    ToldPage(Reports reports, ReportWords words, RecordForms forms) {
        this.reports = reports;
        this.forms = forms;
        this.sheet = new Sheet(
                "told",
                "/told",
                groups(words),
                List.of("intake-and-output", "treatments", "handling", "questions", "consent-and-contact"));
    }

    private static List<FormGroup> groups(ReportWords words) {
        List<FormGroup> groups = new ArrayList<>();
        groups.add(FormGroup.of("who", FormField.of(Kind.LINE, "reportedBy")));
        for (ReportWords.Field field : words.fields()) {
            String ask = field.lookAlikes() == null ? field.ask() : field.ask() + " " + field.lookAlikes();
            groups.add(new FormGroup(field.id(), field.label(), ask, fields(field.id(), words)));
        }
        groups.add(FormGroup.of("note", FormField.of(Kind.PROSE, "note")));
        return groups;
    }

    private static List<FormField> fields(String id, ReportWords words) {
        return switch (id) {
            case "lastMeal" -> last(id, FormField.of(Kind.LINE, "lastMeal.food"));
            case "lastStool", "lastUrate", "lastDrink" -> last(id);
            case "lamps" ->
                List.of(
                        FormField.choice(Kind.CHOICE, "lamps.0.type", options(words.lamps())),
                        FormField.of(Kind.LINE, "lamps.0.place"),
                        FormField.of(Kind.NUMBER, "lamps.0.ageMonths"),
                        FormField.of(Kind.LINE, "lamps.0.words"));
            case "temperatures" -> temperatures(words);
            case "transport" ->
                List.of(FormField.of(Kind.NUMBER, "transport.hours"), FormField.of(Kind.PROSE, "transport.words"));
            case "reproductiveState" -> coded(id, words.reproductiveStates());
            case "handlingRisk" -> coded(id, words.handlingRisks());
            case "treatments" ->
                List.of(
                        FormField.of(Kind.LINE, "treatments.0.what"),
                        FormField.of(Kind.LINE, "treatments.0.amount"),
                        FormField.of(Kind.DAY, "treatments.0.on"),
                        FormField.of(Kind.LINE, "treatments.0.period"),
                        FormField.of(Kind.LINE, "treatments.0.givenBy"),
                        FormField.of(Kind.LINE, "treatments.0.why"));
            case "bites" ->
                List.of(
                        FormField.of(Kind.LINE, "bites.0.who"),
                        FormField.of(Kind.DAY, "bites.0.on"),
                        FormField.of(Kind.LINE, "bites.0.bodyPart"),
                        FormField.choice(Kind.CHOICE, "bites.0.brokeSkin", options(words.yesNoUnknown())),
                        FormField.choice(Kind.CHOICE, "bites.0.doctorSeen", options(words.yesNoUnknown())));
            case "vulnerablePeople" -> List.of(FormField.choice(Kind.SEVERAL, id, options(words.vulnerablePeople())));
            case "consent" ->
                List.of(
                        FormField.of(Kind.LINE, "consent.by"),
                        FormField.choice(Kind.SEVERAL, "consent.given", options(words.consents())),
                        FormField.of(Kind.PROSE, "consent.words"));
            case "payer" -> List.of(FormField.of(Kind.LINE, id));
            case "questions" -> List.of(FormField.of(Kind.LINES, id));
            case "contact" ->
                List.of(
                        FormField.of(Kind.LINE, "contact.name"),
                        FormField.of(Kind.LINE, "contact.phone"),
                        FormField.of(Kind.LINE, "contact.email"),
                        FormField.of(Kind.LINE, "contact.bestTime"));
            case "diet", "supplements", "spendingLimit" -> List.of(FormField.of(Kind.PROSE, id));
            default -> throw new IllegalStateException("no fields to tell " + id + " in");
        };
    }

    private static List<FormField> last(String id, FormField... before) {
        List<FormField> fields = new ArrayList<>(List.of(before));
        fields.add(FormField.of(Kind.DAY, id + ".on"));
        fields.add(FormField.of(Kind.NUMBER, id + ".daysAgo"));
        fields.add(FormField.of(Kind.TICK, id + ".unknown"));
        fields.add(FormField.of(Kind.LINE, id + ".words"));
        return fields;
    }

    private static List<FormField> temperatures(ReportWords words) {
        List<FormField> fields = new ArrayList<>();
        for (ReportWords.WarmPlace place : words.temperatures()) {
            String name = "temperatures." + place.code();
            fields.add(FormField.of(Kind.NUMBER, name + ".value").asking(place.label(), null));
            fields.add(FormField.unit(name + ".unit", DEGREES));
            fields.add(FormField.of(Kind.CONFIRMATION, name + ".confirmed"));
        }
        return fields;
    }

    private static List<FormField> coded(String id, List<ReportWords.Word> choices) {
        return List.of(
                FormField.choice(Kind.CHOICE, id + ".code", options(choices)), FormField.of(Kind.LINE, id + ".words"));
    }

    private static List<Option> options(List<ReportWords.Word> words) {
        return words.stream().map(word -> new Option(word.code(), word.label())).toList();
    }

    @GetMapping("/animals/{animalId}/told")
    ModelAndView show(Caller caller, @PathVariable UUID animalId, @RequestParam Map<String, String> query) {
        return forms.show(caller, animalId, sheet, query.containsKey("kept"));
    }

    @PostMapping("/animals/{animalId}/told")
    ModelAndView keep(Caller caller, @PathVariable UUID animalId, HttpServletRequest sent) {
        caller.requireKeeperOrClinician();
        return forms.keep(caller, animalId, sheet, sent, request -> reports.keep(caller, animalId, request));
    }
}
