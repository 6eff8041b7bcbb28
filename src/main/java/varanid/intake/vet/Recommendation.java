package varanid.intake.vet;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * How soon a vet and how strictly apart, as it holds on a day, and who says so.
 *
 * @param computed what this service works out from the last look, whatever a vet said; nothing where nobody has looked
 * @param standing the confirmed answer that was given last
 * @param unconfirmed the answers given after that one whose writer nobody confirmed, the earliest first: they only raise
 * @param urgency a request-priority code; nothing where nobody has looked and no vet has said how soon
 * @param headline for people
 * @param by whose word the urgency is
 * @param isolation {@code standard} or {@code strict}
 * @param isolationBy whose word the isolation is
 * @param routes the ways of spreading that strict isolation is for, as far as looks name them; empty where it is
 *     standard
 * @param newSince what looks show that the writer of the standing answer could not have seen, and that cannot wait, the
 *     most urgent first
 * @param alert what heads every page because of that, for people; nothing where nothing is new
 * @param callVet whether a vet has to be called because of that: whether {@code newSince} has anything
 */
public record Recommendation(
        Optional<Computed> computed,
        Optional<VetAnswer> standing,
        List<VetAnswer> unconfirmed,
        Optional<String> urgency,
        String headline,
        By by,
        String isolation,
        By isolationBy,
        Set<String> routes,
        List<NewSince> newSince,
        Optional<String> alert,
        boolean callVet) {

    public Recommendation {
        unconfirmed = List.copyOf(unconfirmed);
        routes = Set.copyOf(routes);
        newSince = List.copyOf(newSince);
        if (callVet == newSince.isEmpty() || callVet == alert.isEmpty()) {
            throw new IllegalArgumentException("a vet is called because of something new, and only then");
        }
    }

    /** Whose word something is. */
    public enum By {
        /** This service worked it out. */
        COMPUTED,
        /** A vet said so; also one whose answer is not confirmed, where it raises something. */
        VET
    }

    /**
     * What this service works out.
     *
     * @param lookId the last look
     * @param at when that look was
     * @param label the urgency, for people
     * @param headline for people, as the look says it
     * @param isolation {@code standard} where the checklist decides none
     */
    public record Computed(
            UUID lookId,
            Instant at,
            String urgency,
            String label,
            String headline,
            String isolation,
            Set<String> routes) {
        public Computed {
            routes = Set.copyOf(routes);
        }
    }

    /**
     * Something new or worse.
     *
     * @param finding its id; {@code whole-look} where no single finding is, but all of them together
     * @param level its code; of a whole look the urgency
     * @param label for people
     * @param floor the least urgency that it allows: {@code asap} or {@code stat}
     * @param lookId the look that showed it first
     * @param at when that look was
     * @param notSeenAt when the last look was, where that one does not show it; it counts all the same until a vet answers
     */
    public record NewSince(
            String finding,
            String level,
            String label,
            String floor,
            UUID lookId,
            Instant at,
            Optional<Instant> notSeenAt) {

        NewSince labelled(String otherLabel) {
            return new NewSince(finding, level, otherLabel, floor, lookId, at, notSeenAt);
        }

        /** In the place of a finding's id where a look as a whole is more urgent. */
        public static final String WHOLE_LOOK = "whole-look";
    }
}
