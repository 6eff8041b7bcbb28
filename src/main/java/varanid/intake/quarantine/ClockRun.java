package varanid.intake.quarantine;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** One run of a clock through its events. */
final class ClockRun {

    private final QuarantinePolicy policy;

    /** What a vet said last about each occurrence, in all that is known. */
    private final Map<UUID, ClockEvent.Ruling> lastRulings;

    private final Map<UUID, Need> needs = new LinkedHashMap<>();
    /** Animals that stood there already when they were placed on the day: each time for one time they left on it. */
    private final List<UUID> cameBack = new ArrayList<>();

    private final List<Gap> gaps = new ArrayList<>();
    private final List<Clearing> clearings = new ArrayList<>();
    private final Map<UUID, ClockEvent.Occurred> questions = new LinkedHashMap<>();
    private final Map<UUID, ClockEvent.Occurred> occurred = new LinkedHashMap<>();
    private final Map<UUID, LocalDate> treatmentEnds = new LinkedHashMap<>();
    private Why.@Nullable Starts start;
    private LocalDate day = LocalDate.MIN;

    ClockRun(QuarantinePolicy policy, Map<UUID, ClockEvent.Ruling> lastRulings) {
        this.policy = policy;
        this.lastRulings = lastRulings;
    }

    /** What an event did, and why. */
    record Deed(ClockReading.Did did, String because) {}

    Deed take(ClockEvent event) {
        if (!event.on().equals(day)) {
            day = event.on();
            cameBack.clear();
        }
        if (event instanceof ClockEvent.Placed placed) {
            return place(placed);
        }
        if (event instanceof ClockEvent.Occurred what) {
            return occur(what);
        }
        if (event instanceof ClockEvent.VetSpoke word) {
            return hear(word);
        }
        if (event instanceof ClockEvent.TreatmentEnded end) {
            return endTreatment(end);
        }
        if (event instanceof ClockEvent.Lengthened longer) {
            return lengthen(longer);
        }
        if (event instanceof ClockEvent.VetDecided decision) {
            return decide(decision);
        }
        return leave((ClockEvent.Left) event);
    }

    private Deed place(ClockEvent.Placed placed) {
        QuarantinePolicy.Cause cause = policy.getCause(QuarantinePolicy.NEW_ANIMAL);
        boolean first = needs.isEmpty();
        Need own = new Need(
                placed.needs().days(),
                placed.needs().vetRelease(),
                placed.id(),
                placed.needs().reasons().stream()
                        .map(MinimumStay.Reason::reason)
                        .findFirst()
                        .orElse("the policy's minimum"));
        if (needs.containsKey(placed.animal())) {
            cameBack.add(placed.animal());
        }
        needs.merge(placed.animal(), own, Need::longer);
        String because = first ? "the first animal was placed" : inWords(cause);
        restart(placed.id(), placed.on(), because);
        return new Deed(first ? ClockReading.Did.STARTED : ClockReading.Did.RESTARTED, because);
    }

    private Deed occur(ClockEvent.Occurred what) {
        QuarantinePolicy.Cause cause = policy.getCause(what.cause());
        String because = inWords(cause);
        if (needs.isEmpty()) {
            return new Deed(ClockReading.Did.NOTHING, because + ", but nobody stood there");
        }
        occurred.put(what.id(), what);
        if (lastRulings.get(what.id()) == ClockEvent.Ruling.WAS_NOTHING) {
            return new Deed(ClockReading.Did.NOTHING, because + ", but a vet has said since that it was nothing");
        }
        if (cause.contagious()) {
            raiseForContagion(what, cause);
        }
        switch (cause.effect()) {
            case RESTART -> {
                if (cause.waitsForTreatment()) {
                    gaps.add(new Gap(what, because, true));
                    return new Deed(ClockReading.Did.HELD, because + ", until treatment has ended");
                }
                restart(what.id(), what.on(), because);
                clear(cause, what.id(), what.on());
                return new Deed(ClockReading.Did.RESTARTED, because);
            }
            case PAUSE -> {
                gaps.add(new Gap(what, because, false));
                return new Deed(ClockReading.Did.PAUSED, because);
            }
            case VETS_WORD -> {
                questions.put(what.id(), what);
                return new Deed(ClockReading.Did.ASKED_A_VET, because);
            }
            default -> {
                return new Deed(ClockReading.Did.NOTHING, because);
            }
        }
    }

    private Deed hear(ClockEvent.VetSpoke word) {
        if (!word.confirmed()) {
            return hearUnconfirmed(word);
        }
        ClockEvent.Occurred what = occurred.get(word.about());
        Optional<Gap> open = openGap(word.about());
        boolean asked = questions.remove(word.about()) != null;
        switch (word.ruling()) {
            case RESTARTS -> {
                open.ifPresent(gap -> gap.end(word.on()));
                clearAfter(what, word.on());
                return restartIfAnybody(word.id(), word.on(), "a vet decided that the days begin again" + after(what));
            }
            case RESTARTS_AFTER_TREATMENT -> {
                String because = "a vet decided that the days begin again after treatment" + after(what);
                LocalDate ended = treatmentEnds.get(word.about());
                if (ended != null) {
                    open.ifPresent(gap -> gap.end(word.on()));
                    clearAfter(what, ended);
                    return restartIfAnybody(word.id(), ended, because);
                }
                if (open.isPresent()) {
                    open.get().waitForTreatment();
                } else if (what != null) {
                    gaps.add(new Gap(what, because, true, word.on()));
                }
                return new Deed(ClockReading.Did.HELD, because);
            }
            default -> {
                open.ifPresent(gap -> gap.end(word.on()));
                String because = word.ruling() == ClockEvent.Ruling.GOES_ON
                        ? "a vet decided that the days go on" + after(what)
                        : "a vet said that it was nothing" + after(what);
                if (open.isPresent()) {
                    return new Deed(ClockReading.Did.WENT_ON, because);
                }
                return new Deed(asked ? ClockReading.Did.ANSWERED : ClockReading.Did.NOTHING, because);
            }
        }
    }

    /** It may begin the days again or let them wait; what is waited for is waited for until a vet is certain to have spoken. */
    private Deed hearUnconfirmed(ClockEvent.VetSpoke word) {
        ClockEvent.Occurred what = occurred.get(word.about());
        String because = "an answer that no vet has confirmed says that the days begin again" + after(what);
        boolean restarts = word.ruling() == ClockEvent.Ruling.RESTARTS
                || word.ruling() == ClockEvent.Ruling.RESTARTS_AFTER_TREATMENT;
        if (!restarts || what == null || lastRulings.containsKey(word.about())) {
            return new Deed(ClockReading.Did.NOTHING, because + ", and counts for nothing");
        }
        if (word.ruling() == ClockEvent.Ruling.RESTARTS_AFTER_TREATMENT
                && openGap(word.about()).isEmpty()
                && !treatmentEnds.containsKey(word.about())) {
            gaps.add(new Gap(what, because, true, word.on()));
            return new Deed(ClockReading.Did.HELD, because + ", after treatment");
        }
        return restartIfAnybody(word.id(), word.on(), because);
    }

    private Deed endTreatment(ClockEvent.TreatmentEnded end) {
        ClockEvent.Occurred what = occurred.get(end.about());
        treatmentEnds.put(end.about(), end.on());
        String because = "treatment has ended" + after(what);
        Optional<Gap> open = openGap(end.about()).filter(Gap::waitsForTreatment);
        boolean again = what != null
                && lastRulings.get(end.about()) != ClockEvent.Ruling.WAS_NOTHING
                && gaps.stream().anyMatch(gap -> gap.isAbout(end.about()) && gap.waitsForTreatment())
                && lastRulings.get(end.about()) != ClockEvent.Ruling.GOES_ON;
        if (open.isEmpty() && !again) {
            return new Deed(ClockReading.Did.NOTHING, because);
        }
        open.ifPresent(gap -> gap.end(end.on()));
        clearAfter(what, end.on());
        return restartIfAnybody(end.id(), end.on(), because);
    }

    private Deed lengthen(ClockEvent.Lengthened longer) {
        boolean changes = needs.values().stream().anyMatch(need -> need.days() < longer.days());
        needs.replaceAll((animal, need) ->
                need.longer(new Need(longer.days(), need.vetRelease(), longer.id(), longer.reason())));
        return new Deed(
                changes ? ClockReading.Did.LENGTHENED : ClockReading.Did.NOTHING,
                changes ? longer.reason() : longer.reason() + " (so many days were needed anyway)");
    }

    private Deed decide(ClockEvent.VetDecided decision) {
        if (needs.isEmpty()) {
            return new Deed(ClockReading.Did.NOTHING, decision.reason() + " (nobody stood there)");
        }
        String because = "a vet decided on " + decision.days() + " days: " + decision.reason();
        Set<UUID> concerned = decision.animal().<Set<UUID>>map(Set::of).orElse(needs.keySet());
        if (Collections.disjoint(concerned, needs.keySet())) {
            return new Deed(ClockReading.Did.NOTHING, because + ", but the animal did not stand there");
        }
        needs.replaceAll((animal, need) -> concerned.contains(animal)
                ? new Need(decision.days(), need.vetRelease(), decision.id(), because)
                : need);
        if (concerned.containsAll(needs.keySet())) {
            clearings.clear();
        }
        return new Deed(ClockReading.Did.DECIDED, because);
    }

    private Deed leave(ClockEvent.Left left) {
        if (cameBack.remove(left.animal())) {
            return new Deed(ClockReading.Did.NOTHING, "it came back on the same day");
        }
        if (needs.remove(left.animal()) == null) {
            return new Deed(ClockReading.Did.NOTHING, "it did not stand there");
        }
        if (needs.isEmpty()) {
            start = null;
            gaps.clear();
            clearings.clear();
            questions.clear();
            occurred.clear();
            treatmentEnds.clear();
            return new Deed(ClockReading.Did.EMPTIED, "the last animal left");
        }
        return new Deed(ClockReading.Did.LEFT, "an animal left");
    }

    private void raiseForContagion(ClockEvent.Occurred what, QuarantinePolicy.Cause cause) {
        QuarantinePolicy.Minimum least = policy.contagionMinimum();
        needs.replaceAll((animal, need) -> need.longer(
                new Need(least.days(), least.vetRelease(), what.id(), least.reason() + " (" + cause.label() + ")")));
    }

    private Deed restartIfAnybody(UUID event, LocalDate on, String because) {
        if (needs.isEmpty()) {
            return new Deed(ClockReading.Did.NOTHING, because + " (nobody stood there)");
        }
        restart(event, on, because);
        return new Deed(ClockReading.Did.RESTARTED, because);
    }

    private void restart(UUID event, LocalDate on, String because) {
        if (start == null || !on.isBefore(start.on())) {
            start = new Why.Starts(event, on, because);
        }
    }

    private void clearAfter(ClockEvent.@Nullable Occurred what, LocalDate from) {
        if (what != null) {
            clear(policy.getCause(what.cause()), what.id(), from);
        }
    }

    private void clear(QuarantinePolicy.Cause cause, UUID event, LocalDate from) {
        if (cause.clearDays() > 0) {
            // Of two ends of treatment the later one counts, whichever is told first.
            if (clearings.stream()
                    .noneMatch(each -> each.event().equals(event) && each.from().isAfter(from))) {
                clearings.removeIf(each -> each.event().equals(event));
                clearings.add(new Clearing(event, cause, from));
            }
        }
    }

    /** What it is, and why that matters. */
    private static String inWords(QuarantinePolicy.Cause cause) {
        return cause.label() + " (" + cause.reason() + ")";
    }

    private Optional<Gap> openGap(UUID about) {
        return gaps.stream().filter(gap -> gap.isAbout(about) && gap.to == null).findFirst();
    }

    private String after(ClockEvent.@Nullable Occurred what) {
        return what == null ? "" : " (" + policy.getCause(what.cause()).label() + ")";
    }

    /** How the clock stands on a day not before that of the last event. */
    Standing standing(LocalDate asOf) {
        if (start == null || needs.isEmpty()) {
            return new Standing.Empty();
        }
        List<UUID> waitingFor =
                gaps.stream().filter(Gap::isOpen).map(gap -> gap.what.id()).toList();
        LocalDate earliest = earliest(gap -> asOf);
        return waitingFor.isEmpty()
                ? new Standing.Running(start.on(), earliest)
                : new Standing.Held(start.on(), latest(earliest, asOf), earliest(gap -> gap.from), waitingFor);
    }

    /** The earliest release if each open gap ended on that day of its own. */
    private LocalDate earliest(Function<Gap, LocalDate> end) {
        LocalDate earliest = countedTo(end);
        for (Gap gap : gaps) {
            if (gap.isOpen() && gap.waitsForTreatment()) {
                int clear = policy.getCause(gap.what.cause()).clearDays();
                earliest = latest(earliest, end.apply(gap).plusDays(Math.max(neededDays(), clear)));
            }
        }
        for (Clearing clearing : clearings) {
            earliest = latest(earliest, clearing.until());
        }
        return earliest;
    }

    ClockReading read(LocalDate asOf, List<ClockReading.Step> history) {
        List<UUID> open = new ArrayList<>(questions.keySet());
        gaps.stream()
                .filter(gap -> gap.to == null && !gap.waitsForTreatment())
                .map(gap -> gap.what.id())
                .forEach(open::add);
        return new ClockReading(
                asOf,
                standing(asOf),
                needs.keySet(),
                neededDays(),
                uncountedDays(asOf),
                needs.values().stream().anyMatch(Need::vetRelease),
                open,
                why(asOf),
                history);
    }

    private List<Why> why(LocalDate asOf) {
        List<Why> why = new ArrayList<>();
        if (start == null || needs.isEmpty()) {
            return why;
        }
        LocalDate counted = countedTo(gap -> asOf);
        why.add(start);
        needs.entrySet().stream()
                .max(Comparator.comparingInt(each -> each.getValue().days()))
                .ifPresent(most -> why.add(new Why.Needs(
                        most.getValue().event(),
                        Optional.of(most.getKey()),
                        most.getValue().days(),
                        most.getValue().because())));
        for (Gap gap : gaps) {
            LocalDate from = latest(gap.from, start.on());
            LocalDate to = gap.to == null ? asOf : gap.to;
            if (gap.to == null) {
                why.add(new Why.Waits(gap.what.id(), gap.from, gap.waitsForTreatment(), gap.because));
            } else if (from.isBefore(to) && from.isBefore(counted)) {
                why.add(new Why.Paused(gap.what.id(), from, to, (int) ChronoUnit.DAYS.between(from, to), gap.because));
            }
        }
        for (Clearing clearing : clearings) {
            if (clearing.until().isAfter(counted)) {
                why.add(new Why.Clear(
                        clearing.event(),
                        clearing.until(),
                        clearing.cause().clearDays(),
                        clearing.cause().label()));
            }
        }
        return why;
    }

    private int neededDays() {
        return needs.values().stream().mapToInt(Need::days).max().orElse(0);
    }

    private int uncountedDays(LocalDate asOf) {
        return start == null || needs.isEmpty()
                ? 0
                : (int) ChronoUnit.DAYS.between(start.on().plusDays(neededDays()), countedTo(gap -> asOf));
    }

    /** The first day by which the needed days have been counted, days in a gap left out; open ones end on those days. */
    private LocalDate countedTo(Function<Gap, LocalDate> openUntil) {
        LocalDate begun = Objects.requireNonNull(start).on();
        LocalDate end = begun.plusDays(neededDays());
        LocalDate done = begun;
        List<Gap> inOrder =
                gaps.stream().sorted(Comparator.comparing(gap -> gap.from)).toList();
        for (Gap gap : inOrder) {
            LocalDate from = latest(gap.from, done);
            LocalDate to = gap.to == null ? openUntil.apply(gap) : gap.to;
            if (from.isBefore(end) && from.isBefore(to)) {
                end = end.plusDays(ChronoUnit.DAYS.between(from, to));
                done = to;
            }
        }
        return end;
    }

    private static LocalDate latest(LocalDate one, LocalDate other) {
        return one.isAfter(other) ? one : other;
    }

    /** How many days an animal needs, and from which event that comes. */
    private record Need(int days, boolean vetRelease, UUID event, String because) {
        Need longer(Need other) {
            Need longer = other.days > days ? other : this;
            return new Need(longer.days, vetRelease || other.vetRelease, longer.event, longer.because);
        }
    }

    /** So many days without something, from a day on. */
    private record Clearing(UUID event, QuarantinePolicy.Cause cause, LocalDate from) {
        LocalDate until() {
            return from.plusDays(cause.clearDays());
        }
    }

    /** Days that do not count: from the first on, up to but without the last. */
    private static final class Gap {
        private final ClockEvent.Occurred what;
        private final LocalDate from;
        private final String because;
        private boolean forTreatment;
        private @Nullable LocalDate to;

        Gap(ClockEvent.Occurred what, String because, boolean forTreatment) {
            this(what, because, forTreatment, what.on());
        }

        Gap(ClockEvent.Occurred what, String because, boolean forTreatment, LocalDate from) {
            this.what = what;
            this.because = because;
            this.forTreatment = forTreatment;
            this.from = from;
        }

        boolean isAbout(UUID occurrence) {
            return what.id().equals(occurrence);
        }

        boolean isOpen() {
            return to == null;
        }

        boolean waitsForTreatment() {
            return forTreatment;
        }

        void waitForTreatment() {
            forTreatment = true;
        }

        void end(LocalDate on) {
            to = on;
        }
    }
}
