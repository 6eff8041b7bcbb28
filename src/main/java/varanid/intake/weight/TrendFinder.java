package varanid.intake.weight;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Works out a {@link WeightTrend}. */
final class TrendFinder {

    private static final Set<Caveat> HEAVY_REFERENCE = Set.of(Caveat.REFERENCE_FED, Caveat.REFERENCE_WET);
    private static final Set<Caveat> HEAVY_LATEST = Set.of(Caveat.LATEST_FED, Caveat.LATEST_WET);

    private final List<Weighing> weighings;
    private final Weighing latest;
    private final LocalDate asOf;
    private final WeightRules rules;
    private final OneScale oneScale;
    private final List<PercentChange> changes;

    private TrendFinder(List<Weighing> weighings, LocalDate asOf, WeightRules rules) {
        this.weighings = weighings;
        this.latest = weighings.get(weighings.size() - 1);
        this.asOf = asOf;
        this.rules = rules;
        this.oneScale = new OneScale(weighings, latest, rules);
        this.changes = oneScale.find(latest)
                .map(end -> oneScale.placed().stream()
                        .filter(each -> daysBefore(each.weighing()) >= 1)
                        .map(each -> PercentChange.between(
                                each.weighing(), each.grams(), latest, end.grams(), caveats(each)))
                        .toList())
                .orElse(List.of());
    }

    static Optional<WeightTrend> find(List<Weighing> weighings, String lifeStage, LocalDate asOf, WeightRules rules) {
        List<Weighing> inOrder = weighings.stream()
                .filter(each -> !each.day().isAfter(asOf))
                .sorted(Comparator.comparing(Weighing::at).thenComparing(Weighing::id))
                .toList();
        return inOrder.isEmpty()
                ? Optional.empty()
                : Optional.of(new TrendFinder(inOrder, asOf, rules).trend(lifeStage));
    }

    private WeightTrend trend(String lifeStage) {
        List<Judged> judged = rules.thresholds().stream()
                .filter(each -> each.isFor(lifeStage))
                .map(this::judge)
                .toList();
        Optional<WeightSlope> slope = findSlope(rules.slope().longestDays());
        return new WeightTrend(latest, changes, slope, judged, answer(judged), allCaveats(slope));
    }

    private int daysBefore(Weighing reference) {
        return Math.toIntExact(ChronoUnit.DAYS.between(reference.day(), latest.day()));
    }

    // ---- what may have moved a comparison

    private Set<Caveat> caveats(OneScale.Placed reference) {
        Set<Caveat> caveats = EnumSet.noneOf(Caveat.class);
        Weighing from = reference.weighing();
        if (from.isFedWithin(rules.heavyFor())) {
            caveats.add(Caveat.REFERENCE_FED);
        }
        if (from.wet()) {
            caveats.add(Caveat.REFERENCE_WET);
        }
        caveats.addAll(caveatsOfLatest());
        if (from.sinceFood() == null || latest.sinceFood() == null) {
            caveats.add(Caveat.FOOD_UNKNOWN);
        }
        if (reference.throughPair()) {
            caveats.add(Caveat.THROUGH_PAIR);
        }
        return caveats;
    }

    private Set<Caveat> caveatsOfLatest() {
        Set<Caveat> caveats = EnumSet.noneOf(Caveat.class);
        if (latest.isFedWithin(rules.heavyFor())) {
            caveats.add(Caveat.LATEST_FED);
        }
        if (latest.wet()) {
            caveats.add(Caveat.LATEST_WET);
        }
        return caveats;
    }

    private boolean mayBeHeavy(Weighing weighing) {
        return weighing.wet() || weighing.isFedWithin(rules.heavyFor());
    }

    private boolean isStale() {
        return ChronoUnit.DAYS.between(latest.day(), asOf) > rules.answer().staleAfterDays();
    }

    private List<Caveat> allCaveats(Optional<WeightSlope> slope) {
        Set<Caveat> all = EnumSet.noneOf(Caveat.class);
        changes.forEach(each -> all.addAll(each.caveats()));
        all.addAll(caveatsOfLatest());
        all.addAll(oneScale.whyLeftOut(each -> true));
        if (slope.map(WeightSlope::heavy).orElse(0) > 0) {
            all.add(Caveat.SLOPE_HOLDS_HEAVY);
        }
        if (isStale()) {
            all.add(Caveat.STALE);
        }
        return List.copyOf(all);
    }

    // ---- thresholds

    private Judged judge(WeightRules.Threshold threshold) {
        BigDecimal limit = threshold.atMostPercent();
        List<PercentChange> inTime = changes.stream()
                .filter(each -> threshold.takes(each.overDays()))
                .toList();
        Optional<TrendEvidence> past = Stream.concat(
                        inTime.stream()
                                .filter(each -> each.isSurelyAtMost(limit))
                                .map(each -> (TrendEvidence) new TrendEvidence.TwoReadings(each)),
                        slopeEvidence(threshold).stream())
                .filter(each -> each.highest().compareTo(limit) <= 0)
                .min(Comparator.comparing(TrendEvidence::highest).thenComparing(TrendEvidence::overDays));
        if (past.isPresent()) {
            return new Judged.Past(threshold, past.get());
        }
        if (inTime.isEmpty()) {
            return new Judged.CannotTell(threshold, whyNothingToCompare(threshold), Optional.empty());
        }
        List<PercentChange> open =
                inTime.stream().filter(each -> !each.isSurelyAbove(limit)).toList();
        if (open.isEmpty()) {
            return new Judged.NotPast(
                    threshold,
                    inTime.stream()
                            .max(Comparator.comparing(PercentChange::overDays))
                            .map(TrendEvidence.TwoReadings::new)
                            .orElseThrow());
        }
        Set<Caveat> why = EnumSet.noneOf(Caveat.class);
        open.forEach(each -> why.addAll(whyOpen(each, limit)));
        return new Judged.CannotTell(
                threshold,
                List.copyOf(why),
                open.stream()
                        .min(Comparator.comparing(PercentChange::lowest).thenComparing(PercentChange::overDays))
                        .map(TrendEvidence.TwoReadings::new));
    }

    /** Which of its caveats keep a comparison from deciding; a finer scale where its ends lie on both sides. */
    private static Set<Caveat> whyOpen(PercentChange change, BigDecimal limit) {
        if (change.highest().compareTo(limit) <= 0) {
            return common(change.caveats(), HEAVY_REFERENCE);
        }
        return change.lowest().compareTo(limit) > 0
                ? common(change.caveats(), HEAVY_LATEST)
                : EnumSet.of(Caveat.FINER_SCALE);
    }

    private static Set<Caveat> common(Set<Caveat> some, Set<Caveat> others) {
        Set<Caveat> both = EnumSet.copyOf(others);
        both.retainAll(some);
        return both;
    }

    private List<Caveat> whyNothingToCompare(WeightRules.Threshold threshold) {
        Set<Caveat> why = oneScale.whyLeftOut(each -> each.equals(latest) || threshold.takes(daysBefore(each)));
        return why.isEmpty() ? List.of(Caveat.NO_REFERENCE) : List.copyOf(why);
    }

    // ---- the slope

    /** A slope confirms that a threshold is past; it never reassures, and it never reaches beyond its own days. */
    private Optional<TrendEvidence> slopeEvidence(WeightRules.Threshold threshold) {
        return findSlope(Math.min(threshold.withinDays(), rules.slope().longestDays()))
                .filter(each -> threshold.takes(each.overDays()))
                .filter(each -> each.heavy() < rules.slope().heavyShareBelow() * each.weighingDays())
                .flatMap(each -> each.interval().map(interval -> new TrendEvidence.Slope(each, interval)));
    }

    private Optional<WeightSlope> findSlope(int longestDays) {
        if (oneScale.find(latest).isEmpty()) {
            return Optional.empty();
        }
        TreeMap<LocalDate, OneScale.Placed> perDay = new TreeMap<>();
        for (OneScale.Placed each : oneScale.placed()) {
            if (daysBefore(each.weighing()) <= longestDays) {
                perDay.merge(each.weighing().day(), each, this::better);
            }
        }
        if (perDay.size() < rules.slope().weighingDays()) {
            return Optional.empty();
        }
        List<OneScale.Placed> points = List.copyOf(perDay.values());
        double[] days = points.stream()
                .mapToDouble(each -> each.weighing().day().toEpochDay())
                .toArray();
        TheilSen line = new TheilSen(days, logs(points, Bound.SHOWN));
        Optional<WeightSlope.Interval> interval = perDay.size() < rules.slope().intervalFrom()
                ? Optional.empty()
                : line.interval(rules.slope().confidence()).map(shown -> interval(line, shown, points));
        return Optional.of(new WeightSlope(
                perDay.firstKey(),
                perDay.lastKey(),
                perDay.size(),
                (int) points.stream()
                        .filter(each -> mayBeHeavy(each.weighing()))
                        .count(),
                100 * line.slope(),
                interval));
    }

    private WeightSlope.Interval interval(TheilSen line, TheilSen.Interval shown, List<OneScale.Placed> points) {
        TheilSen.Interval all = line.interval(
                        rules.slope().confidence(), logs(points, Bound.LOWEST), logs(points, Bound.HIGHEST))
                .orElseThrow();
        return new WeightSlope.Interval(
                100 * shown.low(), 100 * shown.high(), 100 * all.low(), 100 * all.high(), shown.coverage());
    }

    /** One weighing a day: on the latest scale before another, unfed and dry before heavy, then the later one. */
    private OneScale.Placed better(OneScale.Placed earlier, OneScale.Placed later) {
        if (earlier.throughPair() != later.throughPair()) {
            return earlier.throughPair() ? later : earlier;
        }
        return mayBeHeavy(later.weighing()) && !mayBeHeavy(earlier.weighing()) ? earlier : later;
    }

    private enum Bound {
        LOWEST,
        SHOWN,
        HIGHEST
    }

    private static double[] logs(List<OneScale.Placed> points, Bound bound) {
        return points.stream()
                .map(OneScale.Placed::grams)
                .map(grams -> switch (bound) {
                    case LOWEST -> grams.lowest();
                    case SHOWN -> grams.shown();
                    case HIGHEST -> grams.highest();
                })
                .mapToDouble(each -> Math.log(each.doubleValue()))
                .toArray();
    }

    // ---- the checklist's question

    /**
     * What is past comes first, then what is open over at least the days that a second weighing takes, then the plainest
     * comparison of at least as many days.
     */
    private TrendAnswer answer(List<Judged> judged) {
        if (isStale()) {
            return new TrendAnswer.NotObserved(List.of(Caveat.STALE));
        }
        return Stream.of(
                        judged.stream()
                                .flatMap(each -> each
                                        .<Optional<TrendEvidence>>fold(
                                                past -> Optional.of(past.evidence()),
                                                notPast -> Optional.empty(),
                                                cannotTell -> Optional.empty())
                                        .stream()),
                        judged.stream()
                                .flatMap(each -> each
                                        .<Optional<TrendEvidence>>fold(
                                                past -> Optional.empty(),
                                                notPast -> Optional.empty(),
                                                cannotTell -> cannotTell.evidence())
                                        .stream())
                                .filter(each ->
                                        each.overDays() >= rules.answer().dueAfterDays()),
                        changes.stream()
                                .sorted(Comparator.comparing((PercentChange each) -> mayBeHeavy(each.from()))
                                        .thenComparing(PercentChange::overDays))
                                .map(each -> (TrendEvidence) new TrendEvidence.TwoReadings(each))
                                .filter(each ->
                                        each.overDays() >= rules.answer().dueAfterDays()))
                .flatMap(each -> each)
                .filter(each -> each.overDays() <= rules.answer().longestDays())
                .findFirst()
                .<TrendAnswer>map(this::measured)
                .orElseGet(this::unmeasured);
    }

    private TrendAnswer measured(TrendEvidence evidence) {
        BigDecimal least = rules.answer().lowestPercent();
        BigDecimal greatest = rules.answer().highestPercent();
        boolean lowOpen = evidence.fold(
                two -> !common(two.change().caveats(), HEAVY_LATEST).isEmpty(), slope -> false);
        boolean highOpen = evidence.fold(
                two -> !common(two.change().caveats(), HEAVY_REFERENCE).isEmpty(), slope -> false);
        return new TrendAnswer.Measured(
                lowOpen ? least : evidence.lowest().max(least).min(greatest),
                highOpen ? greatest : evidence.highest().max(least).min(greatest),
                evidence.overDays(),
                evidence);
    }

    private TrendAnswer unmeasured() {
        LocalDate due = weighings.get(0).day().plusDays(rules.answer().dueAfterDays());
        if (due.isAfter(asOf)) {
            return new TrendAnswer.NotYetDue(due);
        }
        Set<Caveat> why = oneScale.whyLeftOut(each -> true);
        return new TrendAnswer.NotObserved(why.isEmpty() ? List.of(Caveat.NO_REFERENCE) : List.copyOf(why));
    }
}
