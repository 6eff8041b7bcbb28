package varanid.intake.quarantine;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * The clock of one space: one for everybody in it, all in and all out, and the last arrival sets the date.
 *
 * <p>Events of one day are taken in one order whatever order they are given in: arrivals, occurrences, a vet's words,
 * ends of treatment, lengthenings, a vet's decisions, departures. Where it cannot be known who met whom on a day, it is
 * taken that they met.
 *
 * <p>When the last animal has left, the clock is done; the next arrival starts a new one, and what was open before is
 * open no more. (The space is cleaned between; that is the plan's business.)
 */
public final class QuarantineClock {

    private final QuarantinePolicy policy;
    private final List<ClockEvent> events;

    /**
     * @param events of one space; those of one kind on one day in the order they were recorded
     * @throws IllegalArgumentException naming every event that makes no sense
     */
    public QuarantineClock(QuarantinePolicy policy, List<ClockEvent> events) {
        this.policy = policy;
        this.events = events.stream()
                .sorted(Comparator.comparing(ClockEvent::on).thenComparing(QuarantineClock::rank))
                .toList();
        List<String> faults = faults();
        if (!faults.isEmpty()) {
            throw new IllegalArgumentException(String.join("; ", faults));
        }
    }

    /** What the clock shows on that day. */
    public ClockReading read(LocalDate asOf) {
        List<ClockEvent> known =
                events.stream().filter(event -> !event.on().isAfter(asOf)).toList();
        ClockRun run = new ClockRun(policy, lastRulings(known));
        List<ClockReading.Step> history = new ArrayList<>();
        for (ClockEvent event : known) {
            ClockRun.Deed deed = run.take(event);
            history.add(new ClockReading.Step(
                    event, deed.did(), deed.because(), run.standing(event.on()).earliest()));
        }
        return run.read(asOf, history);
    }

    /**
     * What placing an animal would do to everybody there, read on the day it would be placed, or on that of the last
     * event where that is later.
     */
    public Placement ifPlaced(ClockEvent.Placed newcomer) {
        LocalDate asOf = Stream.concat(events.stream(), Stream.of(newcomer))
                .map(ClockEvent::on)
                .max(Comparator.naturalOrder())
                .orElseThrow();
        return ifHappened(List.of(newcomer), newcomer.animal(), asOf);
    }

    /**
     * What several events on account of one animal would do to the others, such as being placed with signs of illness.
     *
     * @param happened what would happen
     * @param newcomer the animal that is not counted among the delayed
     * @param asOf the day both clocks are read on
     * @throws IllegalArgumentException naming every event that makes no sense
     */
    public Placement ifHappened(List<ClockEvent> happened, UUID newcomer, LocalDate asOf) {
        List<ClockEvent> more = new ArrayList<>(events);
        more.addAll(happened);
        ClockReading before = read(asOf);
        ClockReading after = new QuarantineClock(policy, more).read(asOf);
        List<Placement.Delay> delayed = new ArrayList<>();
        before.standing()
                .earliest()
                .ifPresent(from -> after.standing()
                        .earliest()
                        .filter(until -> until.isAfter(from))
                        .ifPresent(until -> before.animals().stream()
                                .filter(animal -> !animal.equals(newcomer))
                                .sorted()
                                .map(animal ->
                                        new Placement.Delay(animal, from, until, ChronoUnit.DAYS.between(from, until)))
                                .forEach(delayed::add)));
        return new Placement(before, after, delayed);
    }

    private static Map<UUID, ClockEvent.Ruling> lastRulings(List<ClockEvent> known) {
        Map<UUID, ClockEvent.Ruling> rulings = new HashMap<>();
        for (ClockEvent event : known) {
            if (event instanceof ClockEvent.VetSpoke word && word.confirmed()) {
                rulings.put(word.about(), word.ruling());
            }
        }
        return rulings;
    }

    private List<String> faults() {
        List<String> faults = new ArrayList<>();
        Set<UUID> ids = new HashSet<>();
        Map<UUID, LocalDate> occurred = new HashMap<>();
        for (ClockEvent event : events) {
            if (!ids.add(event.id())) {
                faults.add("the event " + event.id() + " is there twice");
            }
            if (event instanceof ClockEvent.Occurred what) {
                occurred.put(what.id(), what.on());
                if (policy.findCause(what.cause()).isEmpty()) {
                    faults.add("the policy knows no cause \"" + what.cause() + "\" (event " + what.id() + ")");
                } else if (what.cause().equals(QuarantinePolicy.NEW_ANIMAL)) {
                    faults.add("a new animal is placed; it does not occur (event " + what.id() + ")");
                }
            }
            about(event).ifPresent(about -> {
                LocalDate when = occurred.get(about);
                if (when == null) {
                    faults.add("the event " + event.id() + " speaks of " + about
                            + ", which did not occur here on its day or before");
                }
            });
        }
        return faults;
    }

    private static Optional<UUID> about(ClockEvent event) {
        if (event instanceof ClockEvent.VetSpoke word) {
            return Optional.of(word.about());
        }
        return event instanceof ClockEvent.TreatmentEnded end ? Optional.of(end.about()) : Optional.empty();
    }

    private static int rank(ClockEvent event) {
        List<Class<? extends ClockEvent>> order = List.of(
                ClockEvent.Placed.class,
                ClockEvent.Occurred.class,
                ClockEvent.VetSpoke.class,
                ClockEvent.TreatmentEnded.class,
                ClockEvent.Lengthened.class,
                ClockEvent.VetDecided.class,
                ClockEvent.Left.class);
        return order.indexOf(event.getClass());
    }
}
