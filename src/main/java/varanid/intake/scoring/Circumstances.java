package varanid.intake.scoring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Everything about a look but its answers, made ready for one checklist: which conditions held, what is known about the
 * animal.
 */
public final class Circumstances {

    final Checklist checklist;
    /** For each attribute, the index of the value it counts as. */
    final int[] attributeValues;

    final boolean[] conditionHolds;
    final boolean anyCondition;
    /** Findings that must be seen, in this look. */
    final int[] mustSee;

    private final Set<String> explainedBefore;

    private Circumstances(
            Checklist checklist, int[] attributeValues, boolean[] conditionHolds, Set<String> explainedBefore) {
        this.checklist = checklist;
        this.attributeValues = attributeValues;
        this.conditionHolds = conditionHolds;
        this.explainedBefore = explainedBefore;
        boolean any = false;
        for (boolean holds : conditionHolds) {
            any |= holds;
        }
        anyCondition = any;
        mustSee = any
                ? Arrays.stream(checklist.findings)
                        .filter(this::isMustSee)
                        .mapToInt(finding -> finding.index)
                        .toArray()
                : checklist.mustSee;
    }

    /**
     * @throws LookRefused when an attribute, a value or a condition is not in the checklist
     */
    public static Circumstances of(
            Checklist checklist, Map<String, String> attributes, Set<String> conditions, Set<String> explainedBefore) {
        List<Fault> faults = new ArrayList<>();
        Circumstances circumstances = read(checklist, attributes, conditions, explainedBefore, faults);
        if (!faults.isEmpty()) {
            throw new LookRefused(faults);
        }
        return circumstances;
    }

    static Circumstances read(
            Checklist checklist,
            Map<String, String> attributes,
            Set<String> conditions,
            Set<String> explainedBefore,
            List<Fault> faults) {
        int[] values = new int[checklist.attributes.length];
        int known = 0;
        for (int a = 0; a < values.length; a++) {
            AttributeRules attribute = checklist.attributes[a];
            String code = attributes.get(attribute.draft.id());
            int value = attribute.ifAbsent;
            if (code != null) {
                known++;
                value = attribute.indexOf(code);
            }
            if (value < 0) {
                faults.add(new Fault(
                        "/" + attribute.draft.id(),
                        code == null ? "is missing" : "has no value '" + code + "'",
                        "one of "
                                + String.join(
                                        ", ",
                                        attribute.draft.values().stream()
                                                .map(ChecklistDraft.Attribute.Value::code)
                                                .toList())));
            } else {
                values[a] = attribute.countsAs(value);
            }
        }
        if (known < attributes.size()) {
            attributes.keySet().stream()
                    .filter(id -> checklist.draft().attributes().stream()
                            .noneMatch(attribute -> attribute.id().equals(id)))
                    .sorted()
                    .forEach(id -> faults.add(new Fault(
                            "/" + id,
                            "is nothing this checklist knows about an animal",
                            "one of "
                                    + String.join(
                                            ", ",
                                            checklist.draft().attributes().stream()
                                                    .map(ChecklistDraft.Attribute::id)
                                                    .toList()))));
        }
        boolean[] holds = new boolean[checklist.draft().conditions().size()];
        int position = 0;
        for (String condition : conditions) {
            int c = checklist.conditionIndexOf(condition);
            if (c < 0) {
                faults.add(new Fault(
                        "/conditions/" + position,
                        "the checklist has no condition '" + condition + "'",
                        "any of "
                                + String.join(
                                        ", ",
                                        checklist.draft().conditions().stream()
                                                .map(ChecklistDraft.Condition::id)
                                                .toList())));
            } else {
                holds[c] = true;
            }
            position++;
        }
        return new Circumstances(checklist, values, holds, explainedBefore);
    }

    boolean isMustSee(FindingRules finding) {
        if (finding.mustSee) {
            return true;
        }
        for (int condition : finding.mustSeeUnderCondition) {
            if (conditionHolds[condition]) {
                return true;
            }
        }
        return false;
    }

    /** Whether a condition makes an answer to this finding no evidence of health. */
    boolean isMasked(FindingRules finding) {
        for (int condition : finding.maskedByCondition) {
            if (conditionHolds[condition]) {
                return true;
            }
        }
        return false;
    }

    /** The ids of the conditions that mask this finding. */
    List<String> masksOf(FindingRules finding) {
        List<String> masks = new ArrayList<>();
        for (int condition : finding.maskedByCondition) {
            if (conditionHolds[condition]) {
                masks.add(checklist.draft().conditions().get(condition).id());
            }
        }
        return masks;
    }

    /** The explanation that excuses this level, if a condition that held offers one and it is not used up. */
    @Nullable
    Excuse findExcuse(FindingRules finding, int level) {
        for (Excuse excuse : finding.excuses) {
            if (excuse.level == level
                    && conditionHolds[excuse.condition]
                    && !explainedBefore.contains(finding.draft.id())) {
                return excuse;
            }
        }
        return null;
    }

    /** A condition that explains a level, and what it asks for in return. */
    record Excuse(int condition, int level, ChecklistDraft.Condition.Explains terms) {}
}
