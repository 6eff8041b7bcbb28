package varanid.intake.quarantine;

import varanid.intake.animal.Animals;
import varanid.intake.animal.AssessedOrigin;
import varanid.intake.animal.Evidence;

/** Which origin steers a newcomer's quarantine: the riskier of what was declared and what the evidence says. */
final class Origins {

    private static final String SEIZED = "I";

    private Origins() {}

    static Origin of(Animals.Newcomer animal) {
        if (isSeized(animal)) {
            return Origin.SEIZED;
        }
        if (animal.assessedOrigin() == AssessedOrigin.WILD_LIKELY) {
            return Origin.WILD;
        }
        return switch (animal.steeringOrigin()) {
            // X, from the open sea, is an odd thing to say of a lizard, and means wild.
            case "W", "X" -> Origin.WILD;
            case "R" -> Origin.RANCHED;
            case "F" -> Origin.FARMED;
            case "C", "D" -> isOfOneKnownSource(animal) ? Origin.CAPTIVE_SINGLE_SOURCE : Origin.CAPTIVE;
            default -> Origin.UNKNOWN;
        };
    }

    static boolean isSeized(Animals.Newcomer animal) {
        return animal.declaredOrigin().filter(SEIZED::equals).isPresent();
    }

    private static boolean isOfOneKnownSource(Animals.Newcomer animal) {
        return says(animal, "parents-known") && says(animal, "breeder-reachable");
    }

    private static boolean says(Animals.Newcomer animal, String question) {
        return animal.evidence().get(question) == Evidence.YES;
    }
}
