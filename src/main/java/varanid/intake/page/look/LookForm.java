package varanid.intake.page.look;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.checklist.Edition;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.SentForm;
import varanid.intake.scoring.ChecklistDraft;

/** What was put into the form of a look, as the same JSON that a program would send. */
final class LookForm {

    static final String CHECKLIST = "checklist";
    static final String VERSION = "version";
    static final String KEY = "key";
    static final String CONDITION = "condition";
    static final String SKIN = "skin";
    static final String SKIN_UNIT = "skin-unit";
    static final String SKIN_CONFIRMED = "skin-confirmed";
    static final String NOTE = "note";

    /** Before the id of a finding: the chosen answer, the number, the number beside it. */
    static final String ANSWER = "answer.";

    static final String NUMBER = "number.";
    static final String SECOND = "second.";

    /** Before the id of a section: none of its signs was there. */
    static final String NONE = "none.";

    private final SentForm form;
    private final Edition edition;

    LookForm(SentForm form, Edition edition) {
        this.form = form;
        this.edition = edition;
    }

    /** What was typed into a field; empty where nothing was. */
    String typed(String field) {
        return form.typed(field);
    }

    boolean isTyped(String field, String value) {
        return form.values(field).contains(value);
    }

    /** Of the form as it was sent out; nothing for what cannot be one. */
    Optional<UUID> key() {
        return form.find(KEY).flatMap(LookForm::uuid);
    }

    /** The same as a form that was not sent yet. */
    LookForm withoutKey() {
        return new LookForm(form.without(KEY), edition);
    }

    JsonNode document() {
        ObjectNode document = JsonNodeFactory.instance.objectNode();
        document.put("checklist", edition.id());
        document.put("version", edition.version());
        key().ifPresent(key -> document.put("formKey", key.toString()));
        ArrayNode conditions = document.putArray("conditions");
        form.values(CONDITION).forEach(conditions::add);
        document.set("answers", answers());
        form.find(SKIN).ifPresent(skin -> {
            ObjectNode temperature = document.putObject("skinTemperature");
            SentForm.number(temperature, "value", skin);
            form.find(SKIN_UNIT).ifPresent(unit -> temperature.put("unit", unit));
            if (form.find(SKIN_CONFIRMED).isPresent()) {
                temperature.put("confirmed", true);
            }
        });
        form.find(NOTE).ifPresent(note -> document.put("note", note));
        return document;
    }

    /** What is wrong, by the id of the place it is wrong in; what is wrong with the whole stands under the empty id. */
    Map<String, List<String>> faults(List<Fault> faults) {
        Map<String, List<String>> byPlace = new LinkedHashMap<>();
        for (Fault fault : faults) {
            byPlace.computeIfAbsent(place(String.valueOf(fault.pointer())), each -> new ArrayList<>())
                    .add(SentForm.words(fault));
        }
        return byPlace;
    }

    private static Optional<UUID> uuid(String text) {
        try {
            return Optional.of(UUID.fromString(text.strip()));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private String place(String pointer) {
        String[] steps = pointer.split("/", -1);
        String first = steps.length > 1 ? steps[1] : "";
        return switch (first) {
            case "answers" ->
                steps.length > 2 && edition.checklist().findFinding(steps[2]).isPresent() ? Sheet.place(steps[2]) : "";
            case "conditions" -> CONDITION;
            case "skinTemperature" -> SKIN;
            case "note" -> NOTE;
            default -> "";
        };
    }

    private ObjectNode answers() {
        ObjectNode answers = JsonNodeFactory.instance.objectNode();
        for (ChecklistDraft.Finding finding : edition.checklist().draft().findings()) {
            String id = finding.id();
            Optional<String> number = form.find(NUMBER + id);
            Optional<String> second = form.find(SECOND + id);
            Optional<String> chosen = form.find(ANSWER + id);
            if (finding.measure() != null && (number.isPresent() || second.isPresent())) {
                measured(answers, finding.measure(), id, number, second);
            } else if (chosen.isPresent()) {
                answers.put(id, chosen.get());
            } else if (form.find(NONE + finding.section()).isPresent()) {
                Sheet.findAbsent(edition, finding).ifPresent(absent -> answers.put(id, absent));
            }
        }
        // What no question of this version has is not dropped in silence.
        for (String field : form.names()) {
            if (field.startsWith(ANSWER) && form.find(field).isPresent()) {
                String id = field.substring(ANSWER.length());
                if (edition.checklist().findFinding(id).isEmpty()) {
                    answers.put(id, typed(field));
                }
            }
        }
        return answers;
    }

    private static void measured(
            ObjectNode answers,
            ChecklistDraft.Measure measure,
            String id,
            Optional<String> number,
            Optional<String> second) {
        ChecklistDraft.@Nullable Companion companion = measure.companion();
        if (companion == null) {
            number.ifPresent(typed -> SentForm.number(answers, id, typed));
            return;
        }
        ObjectNode both = answers.putObject(id);
        number.ifPresent(typed -> SentForm.number(both, "value", typed));
        second.ifPresent(typed -> SentForm.number(both, companion.id(), typed));
    }
}
