package varanid.intake.scoring;

import java.util.Arrays;
import java.util.Objects;
import java.util.function.IntBinaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * The mildest and the worst that a reading may stand for, exactly, each with a completion that scores to it.
 *
 * <p>Along a chain nothing ever falls, so the mildest completion takes the mild end of every set of possible levels and
 * the worst one the other end. Only two things need more than one try: a set with two ends of which neither outweighs
 * the other, and a finding that decides how another is read (a driver). Both are tried in every combination; the
 * checklist is refused when there could be more than {@value #MOST_TRIES}.
 */
final class Bounds {

    static final int MOST_TRIES = 4096;

    private final Reading reading;
    private final FindingRules[] findings;

    @Nullable
    Tally lowest;

    int[] lowestLevels = {};

    @Nullable
    Tally highest;

    int[] highestLevels = {};

    int leastRaised = Integer.MAX_VALUE;
    int mostRaised = Integer.MIN_VALUE;
    int[] sectionLeast = {};
    int[] sectionMost = {};
    int lowestRoutes;
    int highestRoutes;

    private Bounds(Reading reading) {
        this.reading = reading;
        findings = reading.checklist.findings;
    }

    static Bounds of(Reading reading) {
        Bounds bounds = new Bounds(reading);
        if (reading.checklist.drivers.length == 0) {
            bounds.takeEnds(reading.possible);
        } else {
            bounds.fixDrivers(0, reading.possible.clone());
        }
        return bounds;
    }

    Tally lowest() {
        return Objects.requireNonNull(lowest);
    }

    Tally highest() {
        return Objects.requireNonNull(highest);
    }

    /** Tries every level that a driver may have, and with it the levels of the findings that it decides. */
    private void fixDrivers(int from, int[] possible) {
        if (from == reading.checklist.drivers.length) {
            takeEnds(possible);
            return;
        }
        int driver = reading.checklist.drivers[from];
        for (int l = 0; l < findings[driver].levels.length; l++) {
            if ((reading.possible[driver] & 1 << l) != 0) {
                possible[driver] = 1 << l;
                for (FindingRules finding : findings) {
                    if (finding.driver == driver) {
                        possible[finding.index] = reading.possibleWith(finding, l);
                    }
                }
                fixDrivers(from + 1, possible);
            }
        }
    }

    private void takeEnds(int[] possible) {
        int count = findings.length;
        int[] low = new int[count];
        int[] high = new int[count];
        boolean open = false;
        boolean forked = false;
        Tally known = Tally.empty(reading.checklist);
        for (int f = 0; f < count; f++) {
            int set = possible[f];
            if ((set & set - 1) == 0) {
                int level = Integer.numberOfTrailingZeros(set);
                low[f] = level;
                high[f] = level;
                known.add(findings[f], level);
            } else if (set == findings[f].all) {
                low[f] = 0;
                high[f] = findings[f].worst;
                open = true;
            } else {
                byte[] mild = findings[f].mildestOf(set);
                byte[] worst = findings[f].worstOf(set);
                low[f] = mild[0];
                high[f] = worst[0];
                forked |= mild.length > 1 || worst.length > 1;
                open = true;
            }
        }
        if (forked) {
            tryEnds(0, possible, low, false);
            tryEnds(0, possible, high, true);
        } else if (!open) {
            known.decide(reading.circumstances, low);
            takeLow(known, low);
            takeHigh(known, high);
        } else {
            // What is known is added up once for both ends.
            Tally most = known.copy();
            for (int f = 0; f < count; f++) {
                if ((possible[f] & possible[f] - 1) != 0) {
                    known.add(findings[f], low[f]);
                    most.add(findings[f], high[f]);
                }
            }
            takeLow(known.decide(reading.circumstances, low), low);
            takeHigh(most.decide(reading.circumstances, high), high);
        }
    }

    private void tryEnds(int from, int[] possible, int[] levels, boolean worst) {
        for (int f = from; f < findings.length; f++) {
            byte[] ends = worst ? findings[f].worstOf(possible[f]) : findings[f].mildestOf(possible[f]);
            if (ends.length > 1) {
                for (byte end : ends) {
                    levels[f] = end;
                    tryEnds(f + 1, possible, levels, worst);
                }
                return;
            }
        }
        Tally tally = Tally.of(reading.circumstances, levels);
        if (worst) {
            takeHigh(tally, levels.clone());
        } else {
            takeLow(tally, levels.clone());
        }
    }

    private void takeLow(Tally tally, int[] levels) {
        sectionLeast = lowest == null ? tally.sections : ofBoth(sectionLeast, tally.sections, Math::min);
        if (lowest == null || Integer.bitCount(tally.routes) < Integer.bitCount(lowestRoutes)) {
            lowestRoutes = tally.routes;
        }
        // Of equal outcomes the one with the fewest points, so that the reasons add up to the least total.
        if (lowest == null
                || tally.outcome < lowest.outcome
                || tally.outcome == lowest.outcome && tally.raised < lowest.raised) {
            lowest = tally;
            lowestLevels = levels;
        }
        leastRaised = Math.min(leastRaised, tally.raised);
    }

    private void takeHigh(Tally tally, int[] levels) {
        sectionMost = highest == null ? tally.sections : ofBoth(sectionMost, tally.sections, Math::max);
        highestRoutes |= tally.routes;
        if (highest == null
                || tally.outcome > highest.outcome
                || tally.outcome == highest.outcome && tally.raised > highest.raised) {
            highest = tally;
            highestLevels = levels;
        }
        mostRaised = Math.max(mostRaised, tally.raised);
    }

    private static int[] ofBoth(int[] one, int[] other, IntBinaryOperator choice) {
        int[] both = new int[one.length];
        Arrays.setAll(both, s -> choice.applyAsInt(one[s], other[s]));
        return both;
    }
}
