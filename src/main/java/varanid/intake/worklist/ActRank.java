package varanid.intake.worklist;

import java.util.Optional;

/** Whom to see to first: the first part of the order of <em>act now</em>. */
enum ActRank {
    STAT,
    ASAP,
    URGENT,
    /** Routine, but worse than at the look before. */
    WORSE,
    REST;

    /** An animal that nobody has looked at counts as urgent, as if a must-see finding had not been seen. */
    static ActRank of(Optional<Urgency> urgency, boolean worse) {
        return switch (urgency.orElse(Urgency.URGENT)) {
            case STAT -> STAT;
            case ASAP -> ASAP;
            case URGENT -> URGENT;
            case ROUTINE -> worse ? WORSE : REST;
        };
    }

    int number() {
        return ordinal();
    }
}
