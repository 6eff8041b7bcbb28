package varanid.intake.vet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.platform.web.Fault;

/**
 * What was typed into the form, as the same JSON that a program would send, so that both are read and refused alike.
 *
 * <p>A browser sends every line break of a text as two characters (HTML, "form submission": newlines are normalised to
 * CR LF); they become one again, as they were typed.
 */
final class AnswerForm {

    static final int TESTS = 3;
    static final int RULINGS = 3;

    private final Map<String, List<String>> typed;
    private final ObjectNode document = JsonNodeFactory.instance.objectNode();
    private final Map<String, String> fieldOf = new HashMap<>();

    /** @param typed the fields as they were sent */
    AnswerForm(Map<String, List<String>> typed) {
        this.typed = typed;
        text(document, "seenUpTo", "seenUpTo", "#");
        text(document, "sawAnimal", "sawAnimal", "#");
        text(document, "urgency", "urgency", "#");
        text(document, "isolation", "isolation", "#");
        findings();
        tests();
        text(document, "instructions", "instructions", "#");
        rulings();
        text(document, "quarantineUntil", "quarantineUntil", "#");
        approval();
        text(document, "nextVisit", "nextVisit", "#");
        text(document, "words", "words", "#");
        ObjectNode writer = document.putObject("writer");
        text(writer, "name", "name", "#/writer");
        text(writer, "practice", "practice", "#/writer");
        text(writer, "licenceStatement", "licence", "#/writer");
        text(writer, "contact", "contact", "#/writer");
    }

    JsonNode document() {
        return document;
    }

    /** What was typed into a field; empty where nothing was. */
    String typed(String field) {
        return find(field).orElse("");
    }

    /** What is wrong, by the field it is wrong in; what is wrong with the whole stands under the empty name. */
    Map<String, List<String>> faults(List<Fault> faults) {
        Map<String, List<String>> byField = new LinkedHashMap<>();
        for (Fault fault : faults) {
            String field = Optional.ofNullable(fieldOf.get(String.valueOf(fault.pointer())))
                    .orElse("");
            byField.computeIfAbsent(field, each -> new ArrayList<>())
                    .add("It " + fault.wrong() + ". Right would be: " + fault.right() + ".");
        }
        return byField;
    }

    private Optional<String> find(String field) {
        @Nullable List<String> values = typed.get(field);
        return values == null || values.isEmpty()
                ? Optional.empty()
                : Optional.of(values.get(0).replace("\r\n", "\n"));
    }

    private Optional<String> findGiven(String field) {
        return find(field).filter(text -> !text.isBlank());
    }

    /** A field that is left empty is not sent on; where it is needed, its lack is told at the field. */
    private boolean text(ObjectNode into, String name, String field, String pointer) {
        fieldOf.put(pointer + "/" + name, field);
        Optional<String> given = findGiven(field);
        given.ifPresent(text -> into.put(name, text));
        return given.isPresent();
    }

    private void findings() {
        ArrayNode findings = JsonNodeFactory.instance.arrayNode();
        for (String field : typed.keySet()) {
            if (field.startsWith("finding.") && findGiven(field).isPresent()) {
                String finding = field.substring("finding.".length());
                String pointer = "#/findings/" + findings.size();
                ObjectNode said = findings.addObject().put("finding", finding);
                fieldOf.put(pointer + "/finding", field);
                text(said, "verdict", field, pointer);
                if (typed(field).equals(VetAnswer.Verdict.CONFIRMED.code())) {
                    // As it was shown: who confirms the sign confirms how bad it is.
                    text(said, "level", "level." + finding, pointer);
                }
                text(said, "words", "remark." + finding, pointer);
            } else if (field.startsWith("remark.")
                    && findGiven(field).isPresent()
                    && findGiven("finding." + field.substring("remark.".length()))
                            .isEmpty()) {
                // A remark without a verdict is not dropped: it is asked for what it says of the finding.
                String finding = field.substring("remark.".length());
                String pointer = "#/findings/" + findings.size();
                ObjectNode said = findings.addObject().put("finding", finding);
                fieldOf.put(pointer + "/verdict", "finding." + finding);
                text(said, "words", field, pointer);
            }
        }
        String pointer = "#/findings/" + findings.size();
        ObjectNode added = JsonNodeFactory.instance.objectNode();
        added.put("verdict", VetAnswer.Verdict.ADDED.code());
        if (text(added, "words", "added", pointer)) {
            findings.add(added);
        }
        if (!findings.isEmpty()) {
            document.set("findings", findings);
        }
    }

    private void tests() {
        ArrayNode tests = JsonNodeFactory.instance.arrayNode();
        for (int i = 1; i <= TESTS; i++) {
            String pointer = "#/tests/" + tests.size();
            ObjectNode test = JsonNodeFactory.instance.objectNode();
            boolean given = text(test, "words", "test-words." + i, pointer);
            given |= text(test, "on", "test-on." + i, pointer);
            given |= text(test, "result", "test-result." + i, pointer);
            if (given) {
                tests.add(test);
            }
        }
        if (!tests.isEmpty()) {
            document.set("tests", tests);
        }
    }

    private void rulings() {
        ArrayNode rulings = JsonNodeFactory.instance.arrayNode();
        fieldOf.put("#/rulings", "cause.1");
        for (int i = 1; i <= RULINGS; i++) {
            String pointer = "#/rulings/" + rulings.size();
            ObjectNode ruling = JsonNodeFactory.instance.objectNode();
            boolean given = text(ruling, "cause", "cause." + i, pointer);
            given |= text(ruling, "ruling", "ruling." + i, pointer);
            if (given) {
                rulings.add(ruling);
            }
        }
        if (!rulings.isEmpty()) {
            document.set("rulings", rulings);
        }
    }

    private void approval() {
        fieldOf.put("#/approvesRelease", "approvesRelease");
        findGiven("approvesRelease").ifPresent(text -> {
            if (text.equals("true") || text.equals("false")) {
                document.put("approvesRelease", text.equals("true"));
            } else {
                document.put("approvesRelease", text);
            }
        });
    }
}
