package varanid.intake.infection;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What is assumed where an organisation assumes nothing of its own: the shape of
 * {@code shared/reference/sampling.yaml}.
 *
 * @param asOf when the figures were last gone through, as year-month-day
 * @param warning how weak they are; belongs beside every figure made from them
 * @param correlation of repeated tests of one animal, for the correlated reading
 * @param targetFreedom the probability of freedom that is asked for
 * @param introductionPerRound the risk that infection is brought in between two rounds
 * @param origins which origin each CITES source code counts as
 * @param groups what a result may name, and what figures are made of
 * @param priors the probability of infection, by agent and origin; agents are groups here
 * @param methods what tests can do
 * @param otherMethods what a result may come from without a figure being made of it
 * @param texts what is said beside the figures
 */
public record SamplingDefaults(
        String asOf,
        String warning,
        Figure correlation,
        Figure targetFreedom,
        Figure introductionPerRound,
        Map<String, String> origins,
        List<Group> groups,
        List<Prior> priors,
        List<Method> methods,
        List<OtherMethod> otherMethods,
        Texts texts) {

    /** @throws IllegalArgumentException naming every fault of the data */
    public SamplingDefaults {
        origins = Map.copyOf(origins);
        groups = List.copyOf(groups);
        priors = List.copyOf(priors);
        methods = List.copyOf(methods);
        otherMethods = List.copyOf(otherMethods);
        List<String> faults = new ArrayList<>();
        Set<List<String>> seen = new HashSet<>();
        for (Prior prior : priors) {
            for (String origin : prior.origins()) {
                if (!seen.add(List.of(prior.agent(), origin))) {
                    faults.add("two priors of " + prior.agent() + " for " + origin);
                }
            }
        }
        Set<String> named = new HashSet<>();
        groups.stream().flatMap(group -> group.members().stream()).forEach(agent -> {
            if (!named.add(agent)) {
                faults.add("the agent " + agent + " is in two groups");
            }
        });
        Set<String> groupIds = groups.stream().map(Group::id).collect(Collectors.toSet());
        priors.stream()
                .map(Prior::agent)
                .filter(agent -> !groupIds.contains(agent))
                .forEach(agent -> faults.add("the prior of " + agent + " is of no group"));
        Set<String> ids = new HashSet<>();
        otherMethods.stream()
                .map(OtherMethod::id)
                .filter(id -> !ids.add(id))
                .forEach(id -> faults.add("the method " + id + " is there twice"));
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

    /** The group that a result's agent belongs to. */
    public Optional<Group> findGroup(String agent) {
        return groups.stream().filter(group -> group.members().contains(agent)).findFirst();
    }

    /** Everything a result may name. */
    public List<String> listAgents() {
        return groups.stream().flatMap(group -> group.members().stream()).toList();
    }

    /** Everything a result may come from. */
    public List<String> listMethods() {
        return Stream.concat(
                        methods.stream().map(Method::id), otherMethods.stream().map(OtherMethod::id))
                .toList();
    }

    /** The origin of an animal with that CITES source code; unknown for what is no code. */
    public String origin(String sourceCode) {
        return origins.getOrDefault(sourceCode, "unknown");
    }

    /**
     * A number and what it rests on.
     *
     * @param value 0 to 1
     * @param source who says so; {@code X} for a proposal of our own
     * @param weakness why it may not hold
     */
    public record Figure(double value, String source, String weakness) {
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
     * @param kinds the samples that its figures are meant for
     * @param agents what it can find
     * @param sensitivity of one sample, 0 to 1
     * @param specificity of one sample, 0 to 1
     * @param source where the numbers are from
     * @param weakness why they may not hold
     */
    public record Method(
            String id,
            String name,
            List<String> kinds,
            List<String> agents,
            double sensitivity,
            double specificity,
            String source,
            String weakness) {

        public Method {
            kinds = List.copyOf(kinds);
            agents = List.copyOf(agents);
            new TestQuality(sensitivity, specificity);
        }

        public TestQuality quality() {
            return new TestQuality(sensitivity, specificity);
        }
    }

    /**
     * Agents that tests find alike, and that have one prior.
     *
     * @param id its code, which priors and methods call their agent
     * @param name for people
     * @param members the agents that a result may name
     */
    public record Group(String id, String name, List<String> members) {
        public Group {
            members = List.copyOf(members);
        }
    }

    /**
     * A method of which nothing is assumed.
     *
     * @param id its code
     * @param name as a laboratory calls it
     */
    public record OtherMethod(String id, String name) {}

    /** What is said to people beside the figures; each is one or two sentences. */
    public record Texts(
            String whatItIs,
            String independent,
            String correlated,
            String falseAlarm,
            String counted,
            String afterPositive,
            String combined,
            String introduction,
            String noFigure,
            String noPrior,
            String setByOrganisation,
            String keeperInstead,
            String groupCaution,
            String chosenAtRandom,
            String specificityOne,
            String roundedUp,
            String notReachable) {}
}
