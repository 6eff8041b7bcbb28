package varanid.intake.scoring;

import java.util.Objects;
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
    private final Circumstances circumstances;
    private final FindingRules[] findings;

    @Nullable
    Tally lowest;

    int[] lowestLevels = {};

    @Nullable
    Tally highest;

    int[] highestLevels = {};
    /** The mildest completion in which no condition excuses anything. */
    @Nullable
    Tally unexcused;

    int leastRaised = Integer.MAX_VALUE;
    int mostRaised = Integer.MIN_VALUE;
    final int[] sectionLeast;
    final int[] sectionMost;
    int lowestRoutes;
    int highestRoutes;

    private Bounds(Reading reading) {
        this.reading = reading;
        circumstances = reading.circumstances;
        findings = reading.checklist.findings;
        sectionLeast = new int[reading.checklist.sectionBands.length];
        sectionMost = new int[sectionLeast.length];
    }

    static Bounds of(Reading reading) {
        Bounds bounds = new Bounds(reading);
        bounds.fixDrivers(0, new int[bounds.findings.length]);
        return bounds;
    }

    Tally lowest() {
        return Objects.requireNonNull(lowest);
    }

    Tally highest() {
        return Objects.requireNonNull(highest);
    }

    Tally unexcused() {
        return Objects.requireNonNull(unexcused);
    }

    private void fixDrivers(int from, int[] levels) {
        int[] drivers = reading.checklist.drivers;
        if (from == drivers.length) {
            takeEnds(drivers, levels);
            return;
        }
        int driver = drivers[from];
        int set = reading.possible[driver];
        for (int l = 0; l < findings[driver].levels.length; l++) {
            if ((set & 1 << l) != 0) {
                reading.drive(driver, l);
                levels[driver] = l;
                fixDrivers(from + 1, levels);
            }
        }
    }

    private void takeEnds(int[] drivers, int[] driven) {
        int count = findings.length;
        int[] low = new int[count];
        int[] high = new int[count];
        boolean one = true;
        boolean forked = false;
        for (int f = 0; f < count; f++) {
            byte[] mild = findings[f].mildestOf(reading.possible[f]);
            byte[] worst = findings[f].worstOf(reading.possible[f]);
            low[f] = mild[0];
            high[f] = worst[0];
            one &= mild[0] == worst[0];
            forked |= mild.length > 1 || worst.length > 1;
        }
        for (int driver : drivers) {
            low[driver] = driven[driver];
            high[driver] = driven[driver];
        }
        if (forked) {
            tryEnds(0, low, false);
            tryEnds(0, high, true);
        } else {
            Tally tally = Tally.of(circumstances, low);
            takeLow(tally, low);
            takeHigh(one ? tally : Tally.of(circumstances, high), high);
        }
        if (reading.anyExcuse) {
            int[] seen = reading.seen.clone();
            for (int driver : drivers) {
                seen[driver] = driven[driver];
            }
            takeUnexcused(Tally.of(circumstances, seen));
        } else {
            unexcused = lowest;
        }
    }

    private void tryEnds(int from, int[] levels, boolean worst) {
        for (int f = from; f < findings.length; f++) {
            byte[] ends = worst ? findings[f].worstOf(reading.possible[f]) : findings[f].mildestOf(reading.possible[f]);
            if (ends.length > 1 && !isDriver(f)) {
                for (byte end : ends) {
                    levels[f] = end;
                    tryEnds(f + 1, levels, worst);
                }
                return;
            }
        }
        Tally tally = Tally.of(circumstances, levels);
        if (worst) {
            takeHigh(tally, levels.clone());
        } else {
            takeLow(tally, levels.clone());
        }
    }

    private boolean isDriver(int finding) {
        for (int driver : reading.checklist.drivers) {
            if (driver == finding) {
                return true;
            }
        }
        return false;
    }

    private void takeLow(Tally tally, int[] levels) {
        if (lowest == null || tally.outcome < lowest.outcome) {
            lowestLevels = levels;
        }
        if (lowest == null) {
            System.arraycopy(tally.sections, 0, sectionLeast, 0, sectionLeast.length);
            lowestRoutes = tally.routes;
        } else {
            for (int s = 0; s < sectionLeast.length; s++) {
                sectionLeast[s] = Math.min(sectionLeast[s], tally.sections[s]);
            }
            lowestRoutes =
                    Integer.bitCount(tally.routes) < Integer.bitCount(lowestRoutes) ? tally.routes : lowestRoutes;
        }
        if (lowest == null || tally.outcome < lowest.outcome) {
            lowest = tally;
        }
        leastRaised = Math.min(leastRaised, tally.raised);
    }

    private void takeHigh(Tally tally, int[] levels) {
        for (int s = 0; s < sectionMost.length; s++) {
            sectionMost[s] = highest == null ? tally.sections[s] : Math.max(sectionMost[s], tally.sections[s]);
        }
        highestRoutes |= tally.routes;
        if (highest == null || tally.outcome > highest.outcome) {
            highest = tally;
            highestLevels = levels;
        }
        mostRaised = Math.max(mostRaised, tally.raised);
    }

    private void takeUnexcused(Tally tally) {
        if (unexcused == null || tally.outcome < unexcused.outcome) {
            unexcused = tally;
        }
    }
}
