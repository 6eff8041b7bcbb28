package varanid.intake.sample;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.animal.Animals;
import varanid.intake.infection.NegativeTests;
import varanid.intake.infection.Rounds;
import varanid.intake.infection.SamplingDefaults;

/** Works out what an animal's samples say about infections up to a day. Reads nothing, keeps nothing. */
final class FreedomReader {

    private final Animals.Newcomer animal;
    private final Assumptions assumptions;
    private final LocalDate asOf;
    private final List<SampleFile> samples;
    private final String origin;

    FreedomReader(Animals.Newcomer animal, Assumptions assumptions, LocalDate asOf, List<SampleFile> samples) {
        this.animal = animal;
        this.assumptions = assumptions;
        this.asOf = asOf;
        this.origin = assumptions.shipped().origin(animal.steeringOrigin());
        this.samples = samples.stream()
                .filter(sample -> !sample.row().localDate().isAfter(asOf))
                .sorted(Comparator.comparing((SampleFile sample) -> sample.row().takenAt()))
                .toList();
    }

    FreedomView read() {
        SamplingDefaults.Texts texts = assumptions.texts();
        return new FreedomView(
                animal.id(),
                asOf,
                texts.whatItIs(),
                assumptions.shipped().warning(),
                animal.steeringOrigin(),
                origin,
                texts.counted(),
                new FreedomView.Reading(texts.independent(), null),
                new FreedomView.Reading(texts.correlated(), assumptions.correlation()),
                assumptions.targetFreedom(),
                assumptions.introductionPerRound(),
                assumptions.shipped().groups().stream()
                        .map(this::line)
                        .flatMap(Optional::stream)
                        .toList(),
                withoutFigure());
    }

    /** Agents that a figure is made of, and those that were found. */
    private Optional<FreedomView.AgentLine> line(SamplingDefaults.Group group) {
        Optional<SampleFile> lastPositive = findLastPositive(group);
        Assumptions.@Nullable Figure prior =
                assumptions.findPrior(group.id(), origin).orElse(null);
        if (prior == null && lastPositive.isEmpty()) {
            return Optional.empty();
        }
        List<FreedomView.MethodLine> lines = new ArrayList<>();
        List<NegativeTests.Series> series = new ArrayList<>();
        if (prior != null) {
            for (Assumptions.Method method : assumptions.methods()) {
                if (method.looksFor(group.id())) {
                    List<UUID> negatives = negatives(
                            method, lastPositive.map(sample -> sample.row().takenAt()));
                    lines.add(line(method, prior.value(), negatives));
                    series.add(new NegativeTests.Series(method.quality(), negatives.size()));
                }
            }
        }
        return Optional.of(new FreedomView.AgentLine(
                group.id(),
                group.name(),
                group.members(),
                prior,
                prior == null ? assumptions.texts().noPrior() : null,
                lastPositive.map(sample -> lastPositive(sample, group)).orElse(null),
                lines,
                prior == null ? null : combined(prior.value(), lines, series)));
    }

    private FreedomView.MethodLine line(Assumptions.Method method, double prior, List<UUID> samples) {
        int negatives = samples.size();
        double correlation = assumptions.correlation().value();
        double target = assumptions.targetFreedom().value();
        NegativeTests tests = new NegativeTests(prior, method.quality());
        Rounds rounds = new Rounds(
                assumptions.introductionPerRound().value(), method.sensitivity().value());
        List<Rounds.Round> series = rounds.series(1 - prior, negatives);
        double afterRounds =
                series.isEmpty() ? 1 - prior : series.get(series.size() - 1).after();
        return new FreedomView.MethodLine(
                method.shipped().id(),
                method.shipped().name(),
                method.sensitivity(),
                method.specificity(),
                negatives,
                samples,
                Shown.freedom(tests.freedomIfIndependent(negatives)),
                Shown.freedom(tests.freedomIfCorrelated(negatives, correlation)),
                new FreedomView.FalsePositives(
                        Shown.probability(tests.falseAlarm(negatives)),
                        assumptions.texts().falseAlarm()),
                new FreedomView.Needed(
                        FreedomView.More.of(tests.moreIfIndependent(target, negatives)),
                        FreedomView.More.of(tests.moreIfCorrelated(target, correlation, negatives))),
                new FreedomView.Introduction(
                        Shown.freedom(afterRounds),
                        rounds.longRun()
                                .map(round -> Shown.freedom(round.after()))
                                .orElse(null),
                        assumptions.texts().introduction()));
    }

    private FreedomView.@Nullable Combined combined(
            double prior, List<FreedomView.MethodLine> lines, List<NegativeTests.Series> series) {
        List<String> used = lines.stream()
                .filter(line -> line.negatives() > 0)
                .map(FreedomView.MethodLine::method)
                .toList();
        if (used.size() < 2) {
            return null;
        }
        double noFalsePositive = 1;
        for (NegativeTests.Series one : series) {
            noFalsePositive *= Math.pow(one.test().specificity(), one.negatives());
        }
        return new FreedomView.Combined(
                used,
                Shown.freedom(NegativeTests.freedomAfterAll(prior, series)),
                Shown.probability(1 - noFalsePositive),
                assumptions.texts().combined());
    }

    private Optional<SampleFile> findLastPositive(SamplingDefaults.Group group) {
        return samples.stream()
                .filter(sample -> known(sample).stream().anyMatch(result -> names(result, group)))
                .reduce((earlier, later) -> later);
    }

    private static boolean names(SampleFile.Result result, SamplingDefaults.Group group) {
        return result.outcome() == Outcome.POSITIVE
                && result.found().stream().anyMatch(found -> group.members().contains(found.agent()));
    }

    private FreedomView.LastPositive lastPositive(SampleFile sample, SamplingDefaults.Group group) {
        TreeSet<String> agents = new TreeSet<>();
        known(sample).stream()
                .filter(result -> result.outcome() == Outcome.POSITIVE)
                .flatMap(result -> result.found().stream())
                .map(Found::agent)
                .filter(group.members()::contains)
                .forEach(agents::add);
        return new FreedomView.LastPositive(
                sample.row().id(),
                sample.row().localDate(),
                List.copyOf(agents),
                assumptions.texts().afterPositive());
    }

    /** Samples by that method that were plainly negative, once each. */
    private List<UUID> negatives(Assumptions.Method method, Optional<Instant> after) {
        return samples.stream()
                .filter(sample -> after.isEmpty() || sample.row().takenAt().isAfter(after.get()))
                .filter(sample -> method.shipped().kinds().contains(sample.row().kind()))
                .filter(sample -> isPlainlyNegative(sample, method.shipped().id()))
                .map(sample -> sample.row().id())
                .toList();
    }

    private boolean isPlainlyNegative(SampleFile sample, String method) {
        List<SampleFile.Result> told = known(sample).stream()
                .filter(result -> result.row().method().equals(method) && result.outcome() != Outcome.UNUSABLE)
                .toList();
        return !told.isEmpty() && told.stream().allMatch(result -> result.outcome() == Outcome.NEGATIVE);
    }

    /** The standing results that had been reported by then. */
    private List<SampleFile.Result> known(SampleFile sample) {
        return sample.standingResults().stream()
                .filter(result -> !result.row().reportedOn().isAfter(asOf))
                .toList();
    }

    private List<FreedomView.NoFigure> withoutFigure() {
        return assumptions.shipped().otherMethods().stream()
                .map(method -> new FreedomView.NoFigure(
                        method.id(),
                        method.name(),
                        (int) samples.stream()
                                .flatMap(sample -> known(sample).stream())
                                .filter(result -> result.row().method().equals(method.id()))
                                .count(),
                        assumptions.texts().noFigure()))
                .filter(line -> line.results() > 0)
                .toList();
    }
}
