package varanid.intake.scoring;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** Why a number cannot be an answer to a measured finding. */
final class MeasureFaults {

    private MeasureFaults() {}

    static List<Fault> of(FindingRules finding, Answer.Measured answer) {
        ChecklistDraft.Measure measure = Objects.requireNonNull(finding.draft.measure());
        List<Fault> faults = new ArrayList<>();
        String pointer = Reading.pointer(finding.draft.id());
        for (BigDecimal value :
                answer.low().equals(answer.high()) ? List.of(answer.low()) : List.of(answer.low(), answer.high())) {
            if (value.compareTo(measure.min()) < 0 || value.compareTo(measure.max()) > 0) {
                faults.add(outside(pointer, value, measure.unit(), measure.min(), measure.max()));
            }
        }
        BigDecimal companion = answer.companion();
        ChecklistDraft.Companion asked = measure.companion();
        if (companion != null && asked == null) {
            faults.add(new Fault(pointer, "has a second number that this finding does not ask for", "one number"));
        } else if (companion != null
                && asked != null
                && (companion.compareTo(asked.min()) < 0 || companion.compareTo(asked.max()) > 0)) {
            faults.add(outside(pointer + "/" + asked.id(), companion, asked.unit(), asked.min(), asked.max()));
        }
        return faults;
    }

    private static Fault outside(String pointer, BigDecimal value, String unit, BigDecimal min, BigDecimal max) {
        return new Fault(
                pointer,
                value.toPlainString() + " is out of range",
                "a number from " + min.toPlainString() + " to " + max.toPlainString() + " in " + unit);
    }
}
