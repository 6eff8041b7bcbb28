package varanid.intake.vet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.SentForm;

/** What was typed into the form, as the same JSON that a program would send, so that both are read and refused alike. */
final class AnswerForm {

    static final int TESTS = 3;
    static final int RULINGS = 3;

    private final SentForm form;
    private final ObjectNode document = JsonNodeFactory.instance.objectNode();
    private final Map<String, String> fieldOf = new HashMap<>();

    AnswerForm(SentForm form) {
        this.form = form;
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
        return form.typed(field);
    }

    /** What is wrong, by the field it is wrong in; what is wrong with the whole stands under the empty name. */
    Map<String, List<String>> faults(List<Fault> faults) {
        Map<String, List<String>> byField = new LinkedHashMap<>();
        for (Fault fault : faults) {
            String field = Optional.ofNullable(fieldOf.get(String.valueOf(fault.pointer())))
                    .orElse("");
            byField.computeIfAbsent(field, each -> new ArrayList<>()).add(SentForm.words(fault));
        }
        return byField;
    }

    /** A field that is left empty is not sent on; where it is needed, its lack is told at the field. */
    private boolean text(ObjectNode into, String name, String field, String pointer) {
        fieldOf.put(pointer + "/" + name, field);
        Optional<String> given = form.find(field);
        given.ifPresent(text -> into.put(name, text));
        return given.isPresent();
    }

    private void findings() {
        ArrayNode findings = JsonNodeFactory.instance.arrayNode();
        for (String field : form.names()) {
            if (field.startsWith("finding.") && form.find(field).isPresent()) {
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
                    && form.find(field).isPresent()
                    && form.find("finding." + field.substring("remark.".length()))
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
        form.find("approvesRelease").ifPresent(text -> {
            if (text.equals("true") || text.equals("false")) {
                document.put("approvesRelease", text.equals("true"));
            } else {
                document.put("approvesRelease", text);
            }
        });
    }
}
