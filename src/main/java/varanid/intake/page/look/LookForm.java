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
import varanid.intake.assessment.ReadLook;
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
    static final String REASON = "reason";

    /** Before the id of a finding: the chosen answer, the number, the number beside it. */
    static final String ANSWER = "answer.";

    static final String NUMBER = "number.";
    static final String SECOND = "second.";

    /** Before the id of a section: none of its signs was there. */
    static final String NONE = "none.";

    private final SentForm form;
    private final Edition edition;
    private final @Nullable ReadLook corrects;

    /** @param corrects the look that this one takes the place of; nothing for a new look */
    LookForm(SentForm form, Edition edition, @Nullable ReadLook corrects) {
        this.form = form;
        this.edition = edition;
        this.corrects = corrects;
    }

    /**
     * The answers of a look, to be corrected. What nobody gave is not in it, because it is taken from the records again;
     * nor is a number that was given as a range, which the form has no field for.
     */
    static LookForm correcting(ReadLook look) {
        Map<String, List<String>> fields = new LinkedHashMap<>();
        JsonNode document = look.document();
        List<String> conditions = new ArrayList<>();
        document.path("conditions").forEach(each -> conditions.add(each.stringValue("")));
        fields.put(CONDITION, conditions);
        for (ChecklistDraft.Finding finding : look.edition().checklist().draft().findings()) {
            String id = finding.id();
            JsonNode answer = document.path("answers").path(id);
            if (document.path("answersFrom").has(id)) {
                continue;
            }
            if (answer.isString()) {
                fields.put(ANSWER + id, List.of(answer.stringValue()));
            } else if (answer.isNumber()) {
                fields.put(NUMBER + id, List.of(plain(answer)));
            } else if (answer.path("value").isNumber()) {
                fields.put(NUMBER + id, List.of(plain(answer.path("value"))));
                ChecklistDraft.@Nullable Companion companion =
                        finding.measure() == null ? null : finding.measure().companion();
                if (companion != null && answer.path(companion.id()).isNumber()) {
                    fields.put(SECOND + id, List.of(plain(answer.path(companion.id()))));
                }
            }
        }
        JsonNode skin = document.path("skinTemperature");
        if (skin.path("value").isNumber()) {
            fields.put(SKIN, List.of(plain(skin.path("value"))));
            fields.put(SKIN_UNIT, List.of(skin.path("unit").stringValue("")));
        }
        fields.put(NOTE, List.of(document.path("note").stringValue("")));
        return new LookForm(SentForm.filled(fields), look.edition(), look);
    }

    private static String plain(JsonNode number) {
        return number.decimalValue().toPlainString();
    }

    Edition edition() {
        return edition;
    }

    /** The look that this one takes the place of. */
    Optional<ReadLook> corrects() {
        return Optional.ofNullable(corrects);
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
        return new LookForm(form.without(KEY), edition, corrects);
    }

    JsonNode document() {
        ObjectNode document = JsonNodeFactory.instance.objectNode();
        document.put("checklist", edition.id());
        document.put("version", edition.version());
        key().ifPresent(key -> document.put("formKey", key.toString()));
        if (corrects != null) {
            document.put("supersedes", corrects.kept().id().toString());
            // It is the same look, whenever it is corrected.
            document.put("occurredAt", corrects.document().path("occurredAt").stringValue());
            document.put("reason", typed(REASON));
        }
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
            case "reason" -> REASON;
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
