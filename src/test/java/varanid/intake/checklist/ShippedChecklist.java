package varanid.intake.checklist;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import tools.jackson.databind.JsonNode;
import varanid.intake.scoring.Answer;
import varanid.intake.scoring.ChecklistDraft;
import varanid.intake.scoring.Scorer;

/** The monitor checklist as it is shipped, and answers to it as test files write them. */
public final class ShippedChecklist {

    public static final Scorer SCORER =
            new Catalogue().find("varanid-intake", 1).orElseThrow().scorer();

    private ShippedChecklist() {}

    /** The place of an urgency on the scale, 0 for the mildest. */
    public static int rank(String urgency) {
        return SCORER.checklist().draft().outcomes().stream()
                .map(ChecklistDraft.Outcome::code)
                .toList()
                .indexOf(urgency);
    }

    /** Every finding answered with its reassuring level, or with the number for it. */
    public static Map<String, Answer> nothingWrong() {
        Map<String, Answer> answers = new LinkedHashMap<>();
        for (ChecklistDraft.Finding finding : SCORER.checklist().draft().findings()) {
            answers.put(
                    finding.id(),
                    finding.measure() == null
                            ? Answer.seen(finding.levels().get(0).code())
                            : new Answer.Measured(
                                    BigDecimal.ZERO,
                                    BigDecimal.ZERO,
                                    finding.measure().companion() == null ? null : BigDecimal.TEN));
        }
        return answers;
    }

    static Map<String, Answer> read(JsonNode answers) {
        Map<String, Answer> read = new LinkedHashMap<>();
        answers.properties().forEach(entry -> read.put(entry.getKey(), answer(entry.getValue())));
        return read;
    }

    private static Answer answer(JsonNode node) {
        if (node.isNumber()) {
            return Answer.Measured.exactly(node.decimalValue());
        }
        if (node.isObject()) {
            BigDecimal value = node.get("value").decimalValue();
            return new Answer.Measured(value, value, node.get("overDays").decimalValue());
        }
        return node.stringValue().equals("not-observed") ? Answer.notObserved() : Answer.seen(node.stringValue());
    }
}
