package varanid.intake.scoring;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Which finding to look at next: must-see first, then those that alone could raise the outcome furthest, then those
 * that could add most points, then those whose answer is worth most for the trouble.
 *
 * <p>The worth ignores combinations and section bands and adds family members as if each stood alone: it only orders
 * findings that the exact reasons before it leave equal.
 */
final class NextLooks {

    private record Candidate(FindingRules finding, Result.NextLook look, int raisesTo, int points) {}

    private final Reading reading;
    private final Bounds bounds;
    private final WhatIf whatIf;

    NextLooks(Reading reading, Bounds bounds, WhatIf whatIf) {
        this.reading = reading;
        this.bounds = bounds;
        this.whatIf = whatIf;
    }

    List<Result.NextLook> inOrder() {
        List<FindingRules> open = new ArrayList<>();
        for (FindingRules finding : reading.checklist.findings) {
            if (reading.isOpen(finding) && matters(finding)) {
                open.add(finding);
            }
        }
        double[] values = valuesOf(open);
        List<Candidate> candidates = new ArrayList<>();
        for (int i = 0; i < open.size(); i++) {
            candidates.add(candidate(open.get(i), values[i]));
        }
        candidates.sort(Comparator.comparing((Candidate it) -> !it.look().mustSee())
                .thenComparing(Comparator.comparingInt(Candidate::raisesTo).reversed())
                .thenComparing(it -> !it.look().couldIsolate())
                .thenComparing(Comparator.comparingInt(Candidate::points).reversed())
                .thenComparing(Comparator.comparingDouble(
                                (Candidate it) -> it.look().value() / it.look().effort())
                        .reversed())
                .thenComparingInt(it -> it.finding().index));
        return candidates.stream().map(Candidate::look).toList();
    }

    private boolean matters(FindingRules finding) {
        int f = finding.index;
        int worst = finding.worstOf(reading.possible[f])[0];
        int mildest = finding.mildestOf(reading.possible[f])[0];
        return !finding.atLeast(mildest, worst) || isDriver(f);
    }

    private boolean isDriver(int f) {
        for (int driver : reading.checklist.drivers) {
            if (driver == f) {
                return true;
            }
        }
        return false;
    }

    private Candidate candidate(FindingRules finding, double value) {
        int f = finding.index;
        int worst = finding.worstOf(reading.possible[f])[0];
        int points = finding.raised[worst] - finding.raised[bounds.lowestLevels[f]];
        WhatIf.Supposed alone = whatIf.lowestAfter(new WhatIf.Step(f, worst));
        boolean isolates = bounds.lowestRoutes == 0 && alone.routes() != 0;
        return new Candidate(
                finding,
                new Result.NextLook(
                        finding.draft.id(),
                        reading.circumstances.isMustSee(finding),
                        reading.checklist.outcomeCode(alone.outcome()),
                        isolates,
                        pointsOf(points),
                        finding.draft.effortOrDefault(),
                        Math.round(value * 1e6) / 1e6),
                alone.outcome(),
                points);
    }

    /** A number of points between two levels, without the checklist's base. */
    private BigDecimal pointsOf(int raised) {
        return reading.checklist.points(raised).abs();
    }

    private double[] valuesOf(List<FindingRules> open) {
        ChecklistDraft.NextLook rules = reading.checklist.draft().nextLook();
        if (rules == null) {
            return new double[open.size()];
        }
        double reassuring = rules.chanceReassuring().doubleValue();
        DecisionValue.Option[][] items = new DecisionValue.Option[open.size()][];
        for (int i = 0; i < items.length; i++) {
            items[i] = options(open.get(i), reassuring);
        }
        double[][] losses = rules.losses().stream()
                .map(row -> row.stream().mapToDouble(BigDecimal::doubleValue).toArray())
                .toArray(double[][]::new);
        Bands bands = reading.checklist.totalBands;
        int cap = 0;
        for (int outcome = 0; outcome < losses.length; outcome++) {
            int beyond = bands.leastBeyond(outcome);
            cap = beyond == Integer.MAX_VALUE ? cap : Math.max(cap, beyond);
        }
        return new DecisionValue(
                        items,
                        Math.max(0, bounds.leastRaised),
                        bounds.lowest().outcome,
                        bands::outcomeOf,
                        Math.max(1, cap),
                        losses)
                .values();
    }

    private DecisionValue.Option[] options(FindingRules finding, double reassuring) {
        int f = finding.index;
        int set = reading.possible[f];
        int mildest = finding.mildestOf(set)[0];
        int others = Integer.bitCount(set) - 1;
        List<DecisionValue.Option> options = new ArrayList<>();
        for (int l = 0; l < finding.levels.length; l++) {
            if ((set & 1 << l) != 0) {
                double chance = l == mildest ? reassuring : (1 - reassuring) / others;
                int points = Math.max(0, finding.raised[l] - finding.raised[mildest]);
                options.add(new DecisionValue.Option(chance, points, finding.floor[l]));
            }
        }
        return options.toArray(DecisionValue.Option[]::new);
    }
}
