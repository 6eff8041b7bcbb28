package varanid.intake.scoring;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Puts a reading into words: the checklist's own, quoted. */
final class ResultWriter {

    private final Reading reading;
    private final Checklist checklist;
    private final ChecklistDraft draft;
    private final Circumstances circumstances;
    private final Bounds bounds;
    private final Decision decision;

    ResultWriter(Reading reading) {
        this.reading = reading;
        checklist = reading.checklist;
        draft = checklist.draft();
        circumstances = reading.circumstances;
        bounds = Bounds.of(reading);
        decision = new Decision(reading, bounds);
    }

    Result write() {
        WhatIf whatIf = new WhatIf(reading, bounds);
        NearestChange nearest = new NearestChange(reading, bounds, whatIf);
        List<Result.Advice> advice = advice();
        return new Result(
                urgency(),
                score(),
                isolation(),
                reasons(),
                unknowns(),
                new NextLooks(reading, bounds, whatIf).inOrder(),
                lookAgain(),
                new SettlingLooks().of(reading),
                nearest.milder(),
                nearest.worse(),
                advice.stream().filter(it -> !it.kind().equals("caution")).toList(),
                advice.stream().filter(it -> it.kind().equals("caution")).toList(),
                witness(bounds.lowestLevels),
                witness(bounds.highestLevels),
                draft.notices());
    }

    private Result.Urgency urgency() {
        int recommended = decision.recommendedIndex();
        ChecklistDraft.Outcome outcome = draft.outcomes().get(recommended);
        Result.Basis basis = Result.Basis.ANSWERS;
        if (recommended > decision.lowestIndex()) {
            basis = Decision.meanwhile(reading) >= recommended ? Result.Basis.EXCUSED : Result.Basis.UNSEEN;
        }
        String headline = outcome.meaning();
        Duration lookAgainAfter = null;
        ChecklistDraft.Precaution precaution = draft.precaution();
        if (basis == Result.Basis.UNSEEN && precaution != null) {
            headline = precaution.headline() == null ? precaution.reason() : precaution.headline();
            lookAgainAfter = precaution.lookAgainAfter();
        }
        return new Result.Urgency(
                outcome.code(),
                outcome.label(),
                outcome.within(),
                headline,
                lookAgainAfter,
                basis,
                decision.lowest(),
                decision.highest(),
                decision.isSettled());
    }

    private Result.Score score() {
        Reading nothing = Reading.of(circumstances, Map.of(), new ArrayList<>());
        Bounds whole = Bounds.of(nothing);
        List<Result.SectionScore> sections = new ArrayList<>();
        for (int s = 0; s < draft.sections().size(); s++) {
            ChecklistDraft.Section section = draft.sections().get(s);
            sections.add(new Result.SectionScore(
                    section.id(),
                    section.title(),
                    smaller(
                            checklist.sectionPoints(s, bounds.sectionLeast[s]),
                            checklist.sectionPoints(s, bounds.sectionMost[s])),
                    larger(
                            checklist.sectionPoints(s, bounds.sectionLeast[s]),
                            checklist.sectionPoints(s, bounds.sectionMost[s]))));
        }
        return new Result.Score(
                smaller(decision.lowestPoints(), decision.highestPoints()),
                larger(decision.lowestPoints(), decision.highestPoints()),
                larger(checklist.totalPoints(whole.mostRaised), checklist.totalPoints(whole.leastRaised)),
                sections);
    }

    private static BigDecimal smaller(BigDecimal a, BigDecimal b) {
        return a.compareTo(b) <= 0 ? a : b;
    }

    private static BigDecimal larger(BigDecimal a, BigDecimal b) {
        return a.compareTo(b) >= 0 ? a : b;
    }

    private Result.@Nullable Isolation isolation() {
        ChecklistDraft.Isolation isolation = draft.isolation();
        if (isolation == null) {
            return null;
        }
        int routes = decision.recommendedRoutes();
        List<Result.IsolationReason> because = new ArrayList<>();
        for (FindingRules finding : checklist.findings) {
            int level = reading.seen[finding.index];
            if (finding.routes[level] != 0) {
                because.add(new Result.IsolationReason(
                        Objects.requireNonNull(finding.draft.levels().get(level).isolate()),
                        finding.draft.id(),
                        finding.levels[level],
                        null,
                        labelOf(finding, level)));
            }
        }
        Tally seen = Tally.of(circumstances, reading.seen);
        for (CombinationRules combination : checklist.combinations) {
            if (combination.routes != 0 && seen.holds(combination, circumstances, reading.seen)) {
                because.add(new Result.IsolationReason(
                        Objects.requireNonNull(combination.draft.isolate()),
                        null,
                        null,
                        combination.draft.id(),
                        textOf(combination)));
            }
        }
        ChecklistDraft.Isolation.UnknownExposure rule = isolation.unknownExposure();
        if (checklist.unknownExposureRoutes(reading) != 0 && rule != null) {
            because.add(new Result.IsolationReason(
                    rule.route(), null, null, null, rule.reason() == null ? rule.route() : rule.reason()));
        }
        List<String> names = new ArrayList<>();
        for (int r = 0; r < isolation.routes().size(); r++) {
            if ((routes & 1 << r) != 0) {
                names.add(isolation.routes().get(r).code());
            }
        }
        return new Result.Isolation(
                isolation.codes().get(decision.isStrictRecommended() ? 1 : 0),
                isolation.codes().get(decision.isStrictPossible() ? 1 : 0),
                names,
                because,
                couldIsolate());
    }

    private List<String> couldIsolate() {
        List<String> ids = new ArrayList<>();
        for (FindingRules finding : checklist.findings) {
            int set = reading.possible[finding.index];
            if (Integer.bitCount(set) > 1) {
                int worst = finding.worstOf(set)[0];
                if ((finding.routes[worst] & ~finding.routes[reading.seen[finding.index]]) != 0) {
                    ids.add(finding.draft.id());
                }
            }
        }
        return ids;
    }

    private List<Result.Reason> reasons() {
        List<Result.Reason> reasons = new ArrayList<>();
        int[] levels = bounds.lowestLevels;
        int[] heaviest = new int[checklist.familyCount];
        int[] heaviestFinding = new int[checklist.familyCount];
        Arrays.fill(heaviestFinding, -1);
        for (FindingRules finding : checklist.findings) {
            if (finding.family >= 0 && finding.raised[levels[finding.index]] > heaviest[finding.family]) {
                heaviest[finding.family] = finding.raised[levels[finding.index]];
                heaviestFinding[finding.family] = finding.index;
            }
        }
        for (FindingRules finding : checklist.findings) {
            int level = levels[finding.index];
            if (finding.raised[level] == 0 && finding.floor[level] == 0) {
                continue;
            }
            boolean counted = finding.family < 0 || heaviestFinding[finding.family] == finding.index;
            ChecklistDraft.Level drafted = finding.draft.levels().get(level);
            List<String> sources = new ArrayList<>(drafted.floorSource());
            finding.draft.pointsSource().stream()
                    .filter(id -> !sources.contains(id))
                    .forEach(sources::add);
            reasons.add(new Result.Reason(
                    Result.Reason.Kind.LEVEL,
                    checklist.outcomeCode(finding.floor[level]),
                    finding.draft.id(),
                    finding.levels[level],
                    counted ? drafted.points() : BigDecimal.ZERO,
                    counted,
                    labelOf(finding, level),
                    drafted.floorReason() == null ? finding.draft.reason() : drafted.floorReason(),
                    sources));
        }
        for (CombinationRules combination : checklist.combinations) {
            if (combination.outcome > 0 && bounds.lowest().holds(combination, circumstances, levels)) {
                reasons.add(new Result.Reason(
                        Result.Reason.Kind.COMBINATION,
                        checklist.outcomeCode(combination.outcome),
                        combination.draft.id(),
                        null,
                        BigDecimal.ZERO,
                        true,
                        textOf(combination),
                        combination.draft.reason(),
                        combination.draft.source()));
            }
        }
        bandReasons(reasons);
        if (decision.recommendedIndex() > decision.lowestIndex()) {
            raisedReasons(reasons);
        }
        reasons.sort(Comparator.comparingInt((Result.Reason it) -> -checklist.outcome(it.outcome()))
                .thenComparing(Result.Reason::kind)
                .thenComparing(Comparator.comparing(Result.Reason::points).reversed()));
        return reasons;
    }

    private void bandReasons(List<Result.Reason> reasons) {
        for (int s = 0; s < checklist.sectionBands.length; s++) {
            int outcome = checklist.sectionBands[s].outcomeOf(bounds.lowest().sections[s]);
            if (outcome > 0) {
                ChecklistDraft.Section section = draft.sections().get(s);
                reasons.add(bandReason(
                        Result.Reason.Kind.SECTION,
                        outcome,
                        section.id(),
                        checklist.sectionPoints(s, bounds.lowest().sections[s]),
                        section.title() == null ? section.id() : section.title(),
                        section.bands()));
            }
        }
        int outcome = checklist.totalBands.outcomeOf(bounds.lowest().raised);
        if (outcome > 0) {
            reasons.add(bandReason(
                    Result.Reason.Kind.TOTAL,
                    outcome,
                    null,
                    checklist.totalPoints(bounds.lowest().raised),
                    draft.total().title() == null
                            ? draft.title()
                            : draft.total().title(),
                    draft.total().bands()));
        }
    }

    private Result.Reason bandReason(
            Result.Reason.Kind kind,
            int outcome,
            @Nullable String id,
            BigDecimal points,
            String text,
            List<ChecklistDraft.Band> bands) {
        List<String> sources = bands.stream()
                .filter(band -> band.outcome().equals(checklist.outcomeCode(outcome)))
                .flatMap(band -> band.source().stream())
                .distinct()
                .toList();
        return new Result.Reason(kind, checklist.outcomeCode(outcome), id, null, points, true, text, null, sources);
    }

    private void raisedReasons(List<Result.Reason> reasons) {
        ChecklistDraft.Precaution precaution = draft.precaution();
        if (precaution != null && Decision.precaution(reading) > decision.lowestIndex()) {
            reasons.add(new Result.Reason(
                    Result.Reason.Kind.PRECAUTION,
                    precaution.outcome(),
                    null,
                    null,
                    BigDecimal.ZERO,
                    true,
                    precaution.reason() == null ? precaution.outcome() : precaution.reason(),
                    null,
                    precaution.source()));
        }
        for (FindingRules finding : checklist.findings) {
            Circumstances.Excuse excuse = reading.excuses[finding.index];
            if (excuse != null && excuse.terms().meanwhile() != null) {
                ChecklistDraft.Condition condition = draft.conditions().get(excuse.condition());
                reasons.add(new Result.Reason(
                        Result.Reason.Kind.EXCUSED,
                        Objects.requireNonNull(excuse.terms().meanwhile()),
                        finding.draft.id(),
                        finding.levels[reading.seen[finding.index]],
                        BigDecimal.ZERO,
                        true,
                        labelOf(finding, reading.seen[finding.index]),
                        condition.reason(),
                        condition.source()));
            }
        }
    }

    private List<Result.Unknown> unknowns() {
        List<Result.Unknown> unknowns = new ArrayList<>();
        for (FindingRules finding : checklist.findings) {
            int f = finding.index;
            List<String> masks = circumstances.masksOf(finding);
            Circumstances.Excuse excuse = reading.excuses[f];
            Result.Unknown.Why why = reading.whyUnknown(f);
            if (why == null) {
                continue;
            }
            List<String> conditions = why == Result.Unknown.Why.MASKED || why == Result.Unknown.Why.EXPLAINED
                    ? new ArrayList<>(masks)
                    : List.of();
            if (excuse != null) {
                conditions = new ArrayList<>(conditions);
                conditions.add(draft.conditions().get(excuse.condition()).id());
            }
            ChecklistDraft.NotYetDue due = finding.draft.notYetDue();
            Duration after = why == Result.Unknown.Why.NOT_YET_DUE && due != null ? due.after() : null;
            unknowns.add(new Result.Unknown(
                    finding.draft.id(),
                    why,
                    circumstances.isMustSee(finding),
                    reading.isSeen(f) ? finding.levels[reading.seen[f]] : null,
                    conditions,
                    why == Result.Unknown.Why.IMPLIED ? impliedBy(f) : null,
                    finding.levels[finding.worstOf(reading.possible[f])[0]],
                    after));
        }
        return unknowns;
    }

    private @Nullable String impliedBy(int f) {
        for (ImplicationRules implication : checklist.implications) {
            if (implication.then == f && reading.possible[implication.finding] == 1) {
                return implication.draft.finding();
            }
        }
        return null;
    }

    private List<Result.LookAgain> lookAgain() {
        List<Result.LookAgain> again = new ArrayList<>();
        for (FindingRules finding : checklist.findings) {
            Circumstances.Excuse excuse = reading.excuses[finding.index];
            if (excuse != null) {
                again.add(new Result.LookAgain(
                        finding.draft.id(),
                        finding.levels[reading.seen[finding.index]],
                        draft.conditions().get(excuse.condition()).id(),
                        excuse.terms().lookAgainAfter(),
                        excuse.terms().atLatest(),
                        checklist.outcomeCode(decision.unexcusedIndex())));
            }
        }
        return again;
    }

    private List<Result.Advice> advice() {
        List<Result.Advice> given = new ArrayList<>();
        for (ChecklistDraft.Advice advice : draft.advice()) {
            if (applies(advice.when())) {
                given.add(new Result.Advice(advice.id(), advice.kind(), advice.text(), advice.source()));
            }
        }
        return given;
    }

    private boolean applies(ChecklistDraft.Advice.When when) {
        return when.always()
                || when.findings().stream().anyMatch(this::isSeen)
                || when.conditions().stream()
                        .anyMatch(id -> circumstances.conditionHolds[checklist.conditionIndexOf(id)])
                || when.outcomes().contains(decision.recommended())
                || !when.attributes().isEmpty()
                        && new AttributeTest(checklist, when.attributes()).holds(circumstances.attributeValues);
    }

    private boolean isSeen(ChecklistDraft.Term term) {
        FindingRules finding = checklist.findings[checklist.indexOf(term.finding())];
        int level = finding.levelIndex(term.level());
        return reading.isSeen(finding.index) && (finding.orWorse(level) & 1 << reading.seen[finding.index]) != 0;
    }

    private Map<String, String> witness(int[] levels) {
        Map<String, String> witness = new LinkedHashMap<>();
        for (FindingRules finding : checklist.findings) {
            witness.put(finding.draft.id(), finding.levels[levels[finding.index]]);
        }
        return witness;
    }

    private static String labelOf(FindingRules finding, int level) {
        String label = finding.draft.levels().get(level).label();
        return label == null ? finding.draft.id() + ": " + finding.levels[level] : label;
    }

    private static String textOf(CombinationRules combination) {
        String title = combination.draft.title();
        return title == null ? combination.draft.id() : title;
    }
}
