package varanid.intake.quarantine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The rules of quarantine: the shape of {@code shared/reference/quarantine-policy.yaml}.
 *
 * @param id its code
 * @param version counted from 1
 * @param asOf when it was last gone through, as year-month-day
 * @param warning belongs beside every plan
 * @param published what others ask for; no minimum here may be below the least of them
 * @param minimumDays one row for each origin
 * @param strictMinimum for animals whose isolation is strict
 * @param contagionMinimum for animals that have, or are exposed to, something contagious
 * @param causes what acts on a clock
 * @param vetsCauses those that only a vet records
 * @param signs which cause a sign of a look is
 * @param agents which cause an agent found in a sample is
 * @param deaths what a death is
 * @param schedules what is done on which day
 * @param lookAgain when it is looked at again whatever the schedule says
 * @param vetVisit a visit that a vet's answer names a day for
 * @param faecal when stool is sampled
 * @param progress when a task counts as done, and how a plan goes on
 * @param lastWeighing how fresh the last weighing is at release
 * @param miteFree how long no mites are seen before release
 * @param lastLook how fresh the last look is at release
 * @param workOrder the order of the rounds
 * @param workPlaces where an animal belongs in that order
 * @param tools what is kept apart
 * @param hygiene what is done every day
 * @param disinfectants with their dilutions
 * @param cautions what is never done; shown wherever disinfectants are
 * @param says what is said where there is no plan, or where something must not be overlooked
 */
public record QuarantinePolicy(
        String id,
        int version,
        String asOf,
        String warning,
        List<Published> published,
        List<OriginMinimum> minimumDays,
        Minimum strictMinimum,
        Minimum contagionMinimum,
        List<Cause> causes,
        List<String> vetsCauses,
        Signs signs,
        Agents agents,
        Deaths deaths,
        List<Schedule> schedules,
        LookAgain lookAgain,
        VetVisit vetVisit,
        Faecal faecal,
        Progress progress,
        LastLook lastWeighing,
        MiteFree miteFree,
        LastLook lastLook,
        WorkOrder workOrder,
        WorkPlaces workPlaces,
        List<Tool> tools,
        List<Advice> hygiene,
        List<Disinfectant> disinfectants,
        List<Advice> cautions,
        Says says) {

    /** The cause that placing an animal is. */
    public static final String NEW_ANIMAL = "new-animal";

    /** @throws IllegalArgumentException naming every fault of the policy */
    public QuarantinePolicy {
        published = List.copyOf(published);
        minimumDays = List.copyOf(minimumDays);
        causes = List.copyOf(causes);
        vetsCauses = List.copyOf(vetsCauses);
        schedules = List.copyOf(schedules);
        tools = List.copyOf(tools);
        hygiene = List.copyOf(hygiene);
        disinfectants = List.copyOf(disinfectants);
        cautions = List.copyOf(cautions);

        List<String> faults = new ArrayList<>();
        int least = published.stream().mapToInt(Published::days).min().orElse(0);
        for (Origin origin : Origin.values()) {
            long rows =
                    minimumDays.stream().filter(row -> row.origin() == origin).count();
            if (rows != 1) {
                faults.add("minimumDays has " + rows + " rows for " + origin + " instead of one");
            }
        }
        List<Integer> days =
                new ArrayList<>(minimumDays.stream().map(OriginMinimum::days).toList());
        days.add(strictMinimum.days());
        days.add(contagionMinimum.days());
        for (int each : days) {
            if (each < least) {
                faults.add("a minimum of " + each + " days is below the least published one of " + least);
            }
        }
        Set<String> ids = new HashSet<>();
        for (Cause cause : causes) {
            if (!ids.add(cause.id())) {
                faults.add("the cause " + cause.id() + " is there twice");
            }
        }
        if (causes.stream()
                .noneMatch(cause -> cause.id().equals(NEW_ANIMAL)
                        && cause.effect() == Effect.RESTART
                        && cause.countsFrom() == CountsFrom.EVENT)) {
            faults.add("the cause " + NEW_ANIMAL + " must be there and restart from its event");
        }
        for (String named : causesNamed(vetsCauses, signs, agents, deaths)) {
            if (!ids.contains(named)) {
                faults.add("there is no cause " + named);
            }
        }
        for (TaskKind kind : List.of(TaskKind.FAECAL_SAMPLE, TaskKind.RELEASE_REVIEW, TaskKind.VET_VISIT)) {
            if (schedules.stream().anyMatch(schedule -> schedule.kind() == kind)) {
                faults.add(kind + " has rules of its own and no schedule");
            }
        }
        if (!workOrder.places().stream().map(Place::place).toList().equals(Arrays.asList(WorkPlace.values()))) {
            faults.add("workOrder names every place once, in the order " + Arrays.toString(WorkPlace.values()));
        }
        if (cautions.isEmpty()) {
            faults.add("disinfectants without cautions");
        }
        if (!faults.isEmpty()) {
            throw new IllegalArgumentException(String.join("; ", faults));
        }
    }

    /**
     * How long such an animal is kept apart at least. More origin, isolation or contagion never makes it shorter.
     *
     * @param contagion how that which it has or was exposed to travels; empty where nothing is suspected
     */
    public MinimumStay minimumStay(Origin origin, Isolation isolation, Set<Route> contagion) {
        List<Minimum> asked = new ArrayList<>();
        asked.add(minimumDays.stream()
                .filter(row -> row.origin() == origin)
                .map(row -> new Minimum(row.days(), row.vetRelease(), row.source(), row.reason()))
                .findFirst()
                .orElseThrow());
        if (isolation == Isolation.STRICT) {
            asked.add(strictMinimum);
        }
        if (!contagion.isEmpty()) {
            asked.add(contagionMinimum);
        }
        int days = asked.stream().mapToInt(Minimum::days).max().orElseThrow();
        return new MinimumStay(
                days,
                days,
                asked.stream().anyMatch(Minimum::vetRelease),
                asked.stream()
                        .sorted(Comparator.comparingInt(Minimum::days).reversed())
                        .map(Minimum::asReason)
                        .toList());
    }

    public Optional<Cause> findCause(String cause) {
        return causes.stream().filter(each -> each.id().equals(cause)).findFirst();
    }

    /** @throws IllegalArgumentException where the policy knows no such cause */
    public Cause getCause(String cause) {
        return findCause(cause)
                .orElseThrow(() -> new IllegalArgumentException("the policy knows no cause \"" + cause + "\""));
    }

    private static List<String> causesNamed(List<String> vetsCauses, Signs signs, Agents agents, Deaths deaths) {
        List<String> named = new ArrayList<>(vetsCauses);
        signs.findings().forEach(each -> named.add(each.cause()));
        signs.routes().forEach(each -> named.add(each.cause()));
        agents.significant().forEach(each -> named.add(each.cause()));
        named.add(agents.unknown());
        named.add(deaths.explained());
        named.add(deaths.unexplained());
        return named;
    }

    /** The cause that an agent found in a sample is. */
    public Cause causeOfAgent(String agent, boolean significant) {
        return agents.significant().stream()
                .filter(each -> significant && each.agent().equals(agent))
                .map(AgentCause::cause)
                .findFirst()
                .or(() -> findCause(agent)
                        .filter(cause -> cause.kind() == Kind.AGENT)
                        .map(Cause::id))
                .map(this::getCause)
                .orElseGet(() -> getCause(agents.unknown()));
    }

    /** The cause that a sign is; nothing where it calls for no strict isolation by air or contact. */
    public Optional<Cause> findCauseOfSign(String finding, Set<Route> strictRoutes) {
        if (strictRoutes.isEmpty()) {
            return Optional.empty();
        }
        return signs.findings().stream()
                .filter(each -> each.finding().equals(finding))
                .map(FindingCause::cause)
                .findFirst()
                .or(() -> signs.routes().stream()
                        .filter(each -> strictRoutes.contains(each.route()))
                        .map(RouteCause::cause)
                        .findFirst())
                .map(this::getCause);
    }

    /** Which cause a sign is: by finding, else by the first route that fits. */
    public record Signs(String source, List<FindingCause> findings, List<RouteCause> routes) {
        public Signs {
            findings = List.copyOf(findings);
            routes = List.copyOf(routes);
        }
    }

    /** The cause of one finding. */
    public record FindingCause(String finding, String cause) {}

    /** The cause of other findings by how they travel. */
    public record RouteCause(Route route, String cause) {}

    /** Which cause an agent is where not the one of its own name. */
    public record Agents(List<AgentCause> significant, String unknown) {
        public Agents {
            significant = List.copyOf(significant);
        }
    }

    /** The cause of one agent where a vet or laboratory calls it significant. */
    public record AgentCause(String agent, String cause) {}

    /** Which causes deaths are, and what they are for a group. */
    public record Deaths(String explained, String unexplained, CohortDeath cohort) {}

    /**
     * What a death is for the animals that came together.
     *
     * @param asapFromDeaths from so many deaths on a vet is called within 24 hours
     * @param asapFromUnexplained the same for deaths nobody can explain
     */
    public record CohortDeath(
            int asapFromDeaths, int asapFromUnexplained, String text, String asapText, String source) {}

    /** Where an animal belongs in the order of the rounds. */
    public record WorkPlaces(
            String source,
            List<String> sickByUrgency,
            List<String> suspectByUrgency,
            List<Route> suspectByRoute,
            boolean suspectWhereNobodyLooked,
            boolean suspectWhereTheRoomWaits) {
        public WorkPlaces {
            sickByUrgency = List.copyOf(sickByUrgency);
            suspectByUrgency = List.copyOf(suspectByUrgency);
            suspectByRoute = List.copyOf(suspectByRoute);
        }

        /**
         * The place of a newcomer.
         *
         * @param urgency of its last look; empty where nobody has looked
         * @param routes for which it is strictly isolated
         * @param roomWaits whether its room waits for a vet or the end of a treatment
         */
        public WorkPlace of(Optional<String> urgency, Set<Route> routes, boolean roomWaits) {
            if (urgency.filter(sickByUrgency::contains).isPresent()) {
                return WorkPlace.SICK;
            }
            boolean suspect = urgency.filter(suspectByUrgency::contains).isPresent()
                    || routes.stream().anyMatch(suspectByRoute::contains)
                    || (suspectWhereNobodyLooked && urgency.isEmpty())
                    || (suspectWhereTheRoomWaits && roomWaits);
            return suspect ? WorkPlace.SUSPECT : WorkPlace.NEWCOMERS_WITHOUT_SIGNS;
        }
    }

    /** Texts that are said at certain points. */
    public record Says(
            String notPlaced,
            String resident,
            String residentWithoutRoom,
            String gone,
            String residentsRoom,
            String heldByAuthority,
            String approvalOverridden,
            String vetObjects,
            String conditionsOverridden,
            String carriedAlong,
            String someWait,
            String askVet,
            String tellEndOfTreatment) {}

    /** What others ask for. */
    public record Published(int days, String source, String says) {}

    /** The minimum of one origin. */
    public record OriginMinimum(Origin origin, int days, boolean vetRelease, String source, String reason) {}

    /** A minimum for some other reason. */
    public record Minimum(int days, boolean vetRelease, String source, String reason) {
        MinimumStay.Reason asReason() {
            return new MinimumStay.Reason(days, reason, source);
        }
    }

    /** What something does to a clock. */
    public enum Effect {
        RESTART,
        PAUSE,
        VETS_WORD,
        NONE;

        @Override
        public String toString() {
            return code(this);
        }
    }

    /** From when a restart counts. */
    public enum CountsFrom {
        EVENT,
        TREATMENT_END;

        @Override
        public String toString() {
            return code(this);
        }
    }

    /** What sort of cause. */
    public enum Kind {
        EVENT,
        SIGN,
        AGENT;

        @Override
        public String toString() {
            return code(this);
        }
    }

    /**
     * What acts on the clock of everybody in the space.
     *
     * @param id its code
     * @param kind an event, a sign, or the agent that was found
     * @param label in plain words
     * @param effect what it does
     * @param countsFrom from when a restart counts
     * @param contagious whether it raises everybody's minimum to that for contagion
     * @param clearDays so many days without it before release, from where the restart counts; 0 for none
     * @param source who says so
     * @param reason why
     */
    public record Cause(
            String id,
            Kind kind,
            String label,
            Effect effect,
            CountsFrom countsFrom,
            boolean contagious,
            int clearDays,
            String source,
            String reason) {

        /** Whether everybody waits for the end of a treatment. */
        public boolean waitsForTreatment() {
            return effect == Effect.RESTART && countsFrom == CountsFrom.TREATMENT_END;
        }
    }

    /**
     * What is done on which days.
     *
     * @param days counted from the clock's start
     * @param thenEvery after the last of those, or from the start where there are none; more than zero
     * @param windowDays how many days later is still good
     */
    public record Schedule(
            TaskKind kind,
            List<Stage> stages,
            List<Isolation> isolation,
            List<Integer> days,
            int thenEvery,
            int windowDays,
            String title,
            String instruction,
            String source) {
        public Schedule {
            stages = List.copyOf(stages);
            isolation = List.copyOf(isolation);
            days = List.copyOf(days);
            if (thenEvery < 1 || windowDays < 0 || days.stream().anyMatch(day -> day < 0)) {
                throw new IllegalArgumentException("a schedule that goes nowhere: " + kind);
            }
        }
    }

    /**
     * When an animal is looked at again, whatever the schedule says.
     *
     * @param afterUrgency after a look with one of these urgencies
     * @param afterRoutes after a look that calls for strict isolation by one of these
     * @param whereTheDaysWait also where days begin to wait on account of the animal for another reason
     * @param afterDays so many days later
     * @param windowDays how many days later still is good
     */
    public record LookAgain(
            List<String> afterUrgency,
            List<Route> afterRoutes,
            boolean whereTheDaysWait,
            int afterDays,
            int windowDays,
            String title,
            String instruction,
            String source) {
        public LookAgain {
            afterUrgency = List.copyOf(afterUrgency);
            afterRoutes = List.copyOf(afterRoutes);
            if (afterDays < 1 || windowDays < 0) {
                throw new IllegalArgumentException("looked at again on no day after it");
            }
        }
    }

    /** How a visit is told of; {@code windowDays} after its day still are good. */
    public record VetVisit(int windowDays, String title, String instruction, String source) {
        public VetVisit {
            if (windowDays < 0) {
                throw new IllegalArgumentException("a visit that ends before its day");
            }
        }
    }

    /** When stool is sampled, and how many negatives release asks for. */
    public record Faecal(
            List<DayWindow> samples,
            int latestDaysBeforeRelease,
            int thenEvery,
            int windowDays,
            int freshHours,
            int lastNegatives,
            int apartDays,
            String title,
            String instruction,
            String source) {
        public Faecal {
            samples = List.copyOf(samples);
            if (samples.isEmpty() || thenEvery < 1 || lastNegatives < 1) {
                throw new IllegalArgumentException("no plan of stool samples");
            }
        }
    }

    /** Days from the clock's start, both included. */
    public record DayWindow(int fromDay, int toDay) {
        public DayWindow {
            if (fromDay < 0 || toDay < fromDay) {
                throw new IllegalArgumentException("no window: day " + fromDay + " to " + toDay);
            }
        }
    }

    /** How long no mites are seen, and how lately somebody looked. */
    public record MiteFree(int days, int lookedWithinDays, String source) {}

    /**
     * When a task counts as done, and how a plan goes on.
     *
     * @param earlyDays a record so many days before a task's first day still is that task
     * @param aheadDays so far a plan goes on where its earliest release has passed
     */
    public record Progress(int earlyDays, int aheadDays, String source) {}

    /** How fresh the last look, or weighing, is. */
    public record LastLook(int withinDays, String source) {}

    /** The order of the rounds. */
    public record WorkOrder(String source, List<Place> places) {
        public WorkOrder {
            places = List.copyOf(places);
        }
    }

    /** One place in it. */
    public record Place(WorkPlace place, String text) {}

    /** What is kept apart at which isolation. */
    public record Tool(List<Isolation> isolation, String text, String source) {
        public Tool {
            isolation = List.copyOf(isolation);
        }
    }

    /** What is done, or never done. */
    public record Advice(String text, String source) {}

    /** Whether something works on the oocysts of Cryptosporidium. */
    public enum OnOocysts {
        WORKS,
        WEAK,
        DOES_NOT_WORK;

        @Override
        public String toString() {
            return code(this);
        }
    }

    /**
     * What surfaces are disinfected with, after cleaning.
     *
     * @param stockPercent of a solution that is mixed; none where nothing is
     * @param minutes how long it stays wet; none where the label says
     */
    public record Disinfectant(
            String id,
            String name,
            @Nullable Double stockPercent,
            @Nullable Integer partsStock,
            @Nullable Integer partsWater,
            @Nullable Integer minutes,
            String use,
            OnOocysts oocysts,
            String source) {

        /** How it is mixed, where it is. */
        public Optional<Dilution> dilution() {
            return stockPercent == null || partsStock == null || partsWater == null
                    ? Optional.empty()
                    : Optional.of(new Dilution(stockPercent, partsStock, partsWater));
        }
    }

    private static String code(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
