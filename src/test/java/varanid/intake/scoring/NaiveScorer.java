package varanid.intake.scoring;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A second scorer, written straight from the description of the format and from nothing of the first one: it tries
 * every completion of a look and adds each up in plain decimals. Slow on purpose.
 */
final class NaiveScorer {

    /** What a look decides; {@code contradictory} looks have no other field that means anything. */
    record Verdict(
            boolean contradictory,
            int lowest,
            int highest,
            int recommended,
            BigDecimal leastTotal,
            BigDecimal mostTotal,
            boolean strictRecommended,
            boolean strictPossible,
            boolean settled,
            Map<String, Set<String>> possible) {}

    private record Sum(int outcome, BigDecimal total, boolean strict) {}

    private final ChecklistDraft draft;
    private final Map<String, ChecklistDraft.Finding> findings = new LinkedHashMap<>();
    private final List<String> outcomes;
    private final boolean higherIsWorse;

    NaiveScorer(ChecklistDraft draft) {
        this.draft = draft;
        draft.findings().forEach(finding -> findings.put(finding.id(), finding));
        outcomes = draft.outcomes().stream().map(ChecklistDraft.Outcome::code).toList();
        higherIsWorse = draft.total().direction() == ChecklistDraft.Direction.HIGHER_IS_WORSE;
    }

    Verdict judge(Look look) {
        return judge(look, Map.of());
    }

    /**
     * @param fixed findings taken to be at a level whatever was answered, as if plainly seen
     */
    Verdict judge(Look look, Map<String, String> fixed) {
        Map<String, String> animal = animal(look);
        if (isContradictory(look, animal, fixed)) {
            return new Verdict(true, 0, 0, 0, BigDecimal.ZERO, BigDecimal.ZERO, false, false, false, Map.of());
        }
        List<Sum> sums = new ArrayList<>();
        Map<String, Set<String>> possible = new HashMap<>();
        completions(look, animal, fixed, true, completion -> {
            sums.add(add(completion, animal));
            completion.forEach((id, level) ->
                    possible.computeIfAbsent(id, key -> new TreeSet<>()).add(level));
        });
        boolean[] strictWithoutExcuse = {true};
        completions(
                look,
                animal,
                fixed,
                false,
                completion -> strictWithoutExcuse[0] &= add(completion, animal).strict());

        int lowest = sums.stream().mapToInt(Sum::outcome).min().orElseThrow();
        int highest = sums.stream().mapToInt(Sum::outcome).max().orElseThrow();
        int recommended = lowest;
        if (draft.precaution() != null
                && findings.values().stream()
                        .anyMatch(finding -> isMustSee(finding, look) && sizeOf(possible, finding.id()) > 1)) {
            recommended =
                    Math.max(recommended, outcomes.indexOf(draft.precaution().outcome()));
        }
        for (ChecklistDraft.Finding finding : findings.values()) {
            ChecklistDraft.Condition.Explains excuse =
                    fixed.containsKey(finding.id()) ? null : excuse(finding, look, animal);
            if (excuse != null && excuse.meanwhile() != null) {
                recommended = Math.max(recommended, outcomes.indexOf(excuse.meanwhile()));
            }
        }
        boolean exposed = isExposed(animal, possible);
        boolean strictRecommended = strictWithoutExcuse[0] || exposed;
        boolean strictPossible = sums.stream().anyMatch(Sum::strict) || exposed;
        return new Verdict(
                false,
                lowest,
                highest,
                recommended,
                sums.stream().map(Sum::total).min(BigDecimal::compareTo).orElseThrow(),
                sums.stream().map(Sum::total).max(BigDecimal::compareTo).orElseThrow(),
                strictRecommended,
                strictPossible,
                lowest == highest && strictWithoutExcuse[0] == strictPossible,
                possible);
    }

    // ------------------------------------------------------------------------------------- what an answer stands for

    private void completions(
            Look look,
            Map<String, String> animal,
            Map<String, String> fixed,
            boolean excuses,
            Consumer<Map<String, String>> use) {
        List<ChecklistDraft.Finding> order = new ArrayList<>(findings.values());
        order.sort((a, b) -> Boolean.compare(driverOf(a) != null, driverOf(b) != null));
        complete(order, 0, new HashMap<>(), look, animal, fixed, excuses, use);
    }

    private void complete(
            List<ChecklistDraft.Finding> order,
            int next,
            Map<String, String> completion,
            Look look,
            Map<String, String> animal,
            Map<String, String> fixed,
            boolean excuses,
            Consumer<Map<String, String>> use) {
        if (next == order.size()) {
            if (agrees(completion, look, fixed)) {
                use.accept(completion);
            }
            return;
        }
        ChecklistDraft.Finding finding = order.get(next);
        for (String level : mayBe(finding, completion, look, animal, fixed, excuses)) {
            completion.put(finding.id(), level);
            complete(order, next + 1, completion, look, animal, fixed, excuses, use);
        }
        completion.remove(finding.id());
    }

    private Set<String> mayBe(
            ChecklistDraft.Finding finding,
            Map<String, String> others,
            Look look,
            Map<String, String> animal,
            Map<String, String> fixed,
            boolean excuses) {
        String fixedAt = fixed.get(finding.id());
        if (fixedAt != null) {
            return Set.of(fixedAt);
        }
        Answer answer = look.answers().get(finding.id());
        if (answer == Answer.notYetDue()) {
            return Set.of(reassuring(finding));
        }
        Set<String> reachable = reachable(finding, others, animal);
        if (answer == null || answer == Answer.notObserved()) {
            return reachable;
        }
        Set<String> seen = asSeen(finding, answer, others, animal);
        Set<String> set = new LinkedHashSet<>(seen);
        if (driverOf(finding) == null) {
            if (excuses && seen.size() == 1 && excuse(finding, look, animal) != null) {
                String level = seen.iterator().next();
                reachable.stream()
                        .filter(other -> isSameOrWorse(finding, level, other))
                        .forEach(set::add);
            }
            if (active(look).stream().anyMatch(condition -> condition.masks().contains(finding.id()))) {
                for (String level : seen) {
                    reachable.stream()
                            .filter(other -> isSameOrWorse(finding, other, level))
                            .forEach(set::add);
                }
                set.add(worst(finding, reachable));
            }
        }
        return set;
    }

    private Set<String> asSeen(
            ChecklistDraft.Finding finding, Answer answer, Map<String, String> others, Map<String, String> animal) {
        if (answer instanceof Answer.Seen it) {
            return Set.of(it.level());
        }
        Answer.Measured measured = (Answer.Measured) answer;
        ChecklistDraft.Measure measure = Objects.requireNonNull(finding.measure());
        if (measure.companion() != null && measured.companion() == null) {
            return reachable(finding, others, animal);
        }
        for (ChecklistDraft.Case it : finding.bands()) {
            boolean companionFits = it.companionUpTo() == null
                    || Objects.requireNonNull(measured.companion()).compareTo(it.companionUpTo()) <= 0;
            if (fits(it, others, animal) && companionFits) {
                Set<String> levels = new LinkedHashSet<>();
                BigDecimal high = toStep(measured.high(), measure.step());
                for (BigDecimal value = toStep(measured.low(), measure.step());
                        value.compareTo(high) <= 0;
                        value = value.add(measure.step())) {
                    levels.add(levelOf(it, value));
                }
                return levels;
            }
        }
        throw new IllegalStateException("no case");
    }

    static String levelOf(ChecklistDraft.Case it, BigDecimal value) {
        String level = it.from().get(0).level();
        for (ChecklistDraft.Start start : it.from()) {
            if (value.compareTo(start.at()) >= 0) {
                level = start.level();
            }
        }
        return level;
    }

    private static BigDecimal toStep(BigDecimal value, BigDecimal step) {
        return value.divide(step, 0, RoundingMode.HALF_UP).multiply(step);
    }

    private Set<String> reachable(
            ChecklistDraft.Finding finding, Map<String, String> others, Map<String, String> animal) {
        Set<String> levels = new LinkedHashSet<>();
        if (finding.measure() == null) {
            finding.levels().forEach(level -> levels.add(level.code()));
            return levels;
        }
        for (ChecklistDraft.Case it : finding.bands()) {
            if (fits(it, others, animal)) {
                it.from().forEach(start -> levels.add(start.level()));
                if (it.companionUpTo() == null) {
                    return levels;
                }
            }
        }
        return levels;
    }

    private boolean fits(ChecklistDraft.Case it, Map<String, String> others, Map<String, String> animal) {
        return it.when().entrySet().stream().allMatch(entry -> {
            String value = animal.containsKey(entry.getKey()) ? animal.get(entry.getKey()) : others.get(entry.getKey());
            return entry.getValue().contains(value);
        });
    }

    private @Nullable String driverOf(ChecklistDraft.Finding finding) {
        return finding.bands().stream()
                .flatMap(it -> it.when().keySet().stream())
                .filter(findings::containsKey)
                .findFirst()
                .orElse(null);
    }

    private ChecklistDraft.Condition.@Nullable Explains excuse(
            ChecklistDraft.Finding finding, Look look, Map<String, String> animal) {
        Answer answer = look.answers().get(finding.id());
        if (answer == null
                || answer == Answer.notObserved()
                || answer == Answer.notYetDue()
                || driverOf(finding) != null
                || look.explainedBefore().contains(finding.id())) {
            return null;
        }
        Set<String> seen = asSeen(finding, answer, Map.of(), animal);
        return active(look).stream()
                .flatMap(condition -> condition.explains().stream())
                .filter(explains -> explains.finding().equals(finding.id()) && seen.equals(Set.of(explains.level())))
                .findFirst()
                .orElse(null);
    }

    private List<ChecklistDraft.Condition> active(Look look) {
        return draft.conditions().stream()
                .filter(condition -> look.conditions().contains(condition.id()))
                .toList();
    }

    private boolean isMustSee(ChecklistDraft.Finding finding, Look look) {
        return finding.mustSee()
                || active(look).stream()
                        .anyMatch(condition -> condition.mustSee().contains(finding.id()));
    }

    private boolean isExposed(Map<String, String> animal, Map<String, Set<String>> possible) {
        if (draft.isolation() == null || draft.isolation().unknownExposure() == null) {
            return false;
        }
        ChecklistDraft.Isolation.UnknownExposure rule = draft.isolation().unknownExposure();
        return rule.values().contains(animal.get(rule.attribute()))
                && rule.findings().stream().anyMatch(id -> sizeOf(possible, id) > 1);
    }

    private static int sizeOf(Map<String, Set<String>> possible, String id) {
        return possible.getOrDefault(id, Set.of()).size();
    }

    private Map<String, String> animal(Look look) {
        Map<String, String> animal = new HashMap<>();
        for (ChecklistDraft.Attribute attribute : draft.attributes()) {
            String code = look.attributes().getOrDefault(attribute.id(), attribute.ifAbsent());
            for (ChecklistDraft.Attribute.Value value : attribute.values()) {
                if (value.code().equals(code)) {
                    animal.put(attribute.id(), value.countsAs() == null ? code : value.countsAs());
                }
            }
        }
        return animal;
    }

    // ------------------------------------------------------------------------------------------------- implications

    /** A reassuring level brings that of a missing answer with it, and cannot stand beside an answer that worries. */
    private boolean agrees(Map<String, String> completion, Look look, Map<String, String> fixed) {
        for (ChecklistDraft.Implication it : draft.implies()) {
            boolean reassuring = it.level().equals(completion.get(it.finding()))
                    && look.answers().get(it.finding()) != Answer.notYetDue();
            Answer then = look.answers().get(it.then());
            boolean contradicted = fixed.containsKey(it.then())
                    ? !it.is().equals(fixed.get(it.then()))
                    : then == null
                            ? !it.is().equals(completion.get(it.then()))
                            : then instanceof Answer.Seen seen && !it.is().equals(seen.level());
            if (reassuring && contradicted) {
                return false;
            }
        }
        return true;
    }

    private boolean isContradictory(Look look, Map<String, String> animal, Map<String, String> fixed) {
        Set<String> certain = new LinkedHashSet<>();
        for (ChecklistDraft.Finding finding : findings.values()) {
            Answer answer = look.answers().get(finding.id());
            boolean seen = fixed.containsKey(finding.id()) || answer instanceof Answer.Seen;
            if (seen && mayBe(finding, Map.of(), look, animal, fixed, true).equals(Set.of(reassuring(finding)))) {
                certain.add(finding.id());
            }
        }
        boolean grows = true;
        while (grows) {
            grows = false;
            for (ChecklistDraft.Implication it : draft.implies()) {
                if (!certain.contains(it.finding())) {
                    continue;
                }
                boolean missing = !look.answers().containsKey(it.then()) && !fixed.containsKey(it.then());
                if (missing) {
                    grows |= certain.add(it.then());
                } else if (fixed.containsKey(it.then())
                        ? !it.is().equals(fixed.get(it.then()))
                        : look.answers().get(it.then()) instanceof Answer.Seen seen
                                && !seen.level().equals(it.is())) {
                    return true;
                }
            }
        }
        return false;
    }

    // ------------------------------------------------------------------------------------------------------- adding up

    private Sum add(Map<String, String> completion, Map<String, String> animal) {
        BigDecimal total = sum(completion, finding -> true, false);
        int outcome = bandOf(total, draft.total().bands());
        boolean strict = false;
        for (ChecklistDraft.Section section : draft.sections()) {
            BigDecimal points = sum(completion, finding -> finding.section().equals(section.id()), false);
            outcome = Math.max(outcome, bandOf(points, section.bands()));
        }
        for (ChecklistDraft.Finding finding : findings.values()) {
            ChecklistDraft.Level level = level(finding, Objects.requireNonNull(completion.get(finding.id())));
            outcome = level.floor() == null ? outcome : Math.max(outcome, outcomes.indexOf(level.floor()));
            strict |= level.isolate() != null;
        }
        for (ChecklistDraft.Combination combination : draft.combinations()) {
            if (holds(combination, completion, animal)) {
                outcome = combination.outcome() == null
                        ? outcome
                        : Math.max(outcome, outcomes.indexOf(combination.outcome()));
                strict |= combination.isolate() != null;
            }
        }
        return new Sum(outcome, total, strict);
    }

    /**
     * @param fromReassuring counts how far each is from its reassuring level instead of its points
     */
    private BigDecimal sum(
            Map<String, String> completion,
            java.util.function.Predicate<ChecklistDraft.Finding> which,
            boolean fromReassuring) {
        BigDecimal sum = BigDecimal.ZERO;
        Map<String, BigDecimal> heaviest = new HashMap<>();
        for (ChecklistDraft.Finding finding : findings.values()) {
            if (!which.test(finding)) {
                continue;
            }
            BigDecimal points = level(finding, Objects.requireNonNull(completion.get(finding.id())))
                    .points();
            if (fromReassuring) {
                points = points.subtract(finding.levels().get(0).points()).abs();
            }
            if (finding.family() == null) {
                sum = sum.add(points);
            } else {
                heaviest.merge(
                        finding.family(), points, higherIsWorse || fromReassuring ? BigDecimal::max : BigDecimal::min);
            }
        }
        for (BigDecimal points : heaviest.values()) {
            sum = sum.add(points);
        }
        return sum;
    }

    private int bandOf(BigDecimal points, List<ChecklistDraft.Band> bands) {
        int worst = 0;
        for (ChecklistDraft.Band band : bands) {
            boolean reached =
                    higherIsWorse ? points.compareTo(band.threshold()) >= 0 : points.compareTo(band.threshold()) <= 0;
            worst = reached ? Math.max(worst, outcomes.indexOf(band.outcome())) : worst;
        }
        return worst;
    }

    private boolean holds(
            ChecklistDraft.Combination combination, Map<String, String> completion, Map<String, String> animal) {
        boolean forThisAnimal = combination.when().entrySet().stream()
                .allMatch(entry -> entry.getValue().contains(animal.get(entry.getKey())));
        Set<String> named = combination.groups().stream()
                .flatMap(group -> group.of().stream())
                .map(ChecklistDraft.Term::finding)
                .collect(Collectors.toSet());
        return forThisAnimal
                && combination.groups().stream().allMatch(group -> {
                    if (group.pointsFromOthers() != null) {
                        return sum(completion, finding -> !named.contains(finding.id()), true)
                                        .compareTo(group.pointsFromOthers())
                                >= 0;
                    }
                    long met = group.of().stream()
                            .filter(term -> meets(term, completion))
                            .count();
                    return met >= group.needed();
                });
    }

    private boolean meets(ChecklistDraft.Term term, Map<String, String> completion) {
        return isSameOrWorse(
                Objects.requireNonNull(findings.get(term.finding())),
                Objects.requireNonNull(completion.get(term.finding())),
                term.level());
    }

    private static boolean isSameOrWorse(ChecklistDraft.Finding finding, String level, String than) {
        return level.equals(than)
                || finding.chains().stream()
                        .anyMatch(chain -> chain.contains(than) && chain.indexOf(level) > chain.indexOf(than));
    }

    /** The level of a set that counts for at least as much as every other one; of equals the last. */
    private String worst(ChecklistDraft.Finding finding, Set<String> levels) {
        return levels.stream()
                .filter(level -> levels.stream().allMatch(other -> outweighs(finding, level, other)))
                .max(Comparator.comparingInt(level -> finding.levels().indexOf(level(finding, level))))
                .orElseThrow();
    }

    private boolean outweighs(ChecklistDraft.Finding finding, String level, String other) {
        ChecklistDraft.Level a = level(finding, level);
        ChecklistDraft.Level b = level(finding, other);
        int points = a.points().compareTo(b.points());
        boolean terms = draft.combinations().stream()
                .flatMap(combination -> combination.groups().stream())
                .flatMap(group -> group.of().stream())
                .filter(term -> term.finding().equals(finding.id()))
                .allMatch(term ->
                        isSameOrWorse(finding, level, term.level()) || !isSameOrWorse(finding, other, term.level()));
        return (higherIsWorse ? points >= 0 : points <= 0)
                && outcomes.indexOf(a.floor()) >= outcomes.indexOf(b.floor())
                && (b.isolate() == null || b.isolate().equals(a.isolate()))
                && terms;
    }

    private static ChecklistDraft.Level level(ChecklistDraft.Finding finding, String code) {
        return finding.levels().stream()
                .filter(level -> level.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    static String reassuring(ChecklistDraft.Finding finding) {
        return finding.levels().get(0).code();
    }
}
