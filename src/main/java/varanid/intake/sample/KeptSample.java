package varanid.intake.sample;

import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * A sample as other features see it; corrections are worked in.
 *
 * @param id of its latest correction
 * @param kind its code, such as {@code stool}
 * @param takenOn in the organisation's zone
 * @param freshHours whole hours between passing and taking; less than three hours is 0, 1 or 2
 * @param outcome what its standing results come to
 * @param agents what they found
 */
public record KeptSample(
        UUID id,
        String kind,
        LocalDate takenOn,
        Optional<Integer> freshHours,
        KeptSample.Outcome outcome,
        Set<String> agents) {

    public KeptSample {
        agents = Set.copyOf(agents);
    }

    /** What a sample comes to for others. */
    public enum Outcome {
        NEGATIVE,
        POSITIVE,
        /** No result stands yet, only one that could not tell, or one of several that were asked for. */
        PENDING,
        UNUSABLE
    }
}
