package varanid.intake.scoring;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Small checklists with everything in them that a checklist can have: families, sections, combinations, conditions,
 * implications, measured findings that depend on another finding or a second number, attributes, both directions.
 */
final class RandomDrafts {

    private static final List<String> NONE = List.of();

    private final Random random;
    private final boolean measures;
    private int outcomes;
    private boolean higherIsWorse;
    private boolean isolates;

    RandomDrafts(Random random, boolean measures) {
        this.random = random;
        this.measures = measures;
    }

    /** One that the loader accepts; others are thrown away. */
    Checklist next() {
        while (true) {
            try {
                return Checklist.from(draft());
            } catch (ChecklistRefused refused) {
                continue;
            }
        }
    }

    private ChecklistDraft draft() {
        outcomes = 2 + random.nextInt(3);
        higherIsWorse = chance(0.8);
        isolates = chance(0.7);
        List<ChecklistDraft.Finding> findings = new ArrayList<>();
        int count = 3 + random.nextInt(3);
        for (int f = 0; f < count; f++) {
            findings.add(finding(f, findings));
        }
        return new ChecklistDraft(
                "small",
                1,
                "draft",
                "Small",
                null,
                NONE,
                IntStream.range(0, outcomes)
                        .mapToObj(o -> new ChecklistDraft.Outcome("o" + o, null, null, null, null))
                        .toList(),
                new ChecklistDraft.Total(
                        higherIsWorse
                                ? ChecklistDraft.Direction.HIGHER_IS_WORSE
                                : ChecklistDraft.Direction.LOWER_IS_WORSE,
                        null,
                        bands(14)),
                chance(0.5) ? new ChecklistDraft.Precaution("o1", null, null, null, NONE) : null,
                null,
                List.of(
                        new ChecklistDraft.Attribute(
                                "age",
                                null,
                                List.of(value("young", null), value("old", null), value("unknown", "young")),
                                "unknown"),
                        new ChecklistDraft.Attribute(
                                "origin", null, List.of(value("wild", null), value("bred", null)), "wild")),
                isolates ? isolation(findings) : null,
                List.of(
                        new ChecklistDraft.Section("s0", null, bands(8)),
                        new ChecklistDraft.Section("s1", null, bands(8))),
                List.of(new ChecklistDraft.Family("fam0", null, null), new ChecklistDraft.Family("fam1", null, null)),
                conditions(findings),
                findings,
                implications(findings),
                combinations(findings),
                List.of(),
                List.of());
    }

    private ChecklistDraft.Attribute.Value value(String code, @Nullable String countsAs) {
        return new ChecklistDraft.Attribute.Value(code, null, null, countsAs);
    }

    private List<ChecklistDraft.Band> bands(int most) {
        List<ChecklistDraft.Band> bands = new ArrayList<>();
        for (int o = 1; o < outcomes; o++) {
            if (chance(0.6)) {
                BigDecimal at = BigDecimal.valueOf(random.nextInt(2 * most), 1).multiply(BigDecimal.valueOf(5));
                bands.add(new ChecklistDraft.Band(higherIsWorse ? at : null, higherIsWorse ? null : at, "o" + o, NONE));
            }
        }
        return bands;
    }

    private ChecklistDraft.Isolation isolation(List<ChecklistDraft.Finding> findings) {
        List<ChecklistDraft.Isolation.Route> routes = List.of(
                new ChecklistDraft.Isolation.Route("air", null, null),
                new ChecklistDraft.Isolation.Route("contact", null, null));
        List<String> isolating = findings.stream()
                .filter(finding -> finding.levels().stream().anyMatch(level -> level.isolate() != null))
                .map(ChecklistDraft.Finding::id)
                .toList();
        boolean rule = chance(0.5) && !isolating.isEmpty();
        return new ChecklistDraft.Isolation(
                List.of("standard", "strict"),
                routes,
                rule
                        ? new ChecklistDraft.Isolation.UnknownExposure(
                                List.of(pick(isolating)), "origin", List.of("wild"), "contact", null, NONE)
                        : null);
    }

    private ChecklistDraft.Finding finding(int f, List<ChecklistDraft.Finding> before) {
        String family = chance(0.4) ? "fam" + random.nextInt(2) : null;
        boolean forked = chance(0.3);
        int first = 1 + random.nextInt(forked ? 2 : 3);
        int second = forked ? 1 + random.nextInt(2) : 0;
        String route = isolates && chance(0.4) ? pick(List.of("air", "contact")) : null;
        int base = family == null && (!higherIsWorse || chance(0.1)) ? random.nextInt(4) : 0;
        List<ChecklistDraft.Level> levels = new ArrayList<>();
        levels.add(new ChecklistDraft.Level("l0", null, points(base, 0), null, null, NONE, null));
        List<String> one = new ArrayList<>(List.of("l0"));
        List<String> other = new ArrayList<>(List.of("l0"));
        int[] most = chain(levels, one, first, base, route, 0, 0);
        if (forked) {
            chain(levels, other, second, base, route, most[0], most[1]);
        }
        List<List<String>> chains = forked ? List.of(one, other) : List.of(one);
        ChecklistDraft.Measure measure = null;
        List<ChecklistDraft.Case> cases = List.of();
        if (measures && chance(0.35)) {
            boolean companion = chance(0.3);
            measure = new ChecklistDraft.Measure(
                    "1",
                    null,
                    BigDecimal.ONE,
                    BigDecimal.ZERO,
                    BigDecimal.TEN,
                    companion ? new ChecklistDraft.Companion("over", null, "d", BigDecimal.ONE, BigDecimal.TEN) : null);
            cases = cases(one, other, forked, companion, before);
        }
        return new ChecklistDraft.Finding(
                "f" + f,
                "s" + random.nextInt(2),
                family,
                chance(0.3),
                1 + random.nextInt(5),
                null,
                null,
                null,
                false,
                chance(0.2) ? new ChecklistDraft.NotYetDue(Duration.ofDays(1), null) : null,
                measure,
                levels,
                chains,
                cases,
                null,
                NONE,
                NONE);
    }

    /** Adds levels that get worse; the last one of a second chain is made the worst of both. */
    private int[] chain(
            List<ChecklistDraft.Level> levels,
            List<String> chain,
            int length,
            int base,
            @Nullable String route,
            int leastRaisedAtEnd,
            int leastFloorAtEnd) {
        int raised = 0;
        int floor = 0;
        boolean isolate = false;
        for (int i = 0; i < length; i++) {
            raised += random.nextInt(7);
            floor = Math.max(floor, chance(0.4) ? random.nextInt(outcomes) : 0);
            isolate |= chance(0.5);
            if (i == length - 1) {
                raised = Math.max(raised, leastRaisedAtEnd);
                floor = Math.max(floor, leastFloorAtEnd);
                isolate |= leastRaisedAtEnd > 0 || chance(0.5);
            }
            String code = "l" + levels.size();
            chain.add(code);
            levels.add(new ChecklistDraft.Level(
                    code,
                    null,
                    points(base, raised),
                    floor == 0 ? null : "o" + floor,
                    null,
                    NONE,
                    isolate ? route : null));
        }
        return new int[] {raised, floor};
    }

    /** Half points too, so that sums need decimals. */
    private BigDecimal points(int base, int halves) {
        BigDecimal raised = BigDecimal.valueOf(halves).multiply(new BigDecimal("0.5"));
        return BigDecimal.valueOf(base).add(higherIsWorse ? raised : raised.negate());
    }

    private List<ChecklistDraft.Case> cases(
            List<String> one,
            List<String> other,
            boolean forked,
            boolean companion,
            List<ChecklistDraft.Finding> before) {
        List<ChecklistDraft.Case> cases = new ArrayList<>();
        List<ChecklistDraft.Finding> plain =
                before.stream().filter(finding -> finding.measure() == null).toList();
        if (chance(0.5) && !plain.isEmpty()) {
            ChecklistDraft.Finding driver = pick(plain);
            String last = driver.levels().get(driver.levels().size() - 1).code();
            Map<String, List<String>> when = new HashMap<>(Map.of(driver.id(), List.of(last)));
            if (chance(0.3)) {
                when.put("age", List.of("young"));
            }
            cases.add(new ChecklistDraft.Case(when, null, starts(one, other, forked), NONE));
        }
        if (chance(0.4)) {
            cases.add(new ChecklistDraft.Case(Map.of("age", List.of("young")), null, starts(one, other, forked), NONE));
        }
        if (companion) {
            cases.add(new ChecklistDraft.Case(Map.of(), BigDecimal.valueOf(4), starts(one, other, forked), NONE));
        }
        cases.add(new ChecklistDraft.Case(Map.of(), null, starts(one, other, forked), NONE));
        return cases;
    }

    private List<ChecklistDraft.Start> starts(List<String> one, List<String> other, boolean forked) {
        List<String> order = new ArrayList<>();
        if (forked) {
            for (int i = one.size() - 1; i >= 0; i--) {
                order.add(one.get(i));
            }
            order.addAll(other.subList(1, other.size()));
        } else {
            order.addAll(one);
        }
        List<ChecklistDraft.Start> starts = new ArrayList<>();
        int at = 0;
        for (String level : order) {
            boolean kept = level.equals("l0") || chance(0.8);
            if (kept && at <= 10) {
                starts.add(new ChecklistDraft.Start(BigDecimal.valueOf(at), level));
                at += 1 + random.nextInt(4);
            }
        }
        return starts;
    }

    private List<ChecklistDraft.Condition> conditions(List<ChecklistDraft.Finding> findings) {
        List<ChecklistDraft.Condition> conditions = new ArrayList<>();
        for (int c = 0; c < random.nextInt(3); c++) {
            List<String> masks = some(findings, 0.25);
            List<ChecklistDraft.Condition.Explains> explains = new ArrayList<>();
            for (String id : some(findings, 0.35)) {
                String meanwhile = chance(0.5) ? "o" + random.nextInt(outcomes) : null;
                explains.add(new ChecklistDraft.Condition.Explains(id, "l1", null, null, meanwhile));
            }
            conditions.add(new ChecklistDraft.Condition(
                    "c" + c, null, null, masks, explains, some(findings, 0.1), null, NONE));
        }
        return conditions;
    }

    private List<ChecklistDraft.Implication> implications(List<ChecklistDraft.Finding> findings) {
        List<ChecklistDraft.Implication> implications = new ArrayList<>();
        List<ChecklistDraft.Finding> able =
                findings.stream().filter(finding -> finding.measure() == null).toList();
        for (int i = 0; able.size() > 1 && i < random.nextInt(4); i++) {
            ChecklistDraft.Finding from = pick(able);
            ChecklistDraft.Finding then = pick(able);
            if (!from.id().equals(then.id()) && from.chains().size() == 1) {
                implications.add(new ChecklistDraft.Implication(from.id(), "l0", then.id(), "l0", null));
            }
        }
        return implications;
    }

    private List<ChecklistDraft.Combination> combinations(List<ChecklistDraft.Finding> findings) {
        List<ChecklistDraft.Combination> combinations = new ArrayList<>();
        for (int c = 0; c < random.nextInt(3); c++) {
            List<ChecklistDraft.Group> groups = new ArrayList<>();
            for (int g = 0; g < 1 + random.nextInt(2); g++) {
                List<ChecklistDraft.Term> terms = some(findings, 0.5).stream()
                        .map(id -> new ChecklistDraft.Term(id, "l" + (1 + random.nextInt(2))))
                        .toList();
                if (!terms.isEmpty()) {
                    groups.add(new ChecklistDraft.Group(1 + random.nextInt(terms.size()), terms, null));
                }
            }
            if (chance(0.4)) {
                groups.add(new ChecklistDraft.Group(null, List.of(), BigDecimal.valueOf(1 + random.nextInt(4))));
            }
            combinations.add(new ChecklistDraft.Combination(
                    "k" + c,
                    null,
                    null,
                    chance(0.3) ? Map.of("age", List.of("old")) : Map.of(),
                    groups,
                    chance(0.8) ? "o" + random.nextInt(outcomes) : null,
                    isolates && chance(0.4) ? "air" : null,
                    NONE));
        }
        return combinations;
    }

    private List<String> some(List<ChecklistDraft.Finding> findings, double share) {
        return findings.stream()
                .filter(finding -> chance(share))
                .map(ChecklistDraft.Finding::id)
                .toList();
    }

    private boolean chance(double p) {
        return random.nextDouble() < p;
    }

    private <T> T pick(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }
}
