package varanid.intake.assessment;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * The last look at an animal, and what is different from the one before it.
 *
 * @param id of the assessment
 * @param occurredAt when the animal was looked at
 * @param urgency what was recommended, by its code
 * @param headline the same in words, as the look said it
 * @param before the look before it by the same checklist that nothing superseded
 * @param newOrWorse what was reassuring or milder in the look before, or unknown then; nothing where there is none
 * @param urgentBecause what carries the urgency, the weightiest first: levels, combinations, totals
 */
public record LastLook(
        UUID id,
        Instant occurredAt,
        String urgency,
        String headline,
        Optional<UUID> before,
        List<Named> newOrWorse,
        List<Named> urgentBecause) {

    public LastLook {
        newOrWorse = List.copyOf(newOrWorse);
        urgentBecause = List.copyOf(urgentBecause);
    }

    /**
     * A finding, combination or total.
     *
     * @param label it in words, of a finding with what was seen
     * @param sum whether several signs added up to it, which its words do not say
     */
    public record Named(String code, String label, boolean sum) {}
}
