package varanid.intake.sample;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What an organisation assumes of its own; what it leaves out stays as shipped. Kept as JSON.
 *
 * @param priors by group of agents and origin
 * @param methods by method
 * @param correlation of repeated tests, 0 to 1
 * @param targetFreedom between 0 and 1
 * @param introductionPerRound from 0 to less than 1
 */
record OwnFigures(
        List<OwnPrior> priors,
        List<OwnMethod> methods,
        @Nullable Double correlation,
        @Nullable Double targetFreedom,
        @Nullable Double introductionPerRound) {

    static final OwnFigures NONE = new OwnFigures(List.of(), List.of(), null, null, null);

    OwnFigures {
        priors = List.copyOf(priors);
        methods = List.copyOf(methods);
    }

    /** The probability, between 0 and 1, that an animal of that origin is infected before any test. */
    record OwnPrior(String agent, String origin, double infected) {}

    /** How good a method is; its sensitivity and specificity add up to more than 1. */
    record OwnMethod(String method, double sensitivity, double specificity) {}
}
