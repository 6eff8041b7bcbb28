package varanid.intake.infection;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What is assumed where an organisation assumes nothing of its own: the shape of
 * {@code shared/reference/sampling.yaml}.
 *
 * @param asOf when the figures were last gone through, as year-month-day
 * @param warning how weak they are; belongs beside every figure made from them
 * @param correlation of repeated tests of one animal, for the correlated reading
 * @param targetFreedom the probability of freedom that is asked for
 * @param introductionPerRound the risk that infection is brought in between two rounds
 * @param priors the probability of infection, by agent and origin
 * @param methods what tests can do
 */
public record SamplingDefaults(
        String asOf,
        String warning,
        Figure correlation,
        Figure targetFreedom,
        Figure introductionPerRound,
        List<Prior> priors,
        List<Method> methods) {

    /** @throws IllegalArgumentException naming every fault of the data */
    public SamplingDefaults {
        priors = List.copyOf(priors);
        methods = List.copyOf(methods);
        List<String> faults = new ArrayList<>();
        Set<List<String>> seen = new HashSet<>();
        for (Prior prior : priors) {
            for (String origin : prior.origins()) {
                if (!seen.add(List.of(prior.agent(), origin))) {
                    faults.add("two priors of " + prior.agent() + " for " + origin);
                }
            }
        }
        Set<String> ids = new HashSet<>();
        for (Method method : methods) {
            if (!ids.add(method.id())) {
                faults.add("the method " + method.id() + " is there twice");
            }
            for (String agent : method.agents()) {
                if (priors.stream().noneMatch(prior -> prior.agent().equals(agent))) {
                    faults.add("the method " + method.id() + " looks for " + agent + ", which has no prior");
                }
            }
        }
        if (!faults.isEmpty()) {
            throw new IllegalArgumentException(String.join("; ", faults));
        }
    }

    /** What is assumed of animals of that origin before any test. */
    public Optional<Prior> findPrior(String agent, String origin) {
        return priors.stream()
                .filter(prior -> prior.agent().equals(agent) && prior.origins().contains(origin))
                .findFirst();
    }

    public Optional<Method> findMethod(String id) {
        return methods.stream().filter(method -> method.id().equals(id)).findFirst();
    }

    /**
     * A number and what it rests on.
     *
     * @param value 0 to 1
     * @param source who says so; {@code X} for a proposal of our own
     */
    public record Figure(double value, String source) {
        public Figure {
            Numbers.fraction("a figure", value);
        }
    }

    /**
     * The probability that an animal is infected before any test.
     *
     * @param agent what with
     * @param origins where it comes from, as quarantine policy names origins
     * @param infected 0 to 1
     * @param source where the number is from
     * @param weakness why it may not fit the animal at hand
     */
    public record Prior(String agent, List<String> origins, double infected, String source, String weakness) {
        public Prior {
            origins = List.copyOf(origins);
            Numbers.fraction("the prior of " + agent, infected);
        }
    }

    /**
     * What a test can do.
     *
     * @param id its code
     * @param name as a laboratory calls it
     * @param agents what it can find
     * @param sensitivity of one sample, 0 to 1
     * @param specificity of one sample, 0 to 1
     * @param source where the numbers are from
     * @param weakness why they may not hold
     */
    public record Method(
            String id,
            String name,
            List<String> agents,
            double sensitivity,
            double specificity,
            String source,
            String weakness) {

        public Method {
            agents = List.copyOf(agents);
            new TestQuality(sensitivity, specificity);
        }

        public TestQuality quality() {
            return new TestQuality(sensitivity, specificity);
        }
    }
}
