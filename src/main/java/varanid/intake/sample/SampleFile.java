package varanid.intake.sample;

import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A sample with everything that was recorded of it, and what that comes to.
 *
 * @param row the sample, as it was written down or corrected
 * @param steps all of them, superseded ones too, as recorded
 * @param results all of them, superseded ones too, as recorded
 */
record SampleFile(SampleRow row, List<SampleStepRow> steps, List<Result> results) {

    SampleFile {
        steps = List.copyOf(steps);
        results = List.copyOf(results);
    }

    /** A result and what it names. */
    record Result(SampleResultRow row, List<Found> found) {

        Outcome outcome() {
            return Outcome.get(row.outcome());
        }
    }

    List<Result> standingResults() {
        return standing(
                results, result -> result.row().id(), result -> result.row().supersedes());
    }

    List<SampleStepRow> standingSteps() {
        return standing(steps, SampleStepRow::id, SampleStepRow::supersedes);
    }

    /** Any positive, else any equivocal, else any negative; unusable results count for nothing. */
    Outcome outcome() {
        Set<Outcome> outcomes = new HashSet<>();
        standingResults().forEach(result -> outcomes.add(result.outcome()));
        for (Outcome each : List.of(Outcome.POSITIVE, Outcome.EQUIVOCAL, Outcome.NEGATIVE)) {
            if (outcomes.contains(each)) {
                return each;
            }
        }
        boolean nothingToCome = isGone() || (!outcomes.isEmpty() && awaited().isEmpty());
        return nothingToCome ? Outcome.UNUSABLE : Outcome.PENDING;
    }

    /** Methods that were asked for and have no standing result. */
    List<String> awaited() {
        if (isGone()) {
            return List.of();
        }
        Set<String> answered = new HashSet<>();
        standingResults().forEach(result -> answered.add(result.row().method()));
        return row.methods().stream()
                .filter(method -> !answered.contains(method))
                .toList();
    }

    /** What standing positive results name, in the order of the alphabet. */
    Set<String> agents() {
        Set<String> agents = new TreeSet<>();
        standingResults().stream()
                .filter(result -> result.outcome() == Outcome.POSITIVE)
                .flatMap(result -> result.found().stream())
                .forEach(found -> agents.add(found.agent()));
        return agents;
    }

    KeptSample kept() {
        KeptSample.Outcome outcome = switch (outcome()) {
            case POSITIVE -> KeptSample.Outcome.POSITIVE;
            // Half an answer reassures nobody: what was asked for and has not come may still be positive.
            case NEGATIVE -> awaited().isEmpty() ? KeptSample.Outcome.NEGATIVE : KeptSample.Outcome.PENDING;
            case UNUSABLE -> KeptSample.Outcome.UNUSABLE;
            // Whoever waits for a clear answer goes on waiting.
            case PENDING, EQUIVOCAL -> KeptSample.Outcome.PENDING;
        };
        return new KeptSample(
                row.id(), row.kind(), row.localDate(), Optional.ofNullable(row.freshHours()), outcome, agents());
    }

    private boolean isGone() {
        return standingSteps().stream()
                .map(step -> Step.get(step.step()))
                .anyMatch(step -> step == Step.LOST || step == Step.UNUSABLE);
    }

    private static <T> List<T> standing(List<T> all, Function<T, UUID> id, Function<T, @Nullable UUID> supersedes) {
        Set<UUID> superseded = new HashSet<>();
        all.stream().map(supersedes).filter(Objects::nonNull).forEach(superseded::add);
        return all.stream().filter(each -> !superseded.contains(id.apply(each))).toList();
    }
}
