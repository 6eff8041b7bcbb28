package varanid.intake.scoring;

import java.math.BigDecimal;

/**
 * How urgent and how apart, without the words: what a look decides, as cheaply as it can be had.
 *
 * <p>{@code lowest} and {@code highest} are exact: no completion of the look is milder or worse. {@code recommended} is
 * the lowest, raised while a must-see finding is unseen or an answer is excused.
 */
public final class Decision {

    private final Checklist checklist;
    private final int recommended;
    private final int lowest;
    private final int highest;
    private final int leastRaised;
    private final int mostRaised;
    private final int recommendedRoutes;
    private final int seenRoutes;
    private final int highestRoutes;
    /** What the answers come to if no condition excuses any of them. */
    private final Bounds unexcused;

    Decision(Reading reading, Bounds bounds) {
        checklist = reading.checklist;
        lowest = bounds.lowest().outcome;
        highest = bounds.highest().outcome;
        leastRaised = bounds.leastRaised;
        mostRaised = bounds.mostRaised;
        int raisedTo = Math.max(lowest, precaution(reading));
        recommended = Math.max(raisedTo, meanwhile(reading));
        unexcused = reading.anyExcuse ? Bounds.of(reading.unexcused()) : bounds;
        seenRoutes = unexcused.lowestRoutes;
        int exposure = checklist.unknownExposureRoutes(reading);
        recommendedRoutes = seenRoutes | exposure;
        highestRoutes = bounds.highestRoutes | recommendedRoutes;
    }

    /** The outcome that the precaution rule asks for: 0 once every must-see finding is known. */
    static int precaution(Reading reading) {
        Checklist checklist = reading.checklist;
        if (checklist.precautionOutcome > 0) {
            for (int finding : reading.circumstances.mustSee) {
                if (Integer.bitCount(reading.possible[finding]) > 1) {
                    return checklist.precautionOutcome;
                }
            }
        }
        return 0;
    }

    /** The outcome that holds until excused answers have been looked at again. */
    static int meanwhile(Reading reading) {
        int most = 0;
        if (reading.anyExcuse) {
            for (Circumstances.Excuse excuse : reading.excuses) {
                if (excuse != null && excuse.terms().meanwhile() != null) {
                    most = Math.max(
                            most, reading.checklist.outcome(excuse.terms().meanwhile()));
                }
            }
        }
        return most;
    }

    public String recommended() {
        return checklist.outcomeCode(recommended);
    }

    public String lowest() {
        return checklist.outcomeCode(lowest);
    }

    public String highest() {
        return checklist.outcomeCode(highest);
    }

    /** Whether no further answer can change the outcome or the isolation. */
    public boolean isSettled() {
        return lowest == highest && (seenRoutes != 0) == (highestRoutes != 0);
    }

    /** The least points a completion of the look may have; the most where few points are bad news. */
    public BigDecimal lowestPoints() {
        return checklist.totalPoints(leastRaised);
    }

    public BigDecimal highestPoints() {
        return checklist.totalPoints(mostRaised);
    }

    /** Whether the checklist's strictest isolation is recommended; false too where it decides no isolation. */
    public boolean isStrictRecommended() {
        return recommendedRoutes != 0;
    }

    public boolean isStrictPossible() {
        return highestRoutes != 0;
    }

    int unexcusedIndex() {
        return unexcused.lowest().outcome;
    }

    int recommendedIndex() {
        return recommended;
    }

    int lowestIndex() {
        return lowest;
    }

    int highestIndex() {
        return highest;
    }

    int recommendedRoutes() {
        return recommendedRoutes;
    }

    int highestRoutes() {
        return highestRoutes;
    }
}
