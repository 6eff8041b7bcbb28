package varanid.intake.scoring;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The fewest answers, at most {@value #MOST_MOVES}, that would have to be otherwise for another lowest outcome. */
final class NearestChange {

    static final int MOST_MOVES = 3;

    private record Step(int finding, int to, int points) {}

    private final Reading reading;
    private final int[] levels;
    private final int outcome;

    NearestChange(Reading reading, Bounds bounds) {
        this.reading = reading;
        levels = bounds.lowestLevels;
        outcome = bounds.lowest().outcome;
    }

    /** Null where not even three reassuring answers would do. */
    Result.@Nullable Change milder() {
        List<Step> steps = new ArrayList<>();
        for (FindingRules finding : answered()) {
            int level = levels[finding.index];
            if (!finding.idle[level]) {
                steps.add(new Step(finding.index, 0, finding.raised[level]));
            }
        }
        steps.sort(Comparator.comparingInt((Step step) -> -step.points()).thenComparingInt(Step::finding));
        return outcome == 0 ? null : fewest(steps, false);
    }

    /** Null at the most urgent outcome, or where not even three answers one step worse would do. */
    Result.@Nullable Change worse() {
        List<Step> steps = new ArrayList<>();
        for (FindingRules finding : answered()) {
            int level = levels[finding.index];
            for (List<String> chain : finding.draft.chains()) {
                int at = chain.indexOf(finding.levels[level]);
                if (at >= 0 && at + 1 < chain.size()) {
                    int next = finding.levelIndex(chain.get(at + 1));
                    steps.add(new Step(finding.index, next, finding.raised[next] - finding.raised[level]));
                }
            }
        }
        steps.sort(Comparator.comparingInt(Step::points).thenComparingInt(Step::finding));
        return outcome == reading.checklist.lastOutcome() ? null : fewest(steps, true);
    }

    private List<FindingRules> answered() {
        List<FindingRules> answered = new ArrayList<>();
        for (FindingRules finding : reading.checklist.findings) {
            if (reading.status[finding.index] == Reading.Status.SEEN && finding.driver < 0) {
                answered.add(finding);
            }
        }
        return answered;
    }

    private Result.@Nullable Change fewest(List<Step> steps, boolean worse) {
        for (int size = 1; size <= Math.min(MOST_MOVES, steps.size()); size++) {
            Result.Change change = tryAll(steps, 0, size, levels.clone(), new ArrayList<>(), worse);
            if (change != null) {
                return change;
            }
        }
        return null;
    }

    private Result.@Nullable Change tryAll(
            List<Step> steps, int from, int size, int[] moved, List<Step> taken, boolean worse) {
        if (size == 0) {
            if (clashes(moved)) {
                return null;
            }
            int becomes = Tally.of(reading.circumstances, moved).outcome;
            return (worse ? becomes > outcome : becomes < outcome) ? describe(taken, becomes) : null;
        }
        for (int i = from; i + size <= steps.size(); i++) {
            Step step = steps.get(i);
            int before = moved[step.finding()];
            if (before != levels[step.finding()]) {
                continue;
            }
            moved[step.finding()] = step.to();
            taken.add(step);
            Result.Change change = tryAll(steps, i + 1, size - 1, moved, taken, worse);
            if (change != null) {
                return change;
            }
            taken.remove(taken.size() - 1);
            moved[step.finding()] = before;
        }
        return null;
    }

    private boolean clashes(int[] moved) {
        for (ImplicationRules implication : reading.checklist.implications) {
            if (moved[implication.finding] == 0 && moved[implication.then] != 0) {
                return true;
            }
        }
        return false;
    }

    private Result.Change describe(List<Step> taken, int becomes) {
        return new Result.Change(
                taken.stream()
                        .map(step -> {
                            FindingRules finding = reading.checklist.findings[step.finding()];
                            return new Result.Move(
                                    finding.draft.id(),
                                    finding.levels[levels[step.finding()]],
                                    finding.levels[step.to()]);
                        })
                        .toList(),
                reading.checklist.outcomeCode(becomes));
    }
}
