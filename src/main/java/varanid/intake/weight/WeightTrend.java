package varanid.intake.weight;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What an animal's weighings say as of a day.
 *
 * @param latest the latest weighing up to that day
 * @param changes from each weighing that it can be compared with, oldest first
 * @param slope empty with fewer than three comparable weighing days
 * @param thresholds each that is for the life stage, the most urgent first
 * @param answer to the checklist
 * @param caveats everything that a reader of the trend should know
 */
public record WeightTrend(
        Weighing latest,
        List<PercentChange> changes,
        Optional<WeightSlope> slope,
        List<Judged> thresholds,
        TrendAnswer answer,
        List<Caveat> caveats) {

    /** The finding of the checklist that it answers. */
    public static final String FINDING = "weight-trend";

    public WeightTrend {
        changes = List.copyOf(changes);
        thresholds = List.copyOf(thresholds);
        caveats = List.copyOf(caveats);
    }

    /**
     * The trend; empty where there is no weighing up to that day.
     *
     * @param weighings in any order; later ones than {@code asOf} are left aside
     * @param lifeStage its code, {@code unknown} where nobody knows
     * @param asOf the local date to speak of
     */
    public static Optional<WeightTrend> find(
            List<Weighing> weighings, String lifeStage, LocalDate asOf, WeightRules rules) {
        return TrendFinder.find(weighings, lifeStage, asOf, rules);
    }
}
