package varanid.intake.assessment;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * A look as it was kept, for features that follow an animal.
 *
 * @param localDate the day of the look in the organisation's zone
 * @param urgency what was recommended then, by its code
 * @param isolation what was recommended then, by its code; nothing where the checklist decides no isolation
 * @param isolationRoutes the ways of spreading that it was recommended for
 * @param settled whether no further answer could have changed it
 * @param signs what was seen to be other than reassuring, excused and masked answers included, in the order asked
 * @param unseenMustSee the questions of findings that had to be seen and were not, in the checklist's words
 * @param plainlyAnswered findings known for certain, conditions considered
 */
public record KeptLook(
        UUID id,
        UUID animalId,
        Instant occurredAt,
        Instant recordedAt,
        LocalDate localDate,
        String urgency,
        Optional<String> isolation,
        Set<String> isolationRoutes,
        boolean settled,
        List<Sign> signs,
        List<String> unseenMustSee,
        Set<String> plainlyAnswered) {

    public KeptLook {
        isolationRoutes = Set.copyOf(isolationRoutes);
        signs = List.copyOf(signs);
        unseenMustSee = List.copyOf(unseenMustSee);
        plainlyAnswered = Set.copyOf(plainlyAnswered);
    }

    /**
     * Whether a finding is known for certain from this look: seen, or implied by what was seen, and neither hidden nor
     * explained by a condition. What is not yet due is not answered.
     */
    public boolean answered(String finding) {
        return plainlyAnswered.contains(finding);
    }

    /** The level at which a sign was seen, by its code. */
    public Optional<Sign> findSign(String finding) {
        return signs.stream().filter(sign -> sign.finding().equals(finding)).findFirst();
    }

    /**
     * One thing that was seen to be other than reassuring.
     *
     * @param level of a number that may be several levels the mildest
     * @param label the checklist's words for the level
     * @param points what the level adds
     * @param floor the least urgency that the level allows
     * @param strictRoutes the ways of spreading for which the level asks to be kept strictly apart
     */
    public record Sign(
            String finding,
            String level,
            String label,
            BigDecimal points,
            Optional<String> floor,
            Set<String> strictRoutes) {

        public Sign {
            strictRoutes = Set.copyOf(strictRoutes);
        }

        /** It in one line, with what it is about. */
        public String told() {
            return SignWords.tell(finding, label);
        }

        /** Whether it changes anything. What only describes an animal (it hisses, it flees) does not. */
        public boolean counts() {
            return points.signum() != 0 || floor.isPresent() || !strictRoutes.isEmpty();
        }
    }
}
