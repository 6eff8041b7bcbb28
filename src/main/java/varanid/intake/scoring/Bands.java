package varanid.intake.scoring;

import java.util.List;

/** Which outcome a sum of points allows at least. */
final class Bands {

    private final int[] threshold;
    private final int[] outcome;

    /**
     * @param base what the reassuring levels alone sum up to; thresholds are kept as points above it
     */
    Bands(Checklist checklist, List<ChecklistDraft.Band> bands, int base) {
        threshold = new int[bands.size()];
        outcome = new int[bands.size()];
        for (int i = 0; i < threshold.length; i++) {
            ChecklistDraft.Band band = bands.get(i);
            threshold[i] = checklist.severity(band.threshold()) - base;
            outcome[i] = checklist.outcome(band.outcome());
        }
    }

    int outcomeOf(int raised) {
        int worst = 0;
        for (int i = 0; i < threshold.length; i++) {
            if (raised >= threshold[i] && outcome[i] > worst) {
                worst = outcome[i];
            }
        }
        return worst;
    }

    boolean isEmpty() {
        return threshold.length == 0;
    }

    /** The fewest raised points that lead beyond this outcome, or the largest integer when none do. */
    int leastBeyond(int beyond) {
        int least = Integer.MAX_VALUE;
        for (int i = 0; i < threshold.length; i++) {
            if (outcome[i] > beyond) {
                least = Math.min(least, threshold[i]);
            }
        }
        return least;
    }
}
