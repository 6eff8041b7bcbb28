package varanid.intake.page.look;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.checklist.Edition;
import varanid.intake.platform.web.Fault;
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

    /** What people type; more is left as it is, to be refused with the reason. */
    private static final Pattern NUMERAL = Pattern.compile("[+-]?\\d{1,9}([.,]\\d{1,9})?");

    private final Map<String, List<String>> typed;
    private final Edition edition;

    /** @param typed the fields as they were sent */
    LookForm(Map<String, List<String>> typed, Edition edition) {
        this.typed = typed;
        this.edition = edition;
    }

    /** What was typed into a field; empty where nothing was. */
    String typed(String field) {
        List<String> values = values(field);
        return values.isEmpty() ? "" : values.get(0);
    }

    boolean isTyped(String field, String value) {
        return values(field).contains(value);
    }

    Optional<String> key() {
        return find(KEY).filter(key -> key.length() <= 200);
    }

    /** The same as a form that was not sent yet. */
    LookForm withoutKey() {
        Map<String, List<String>> rest = new LinkedHashMap<>(typed);
        rest.remove(KEY);
        return new LookForm(rest, edition);
    }

    JsonNode document() {
        ObjectNode document = JsonNodeFactory.instance.objectNode();
        document.put("checklist", edition.id());
        document.put("version", edition.version());
        ArrayNode conditions = document.putArray("conditions");
        values(CONDITION).forEach(conditions::add);
        document.set("answers", answers());
        find(SKIN).ifPresent(skin -> {
            ObjectNode temperature = document.putObject("skinTemperature");
            number(temperature, "value", skin);
            find(SKIN_UNIT).ifPresent(unit -> temperature.put("unit", unit));
            if (find(SKIN_CONFIRMED).isPresent()) {
                temperature.put("confirmed", true);
            }
        });
        find(NOTE).ifPresent(note -> document.put("note", note));
        return document;
    }

    /** What is wrong, by the id of the place it is wrong in; what is wrong with the whole stands under the empty id. */
    Map<String, List<String>> faults(List<Fault> faults) {
        Map<String, List<String>> byPlace = new LinkedHashMap<>();
        for (Fault fault : faults) {
            byPlace.computeIfAbsent(place(String.valueOf(fault.pointer())), each -> new ArrayList<>())
                    .add("It " + fault.wrong() + ". Right would be: " + fault.right() + ".");
        }
        return byPlace;
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
            Optional<String> number = find(NUMBER + id);
            Optional<String> second = find(SECOND + id);
            Optional<String> chosen = find(ANSWER + id);
            if (finding.measure() != null && (number.isPresent() || second.isPresent())) {
                measured(answers, finding.measure(), id, number, second);
            } else if (chosen.isPresent()) {
                answers.put(id, chosen.get());
            } else if (find(NONE + finding.section()).isPresent()) {
                Sheet.findAbsent(edition, finding).ifPresent(absent -> answers.put(id, absent));
            }
        }
        // What no question of this version has is not dropped in silence.
        for (String field : typed.keySet()) {
            if (field.startsWith(ANSWER) && find(field).isPresent()) {
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
            number.ifPresent(typed -> number(answers, id, typed));
            return;
        }
        ObjectNode both = answers.putObject(id);
        number.ifPresent(typed -> number(both, "value", typed));
        second.ifPresent(typed -> number(both, companion.id(), typed));
    }

    private static void number(ObjectNode into, String name, String typed) {
        String numeral = typed.strip();
        if (NUMERAL.matcher(numeral).matches()) {
            into.put(name, new BigDecimal(numeral.replace(',', '.')));
        } else {
            into.put(name, typed);
        }
    }

    private List<String> values(String field) {
        return typed.getOrDefault(field, List.of());
    }

    /** A browser sends every line break as two characters (HTML, "form submission"); they become one again. */
    private Optional<String> find(String field) {
        return Optional.of(typed(field).replace("\r\n", "\n")).filter(text -> !text.isBlank());
    }
}
