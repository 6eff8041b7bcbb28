package varanid.intake.scoring;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The fewest answers, at most {@value #MOST_MOVES}, that would have to be otherwise for another lowest outcome. */
final class NearestChange {

    static final int MOST_MOVES = 3;

    private record Move(WhatIf.Step step, int points) {}

    private final Reading reading;
    private final WhatIf whatIf;
    private final int[] levels;
    private final int outcome;

    NearestChange(Reading reading, Bounds bounds, WhatIf whatIf) {
        this.reading = reading;
        this.whatIf = whatIf;
        levels = reading.seen.clone();
        for (FindingRules finding : reading.checklist.findings) {
            if (finding.driver >= 0) {
                levels[finding.index] = bounds.lowestLevels[finding.index];
            }
        }
        outcome = bounds.lowest().outcome;
    }

    /** Null where not even three reassuring answers would do. */
    Result.@Nullable Change milder() {
        if (outcome == 0) {
            return null;
        }
        List<Move> moves = new ArrayList<>();
        for (FindingRules finding : reading.checklist.findings) {
            int level = levels[finding.index];
            boolean excused = reading.excuses[finding.index] != null;
            boolean counts = whatIf.touchesOthers(finding.index) || !finding.isIdle(level) && !excused;
            if (isAnswered(finding) && level != 0 && counts && canBe(finding, 0)) {
                moves.add(new Move(new WhatIf.Step(finding.index, 0), finding.raised[level]));
            }
        }
        moves.sort(Comparator.comparingInt((Move move) -> -move.points())
                .thenComparingInt(move -> move.step().finding()));
        return fewest(moves, false);
    }

    /** Null at the most urgent outcome, or where not even three answers one step worse would do. */
    Result.@Nullable Change worse() {
        if (outcome == reading.checklist.lastOutcome()) {
            return null;
        }
        List<Move> moves = new ArrayList<>();
        for (FindingRules finding : reading.checklist.findings) {
            int level = levels[finding.index];
            for (List<String> chain : finding.draft.chains()) {
                int at = chain.indexOf(finding.levels[level]);
                if (isAnswered(finding) && at >= 0 && at + 1 < chain.size()) {
                    int next = finding.levelIndex(chain.get(at + 1));
                    if (canBe(finding, next)) {
                        moves.add(new Move(
                                new WhatIf.Step(finding.index, next), finding.raised[next] - finding.raised[level]));
                    }
                }
            }
        }
        moves.sort(Comparator.comparingInt(Move::points)
                .thenComparingInt(move -> move.step().finding()));
        return fewest(moves, true);
    }

    private boolean isAnswered(FindingRules finding) {
        return reading.isSeen(finding.index);
    }

    /** Whether some number falls in this level, in this animal. */
    private boolean canBe(FindingRules finding, int level) {
        if (!finding.isMeasured()) {
            return true;
        }
        int driverLevel = finding.driver < 0 ? -1 : levels[finding.driver];
        return (finding.reachable(reading.circumstances.attributeValues, driverLevel) & 1 << level) != 0;
    }

    private Result.@Nullable Change fewest(List<Move> moves, boolean worse) {
        for (int size = 1; size <= Math.min(MOST_MOVES, moves.size()); size++) {
            Result.Change change = tryAll(moves, 0, new WhatIf.Step[size], 0, worse);
            if (change != null) {
                return change;
            }
        }
        return null;
    }

    private Result.@Nullable Change tryAll(List<Move> moves, int from, WhatIf.Step[] taken, int count, boolean worse) {
        if (count == taken.length) {
            WhatIf.Supposed then = whatIf.lowestAfter(taken);
            boolean changes = worse ? then.outcome() > outcome : then.outcome() < outcome;
            return changes && !then.contradictory() ? describe(taken, then.outcome()) : null;
        }
        for (int i = from; i + taken.length - count <= moves.size(); i++) {
            WhatIf.Step step = moves.get(i).step();
            boolean movedAlready = false;
            for (int t = 0; t < count; t++) {
                movedAlready |= taken[t].finding() == step.finding();
            }
            if (movedAlready) {
                continue;
            }
            taken[count] = step;
            Result.Change change = tryAll(moves, i + 1, taken, count + 1, worse);
            if (change != null) {
                return change;
            }
        }
        return null;
    }

    private Result.Change describe(WhatIf.Step[] taken, int becomes) {
        List<Result.Move> moves = new ArrayList<>();
        for (WhatIf.Step step : taken) {
            FindingRules finding = reading.checklist.findings[step.finding()];
            moves.add(new Result.Move(
                    finding.draft.id(), finding.levels[levels[step.finding()]], finding.levels[step.to()]));
        }
        return new Result.Change(moves, reading.checklist.outcomeCode(becomes));
    }
}
