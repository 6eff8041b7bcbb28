package varanid.intake.scoring;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Which outcome a sum of points allows at least. */
final class Bands {

    /** Ascending, with the worst outcome that any of them up to here asks for. */
    private final int[] threshold;

    private final int[] outcome;

    /**
     * @param base what the reassuring levels alone sum up to; thresholds are kept as points above it
     */
    Bands(Checklist checklist, List<ChecklistDraft.Band> bands, int base) {
        List<ChecklistDraft.Band> ascending = new ArrayList<>(bands);
        ascending.sort(Comparator.comparingInt(band -> checklist.severity(band.threshold())));
        threshold = new int[ascending.size()];
        outcome = new int[threshold.length];
        int worst = 0;
        for (int i = 0; i < threshold.length; i++) {
            ChecklistDraft.Band band = ascending.get(i);
            worst = Math.max(worst, checklist.outcome(band.outcome()));
            threshold[i] = checklist.severity(band.threshold()) - base;
            outcome[i] = worst;
        }
    }

    int outcomeOf(int raised) {
        int reached = 0;
        for (int i = 0; i < threshold.length && raised >= threshold[i]; i++) {
            reached = outcome[i];
        }
        return reached;
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
