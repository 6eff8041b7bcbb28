package varanid.intake.weight;

import java.time.LocalDate;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import varanid.intake.animal.LifeStage;
import varanid.intake.condition.BodyConditionView;

/** A trend as it is shown: every statement with the readings it comes from, and in words. */
final class TrendShown {

    private final WeightTrend trend;
    private final Map<UUID, KnownWeighing> known;
    private final WeightRules rules;

    /** @param known the weighings that the trend was made from, and maybe more */
    TrendShown(WeightTrend trend, List<KnownWeighing> known, WeightRules rules) {
        this.trend = trend;
        this.known =
                known.stream().collect(Collectors.toMap(each -> each.weighing().id(), Function.identity()));
        this.rules = rules;
    }

    WeightTrendView view(LocalDate asOf, LifeStage lifeStage, BodyConditionView condition) {
        return new WeightTrendView(
                asOf,
                lifeStage,
                reading(trend.latest()),
                trend.changes().stream().map(this::change).toList(),
                trend.slope().map(this::slope).orElse(null),
                trend.thresholds().stream().map(this::threshold).toList(),
                caveats(trend.caveats()),
                WeightTrendView.AnswerView.of(answer()),
                whatToDo(),
                condition);
    }

    private WeightTrendView.ChangeView change(PercentChange change) {
        return new WeightTrendView.ChangeView(
                reading(change.from()),
                change.overDays(),
                change.lowest(),
                change.percent(),
                change.highest(),
                rounded(change.growthPercentPerDay()),
                caveats(change.caveats()).stream().map(CaveatView::caveat).toList(),
                TrendWords.of(change));
    }

    private WeightTrendView.SlopeView slope(WeightSlope slope) {
        WeightSlope.@Nullable Interval interval = slope.interval().orElse(null);
        return new WeightTrendView.SlopeView(
                slope.from(),
                slope.to(),
                slope.overDays(),
                slope.weighingDays(),
                slope.heavy(),
                rounded(slope.percentPerDay()),
                interval == null
                        ? null
                        : new WeightTrendView.SlopeIntervalView(
                                rounded(interval.lowest()),
                                rounded(interval.highest()),
                                rounded(interval.lowestWithRounding()),
                                rounded(interval.highestWithRounding()),
                                rounded(interval.coverage())),
                rules.slope().method(),
                TrendWords.of(slope, trend.latest()));
    }

    private WeightTrendView.ThresholdView threshold(Judged judged) {
        WeightRules.Threshold it = judged.threshold();
        @Nullable
        TrendEvidence evidence = judged.fold(
                Judged.Past::evidence,
                Judged.NotPast::evidence,
                open -> open.evidence().orElse(null));
        List<Caveat> why = judged.fold(past -> List.of(), notPast -> List.of(), Judged.CannotTell::why);
        return new WeightTrendView.ThresholdView(
                it.id(),
                it.text(),
                it.urgency(),
                judged.fold(past -> "past", notPast -> "not-past", cannotTell -> "cannot-tell"),
                it.atMostPercent(),
                it.atLeastDays(),
                it.withinDays(),
                evidence == null ? null : evidence(evidence),
                caveats(why),
                it.source().stream()
                        .map(letter -> Objects.requireNonNull(rules.sources().get(letter)))
                        .toList());
    }

    private WeightTrendView.EvidenceView evidence(TrendEvidence evidence) {
        return new WeightTrendView.EvidenceView(
                kind(evidence),
                readings(evidence),
                evidence.overDays(),
                evidence.lowest(),
                evidence.highest(),
                TrendWords.of(evidence, trend.latest()));
    }

    /** What is answered to the checklist, and where that comes from. */
    AnswerFromWeighings answer() {
        TrendAnswer answer = trend.answer();
        return new AnswerFromWeighings(answer, answer.fold(this::measured, this::notYetDue, this::notComparable));
    }

    private AnswerSource measured(TrendAnswer.Measured measured) {
        TrendEvidence evidence = measured.evidence();
        List<Caveat> caveats = evidence.fold(
                two -> List.copyOf(two.change().caveats()),
                it -> it.slope().heavy() > 0 ? List.of(Caveat.SLOPE_HOLDS_HEAVY) : List.of());
        return new AnswerSource(
                kind(evidence), TrendWords.of(evidence, trend.latest()), readings(evidence), null, caveats(caveats));
    }

    private AnswerSource notYetDue(TrendAnswer.NotYetDue waiting) {
        return new AnswerSource(
                "not-yet-due",
                "Weighed " + TrendWords.grams(trend.latest()) + " on "
                        + trend.latest().day() + ". The second weighing is due on " + waiting.due() + ".",
                List.of(reading(trend.latest())),
                waiting.due(),
                caveats(trend.caveats()));
    }

    private AnswerSource notComparable(TrendAnswer.NotObserved not) {
        return new AnswerSource(
                "not-comparable",
                "Weighed " + TrendWords.grams(trend.latest()) + " on "
                        + trend.latest().day() + ". Its weighings do not tell a change up to the day of the look.",
                List.of(reading(trend.latest())),
                null,
                caveats(not.why()));
    }

    /** The most pressing first, each once. */
    private List<String> whatToDo() {
        boolean past = trend.thresholds().stream().anyMatch(Judged.Past.class::isInstance);
        boolean waiting = trend.answer() instanceof TrendAnswer.NotYetDue;
        Set<Caveat> inTheWay = new LinkedHashSet<>();
        trend.thresholds()
                .forEach(each -> inTheWay.addAll(each.fold(it -> List.of(), it -> List.of(), Judged.CannotTell::why)));
        if (waiting) {
            inTheWay.remove(Caveat.NO_REFERENCE);
        }
        trend.caveats().stream().filter(Caveat.STALE::equals).forEach(inTheWay::add);
        return Stream.of(
                        past ? Stream.of(advice(WeightRules.Advice.PAST)) : Stream.<String>empty(),
                        Stream.of(advice(waiting ? WeightRules.Advice.SECOND_WEIGHING : WeightRules.Advice.GO_ON)),
                        caveats(inTheWay).stream().map(CaveatView::text))
                .flatMap(each -> each)
                .toList();
    }

    private String advice(WeightRules.Advice advice) {
        return Objects.requireNonNull(rules.advice().get(advice));
    }

    private List<CaveatView> caveats(Collection<Caveat> caveats) {
        return CaveatView.listOf(caveats, rules);
    }

    private static String kind(TrendEvidence evidence) {
        return evidence.fold(two -> "two-readings", slope -> "slope");
    }

    private List<ReadingView> readings(TrendEvidence evidence) {
        return evidence.fold(
                two -> List.of(
                        reading(two.change().from()), reading(two.change().to())),
                slope -> List.of());
    }

    private ReadingView reading(Weighing weighing) {
        return ReadingView.of(Objects.requireNonNull(known.get(weighing.id())));
    }

    /** Six figures after the point, as percentages have. */
    private static double rounded(double value) {
        return Math.round(value * 1e6) / 1e6;
    }
}
