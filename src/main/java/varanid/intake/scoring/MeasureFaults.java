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
        BigDecimal companion = answer.companion();
        ChecklistDraft.Companion asked = measure.companion();
        boolean valuesFit = isWithin(answer.low(), measure.min(), measure.max())
                && isWithin(answer.high(), measure.min(), measure.max());
        boolean companionFits = companion == null || asked != null && isWithin(companion, asked.min(), asked.max());
        if (valuesFit && companionFits) {
            return List.of();
        }
        List<Fault> faults = new ArrayList<>();
        String pointer = Reading.pointer(finding.id);
        for (BigDecimal value :
                answer.low().equals(answer.high()) ? List.of(answer.low()) : List.of(answer.low(), answer.high())) {
            if (!isWithin(value, measure.min(), measure.max())) {
                faults.add(outside(pointer, value, measure.unit(), measure.min(), measure.max()));
            }
        }
        if (companion != null && asked == null) {
            faults.add(new Fault(pointer, "has a second number that this finding does not ask for", "one number"));
        } else if (!companionFits && companion != null && asked != null) {
            faults.add(outside(pointer + "/" + asked.id(), companion, asked.unit(), asked.min(), asked.max()));
        }
        return faults;
    }

    private static boolean isWithin(BigDecimal value, BigDecimal min, BigDecimal max) {
        return value.compareTo(min) >= 0 && value.compareTo(max) <= 0;
    }

    private static Fault outside(String pointer, BigDecimal value, String unit, BigDecimal min, BigDecimal max) {
        return new Fault(
                pointer,
                value.toPlainString() + " is out of range",
                "a number from " + min.toPlainString() + " to " + max.toPlainString() + " in " + unit);
    }
}
