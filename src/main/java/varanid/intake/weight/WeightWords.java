package varanid.intake.weight;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * What an animal's weighings say, in words, for whoever reads a page about it.
 *
 * @param weighings that stand, oldest first, never none
 * @param change from the earliest weighing that the latest can be compared with
 * @param slope how fast it goes up or down
 * @param past each loss that is beyond doubt, the most urgent first
 * @param cannotTell each that the readings leave open
 * @param caveats what a reader of it should know
 * @param massForLength what the mass asks at that length; never a verdict
 */
public record WeightWords(
        List<On> weighings,
        Optional<String> change,
        Optional<String> slope,
        List<Past> past,
        List<String> cannotTell,
        List<String> caveats,
        Optional<String> massForLength) {

    public WeightWords {
        weighings = List.copyOf(weighings);
        past = List.copyOf(past);
        cannotTell = List.copyOf(cannotTell);
        caveats = List.copyOf(caveats);
    }

    /**
     * One weighing.
     *
     * @param id which weighing
     * @param shown what the scale showed
     * @param stepGrams the scale's smallest step
     * @param scale which scale
     * @param heavy whether it was wet or had eaten shortly before
     */
    public record On(
            UUID id,
            Instant at,
            LocalDate day,
            String shown,
            BigDecimal grams,
            Optional<BigDecimal> stepGrams,
            Optional<String> scale,
            boolean heavy) {}

    /** A loss that is beyond doubt, how soon a vet should see it, and from what it is read. */
    public record Past(String text, String urgency, Optional<String> evidence) {}

    static WeightWords of(WeightTrendView view, List<Weighing> weighings, WeightRules rules) {
        return new WeightWords(
                weighings.stream()
                        .map(each -> new On(
                                each.id(),
                                each.at(),
                                each.day(),
                                TrendWords.grams(each),
                                each.mass().grams(),
                                Optional.ofNullable(each.resolution())
                                        .map(step -> step.step()
                                                .multiply(each.mass().unit().grams())),
                                Optional.ofNullable(each.scale()),
                                each.wet() || each.isFedWithin(rules.heavyFor())))
                        .toList(),
                view.changes().stream().findFirst().map(WeightTrendView.ChangeView::text),
                Optional.ofNullable(view.slope()).map(WeightTrendView.SlopeView::text),
                view.thresholds().stream()
                        .filter(each -> each.state().equals("past"))
                        .map(each -> new Past(
                                each.text(),
                                each.urgency(),
                                Optional.ofNullable(each.evidence()).map(WeightTrendView.EvidenceView::text)))
                        .toList(),
                view.thresholds().stream()
                        .filter(each -> each.state().equals("cannot-tell"))
                        .map(WeightTrendView.ThresholdView::text)
                        .toList(),
                view.caveats().stream().map(CaveatView::text).toList(),
                Optional.ofNullable(view.bodyCondition()).flatMap(it -> it.massForLengthQuestion()));
    }
}
