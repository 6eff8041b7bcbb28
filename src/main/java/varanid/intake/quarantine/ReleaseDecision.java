package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * A named person ends an animal's quarantine.
 *
 * @param by who
 * @param on the local day, that of the review
 * @param review what was known
 * @param overrides for each condition that is unmet or unknown, why it is ended all the same; stays on record
 */
public record ReleaseDecision(UUID by, LocalDate on, ReleaseReview review, Map<ReleaseCondition.Id, String> overrides) {

    /** @throws IllegalArgumentException naming every condition that is open without a reason, or met with one */
    public ReleaseDecision {
        overrides = Map.copyOf(overrides);
        List<String> faults = faults(on, review, overrides);
        if (!faults.isEmpty()) {
            throw new IllegalArgumentException(String.join("; ", faults));
        }
    }

    /** What stands against such a decision; empty where it can be recorded. */
    public static List<String> faults(LocalDate on, ReleaseReview review, Map<ReleaseCondition.Id, String> overrides) {
        List<ReleaseCondition.Id> open =
                review.open().stream().map(ReleaseCondition::id).toList();
        List<String> faults = new ArrayList<>();
        if (!on.equals(review.asOf())) {
            faults.add("the review is of " + review.asOf() + ", not of " + on);
        }
        for (ReleaseCondition.Id id : open) {
            if (overrides.getOrDefault(id, "").isBlank()) {
                faults.add(id.code() + " is not met: say why it is ended all the same");
            }
        }
        for (ReleaseCondition.Id id : ReleaseCondition.Id.values()) {
            if (overrides.containsKey(id) && !open.contains(id)) {
                faults.add(id.code() + " is met, or not asked for: there is nothing to override");
            }
        }
        return faults;
    }
}
