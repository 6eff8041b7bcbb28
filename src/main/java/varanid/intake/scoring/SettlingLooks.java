package varanid.intake.scoring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The fewest looks that would settle a result if all of them turned out reassuring.
 *
 * <p>A finding that could by itself still change the result is in every such set; those are found first. What is then
 * left is tried in all sets of up to {@value #EXACT_TO}; beyond that, or beyond {@value #MOST_TRIES} tries, the set is
 * built step by step and said not to be exact.
 */
final class SettlingLooks {

    static final int EXACT_TO = 5;
    static final int MOST_TRIES = 20_000;

    /** The width of a finding whose answer decides how others are read: never a reason to drop a branch. */
    private static final int UNTOLD = 1 << 24;

    private int tries;

    Result.Settling of(Reading start) {
        Checklist checklist = start.checklist;
        List<Integer> open = new ArrayList<>();
        for (FindingRules finding : checklist.findings) {
            if (start.isOpen(finding)) {
                open.add(finding.index);
            }
        }
        if (isSettled(start)) {
            return new Result.Settling(List.of(), true);
        }
        List<Integer> needed = new ArrayList<>();
        Reading reading = start;
        boolean onlySettle = looksOnlySettle(start, open);
        for (int f : open) {
            if (onlySettle && !isSettled(allReassuredBut(start, open, f))) {
                needed.add(f);
                reading = reading.reassured(f);
            }
        }
        List<Integer> rest = new ArrayList<>(open);
        rest.removeAll(needed);
        int[] widths = new int[checklist.findings.length];
        for (int f : rest) {
            widths[f] = mostTakenOff(reading, f);
        }
        rest.sort(Comparator.comparingInt((Integer f) -> -widths[f]).thenComparingInt(f -> f));

        boolean exact = true;
        if (!isSettled(reading)) {
            List<Integer> more = search(reading, rest, widths);
            if (more == null) {
                more = stepByStep(reading, rest);
                exact = false;
            }
            needed.addAll(more);
        }
        needed.sort(Comparator.naturalOrder());
        return new Result.Settling(
                needed.stream().map(f -> checklist.findings[f].draft.id()).toList(), exact);
    }

    private static boolean isSettled(Reading reading) {
        return new Decision(reading, Bounds.of(reading)).isSettled();
    }

    /**
     * Whether a reassuring look can never open what was settled. It can where an excused answer isolates, or rules
     * something out by an implication: looking again takes that away.
     */
    private static boolean looksOnlySettle(Reading start, List<Integer> open) {
        for (int f : open) {
            Circumstances.Excuse excuse = start.excuses[f];
            if (excuse != null && couldIsolate(start.checklist, start.checklist.findings[f], excuse.level())) {
                return false;
            }
            for (ImplicationRules implication : start.checklist.implications) {
                if (excuse != null && implication.then == f) {
                    return false;
                }
            }
        }
        return true;
    }

    private static boolean couldIsolate(Checklist checklist, FindingRules finding, int level) {
        boolean inACombination = Arrays.stream(finding.terms[level]).anyMatch(word -> word != 0);
        return finding.routes[level] != 0
                || inACombination
                        && Arrays.stream(checklist.combinations).anyMatch(combination -> combination.routes != 0);
    }

    private static Reading allReassuredBut(Reading start, List<Integer> open, int spared) {
        Reading reading = start;
        for (int f : open) {
            if (f != spared) {
                reading = reading.reassured(f);
            }
        }
        return reading;
    }

    private static int width(FindingRules finding, int set) {
        return set == 0 ? 0 : finding.raised[finding.worstOf(set)[0]] - finding.raised[finding.mildestOf(set)[0]];
    }

    /** No fewer points than a reassuring answer takes off the most there could be, those of what it implies included. */
    private static int mostTakenOff(Reading reading, int f) {
        Checklist checklist = reading.checklist;
        for (int driver : checklist.drivers) {
            if (driver == f) {
                return UNTOLD;
            }
        }
        int most = width(checklist.findings[f], reading.possible[f]);
        for (ImplicationRules implication : checklist.implications) {
            if (implication.finding == f) {
                most += width(checklist.findings[implication.then], reading.possible[implication.then]);
            }
        }
        return most;
    }

    private @Nullable List<Integer> search(Reading reading, List<Integer> rest, int[] widths) {
        Bounds bounds = Bounds.of(reading);
        int tooMany = reading.checklist.totalBands.leastBeyond(bounds.lowest().outcome);
        int excess = tooMany == Integer.MAX_VALUE ? 0 : Math.max(0, bounds.mostRaised - tooMany + 1);
        for (int size = 1; size <= Math.min(EXACT_TO, rest.size()); size++) {
            List<Integer> found = search(reading, rest, widths, 0, size, excess);
            if (found != null || tries > MOST_TRIES) {
                return found;
            }
        }
        return null;
    }

    /** Widest first, so that a branch is dropped as soon as even the widest ones left could not take off the excess. */
    private @Nullable List<Integer> search(
            Reading reading, List<Integer> rest, int[] widths, int from, int size, int excess) {
        if (size == 0) {
            tries++;
            return isSettled(reading) ? new ArrayList<>() : null;
        }
        for (int i = from; i + size <= rest.size() && tries <= MOST_TRIES; i++) {
            int best = 0;
            for (int j = i; j < i + size; j++) {
                best += widths[rest.get(j)];
            }
            if (best < excess) {
                return null;
            }
            int f = rest.get(i);
            List<Integer> found = search(reading.reassured(f), rest, widths, i + 1, size - 1, excess - widths[f]);
            if (found != null) {
                found.add(f);
                return found;
            }
        }
        return null;
    }

    private static List<Integer> stepByStep(Reading start, List<Integer> rest) {
        List<Integer> taken = new ArrayList<>();
        Reading reading = start;
        for (int f : rest) {
            if (isSettled(reading)) {
                break;
            }
            reading = reading.reassured(f);
            taken.add(f);
        }
        return taken;
    }
}
