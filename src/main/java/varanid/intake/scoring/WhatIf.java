package varanid.intake.scoring;

/**
 * What a look would come to at least, had some findings been seen at other levels.
 *
 * <p>Exact: the look is read again whenever the other level could change how something else is read. Mostly it cannot,
 * and then changing that level in the mildest completion gives the same.
 */
final class WhatIf {

    /** A finding and the level that it is supposed to be at. */
    record Step(int finding, int to) {}

    private final Reading reading;
    private final Bounds bounds;
    private final boolean forked;
    private final boolean[] touchesOthers;

    WhatIf(Reading reading, Bounds bounds) {
        this.reading = reading;
        this.bounds = bounds;
        Checklist checklist = reading.checklist;
        touchesOthers = new boolean[checklist.findings.length];
        boolean fork = false;
        for (FindingRules finding : checklist.findings) {
            fork |= finding.mildestOf(reading.possible[finding.index]).length > 1;
            if (finding.driver >= 0) {
                touchesOthers[finding.index] = true;
                touchesOthers[finding.driver] = true;
            }
        }
        forked = fork;
        for (ImplicationRules implication : checklist.implications) {
            touchesOthers[implication.finding] = true;
            touchesOthers[implication.then] = true;
        }
    }

    /** Whether another level of this finding could change how other findings are read. */
    boolean touchesOthers(int finding) {
        return touchesOthers[finding];
    }

    /** Whether the steps contradict each other or the other answers. */
    record Supposed(boolean contradictory, int outcome, int routes) {}

    Supposed lowestAfter(Step... steps) {
        boolean plain = !forked;
        for (Step step : steps) {
            FindingRules finding = reading.checklist.findings[step.finding()];
            plain &= !touchesOthers[step.finding()] && reading.circumstances.findExcuse(finding, step.to()) == null;
        }
        return plain ? inMildestCompletion(steps) : readAgain(steps);
    }

    private Supposed inMildestCompletion(Step[] steps) {
        int[] levels = bounds.lowestLevels.clone();
        for (Step step : steps) {
            levels[step.finding()] = step.to();
        }
        Tally tally = Tally.of(reading.circumstances, levels);
        return new Supposed(false, tally.outcome, tally.routes);
    }

    private Supposed readAgain(Step[] steps) {
        int[] findings = new int[steps.length];
        int[] levels = new int[steps.length];
        for (int i = 0; i < steps.length; i++) {
            findings[i] = steps[i].finding();
            levels[i] = steps[i].to();
        }
        Reading other = reading.supposing(findings, levels);
        Bounds then = Bounds.of(other);
        return new Supposed(other.contradictory, then.lowest().outcome, then.lowestRoutes);
    }
}
