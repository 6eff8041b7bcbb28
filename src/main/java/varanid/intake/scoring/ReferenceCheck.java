package varanid.intake.scoring;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Whether everything that a checklist names is there, once, and of the right kind. */
final class ReferenceCheck {

    private final ChecklistDraft draft;
    private final List<Fault> faults = new ArrayList<>();
    private final Map<String, ChecklistDraft.Finding> findings;
    private final Set<String> outcomes;
    private final Set<String> sources;
    private final Set<String> routes;
    private final Map<String, Set<String>> attributeValues;

    private ReferenceCheck(ChecklistDraft draft) {
        this.draft = draft;
        findings = draft.findings().stream()
                .collect(Collectors.toMap(ChecklistDraft.Finding::id, Function.identity(), (a, b) -> a));
        outcomes = draft.outcomes().stream().map(ChecklistDraft.Outcome::code).collect(Collectors.toSet());
        sources = draft.sources().stream().map(ChecklistDraft.Source::id).collect(Collectors.toSet());
        routes = draft.isolation() == null
                ? Set.of()
                : draft.isolation().routes().stream()
                        .map(ChecklistDraft.Isolation.Route::code)
                        .collect(Collectors.toSet());
        attributeValues = draft.attributes().stream()
                .collect(Collectors.toMap(
                        ChecklistDraft.Attribute::id,
                        attribute -> attribute.values().stream()
                                .map(ChecklistDraft.Attribute.Value::code)
                                .collect(Collectors.toSet()),
                        (a, b) -> a));
    }

    static List<Fault> faultsOf(ChecklistDraft draft) {
        ReferenceCheck check = new ReferenceCheck(draft);
        check.uniqueIds();
        check.scale();
        check.attributes();
        check.isolation();
        check.conditions();
        for (int f = 0; f < draft.findings().size(); f++) {
            check.finding("/findings/" + f, draft.findings().get(f));
        }
        check.implications();
        check.combinations();
        check.advice();
        return check.faults;
    }

    private void uniqueIds() {
        unique("/outcomes", draft.outcomes(), ChecklistDraft.Outcome::code);
        unique("/attributes", draft.attributes(), ChecklistDraft.Attribute::id);
        unique("/sections", draft.sections(), ChecklistDraft.Section::id);
        unique("/families", draft.families(), ChecklistDraft.Family::id);
        unique("/conditions", draft.conditions(), ChecklistDraft.Condition::id);
        unique("/findings", draft.findings(), ChecklistDraft.Finding::id);
        unique("/combinations", draft.combinations(), ChecklistDraft.Combination::id);
        unique("/advice", draft.advice(), ChecklistDraft.Advice::id);
        unique("/sources", draft.sources(), ChecklistDraft.Source::id);
        for (String attribute : attributeValues.keySet()) {
            if (findings.containsKey(attribute)) {
                fault("/attributes", "'" + attribute + "' is also the id of a finding", "an id of its own");
            }
        }
    }

    private void scale() {
        if (draft.outcomes().isEmpty()) {
            fault("/outcomes", "is empty", "at least one outcome, the mildest first");
        }
        bands("/total/bands", draft.total().bands());
        for (int s = 0; s < draft.sections().size(); s++) {
            bands("/sections/" + s + "/bands", draft.sections().get(s).bands());
        }
        if (draft.precaution() != null) {
            outcome("/precaution/outcome", draft.precaution().outcome());
            sources("/precaution/source", draft.precaution().source());
        }
        ChecklistDraft.NextLook next = draft.nextLook();
        if (next != null) {
            sources("/nextLook/source", next.source());
            int outcomesCount = draft.outcomes().size();
            if (next.losses().size() != outcomesCount
                    || next.losses().stream().anyMatch(row -> row.size() != outcomesCount)) {
                fault("/nextLook/losses", "is not square", outcomesCount + " rows of " + outcomesCount + " numbers");
            }
            if (next.chanceReassuring().signum() <= 0 || next.chanceReassuring().compareTo(BigDecimal.ONE) >= 0) {
                fault("/nextLook/chanceReassuring", "is " + next.chanceReassuring(), "a number between 0 and 1");
            }
        }
    }

    private void bands(String pointer, List<ChecklistDraft.Band> bands) {
        boolean upwards = draft.total().direction() == ChecklistDraft.Direction.HIGHER_IS_WORSE;
        for (int b = 0; b < bands.size(); b++) {
            ChecklistDraft.Band band = bands.get(b);
            String here = pointer + "/" + b;
            outcome(here + "/outcome", band.outcome());
            sources(here + "/source", band.source());
            if ((band.from() == null) == upwards || (band.upTo() == null) != upwards) {
                fault(here, "has the wrong kind of threshold", upwards ? "'from' alone" : "'upTo' alone");
            }
        }
    }

    private void attributes() {
        for (int a = 0; a < draft.attributes().size(); a++) {
            ChecklistDraft.Attribute attribute = draft.attributes().get(a);
            String here = "/attributes/" + a;
            unique(here + "/values", attribute.values(), ChecklistDraft.Attribute.Value::code);
            Set<String> values = attributeValues.getOrDefault(attribute.id(), Set.of());
            if (values.isEmpty() || values.size() > 31) {
                fault(here + "/values", "holds " + values.size() + " values", "1 to 31 values");
            }
            if (attribute.ifAbsent() != null) {
                oneOf(here + "/ifAbsent", attribute.ifAbsent(), values, "a value of this attribute");
            }
            for (ChecklistDraft.Attribute.Value value : attribute.values()) {
                if (value.countsAs() != null) {
                    oneOf(here + "/values", value.countsAs(), values, "a value of this attribute");
                    notAnAlias(here + "/values", attribute.id(), value.countsAs());
                }
            }
        }
    }

    private void isolation() {
        ChecklistDraft.Isolation isolation = draft.isolation();
        if (isolation == null) {
            return;
        }
        if (isolation.codes().size() != 2) {
            fault("/isolation/codes", "holds " + isolation.codes().size() + " codes", "two, the laxer first");
        }
        if (isolation.routes().size() > 31) {
            fault("/isolation/routes", "holds " + isolation.routes().size() + " routes", "at most 31");
        }
        ChecklistDraft.Isolation.UnknownExposure rule = isolation.unknownExposure();
        if (rule != null) {
            rule.findings().forEach(id -> findingAt("/isolation/unknownExposure/findings", id));
            route("/isolation/unknownExposure/route", rule.route());
            when("/isolation/unknownExposure", Map.of(rule.attribute(), rule.values()), false);
            sources("/isolation/unknownExposure/source", rule.source());
        }
    }

    private void conditions() {
        for (int c = 0; c < draft.conditions().size(); c++) {
            ChecklistDraft.Condition condition = draft.conditions().get(c);
            String here = "/conditions/" + c;
            condition.masks().forEach(id -> findingAt(here + "/masks", id));
            condition.mustSee().forEach(id -> findingAt(here + "/mustSee", id));
            sources(here + "/source", condition.source());
            for (int e = 0; e < condition.explains().size(); e++) {
                ChecklistDraft.Condition.Explains explains =
                        condition.explains().get(e);
                term(here + "/explains/" + e, explains.finding(), explains.level());
                if (explains.meanwhile() != null) {
                    outcome(here + "/explains/" + e + "/meanwhile", explains.meanwhile());
                }
            }
        }
    }

    private void finding(String here, ChecklistDraft.Finding finding) {
        oneOf(
                here + "/section",
                finding.section(),
                draft.sections().stream().map(ChecklistDraft.Section::id).collect(Collectors.toSet()),
                "the id of a section");
        if (finding.family() != null) {
            oneOf(
                    here + "/family",
                    finding.family(),
                    draft.families().stream().map(ChecklistDraft.Family::id).collect(Collectors.toSet()),
                    "the id of a family");
        }
        sources(here + "/pointsSource", finding.pointsSource());
        sources(here + "/source", finding.source());
        unique(here + "/levels", finding.levels(), ChecklistDraft.Level::code);
        if (finding.levels().size() < 2 || finding.levels().size() > Checklist.MOST_LEVELS) {
            fault(
                    here + "/levels",
                    "holds " + finding.levels().size() + " levels",
                    "2 to " + Checklist.MOST_LEVELS + " levels, the reassuring one first");
        }
        for (int l = 0; l < finding.levels().size(); l++) {
            ChecklistDraft.Level level = finding.levels().get(l);
            if (level.floor() != null) {
                outcome(here + "/levels/" + l + "/floor", level.floor());
            }
            if (level.isolate() != null) {
                route(here + "/levels/" + l + "/isolate", level.isolate());
            }
            sources(here + "/levels/" + l + "/floorSource", level.floorSource());
        }
        chains(here, finding);
        measure(here, finding);
    }

    private void chains(String here, ChecklistDraft.Finding finding) {
        Set<String> inAChain = new HashSet<>();
        for (int c = 0; c < finding.chains().size(); c++) {
            List<String> chain = finding.chains().get(c);
            String at = here + "/chains/" + c;
            chain.forEach(level -> levelAt(at, finding, level));
            inAChain.addAll(chain);
            if (new HashSet<>(chain).size() < chain.size()) {
                fault(here + "/chains/" + c, "names a level twice", "each level once");
            }
            if (!chain.isEmpty()
                    && !finding.levels().isEmpty()
                    && !chain.get(0).equals(finding.levels().get(0).code())) {
                fault(
                        here + "/chains/" + c,
                        "starts at '" + chain.get(0) + "'",
                        "a chain starts at the reassuring level, '"
                                + finding.levels().get(0).code() + "'");
            }
        }
        for (ChecklistDraft.Level level : finding.levels()) {
            if (!inAChain.contains(level.code())) {
                fault(here + "/chains", "leave out the level '" + level.code() + "'", "every level in a chain");
            }
        }
    }

    private void measure(String here, ChecklistDraft.Finding finding) {
        ChecklistDraft.Measure measure = finding.measure();
        if (measure == null) {
            if (!finding.bands().isEmpty()) {
                fault(here + "/bands", "belong to a measured finding", "no bands, or a measure");
            }
            return;
        }
        if (measure.step().signum() <= 0) {
            fault(here + "/measure/step", "is " + measure.step(), "a step above zero");
        }
        if (finding.bands().isEmpty()) {
            fault(here + "/bands", "are missing", "at least one case: which numbers are which level");
        }
        for (int b = 0; b < finding.bands().size(); b++) {
            ChecklistDraft.Case it = finding.bands().get(b);
            String at = here + "/bands/" + b;
            when(at + "/when", it.when(), true);
            if (it.when().keySet().stream().filter(findings::containsKey).count() > 1) {
                fault(at + "/when", "depends on more than one other finding", "attributes and at most one finding");
            }
            if (it.when().containsKey(finding.id())) {
                fault(at + "/when", "depends on the finding itself", "another finding");
            }
            if (it.companionUpTo() != null && measure.companion() == null) {
                fault(at + "/companionUpTo", "there is no companion", "a companion in the measure");
            }
            sources(at + "/source", it.source());
            starts(at + "/from", finding, measure, it);
        }
        long drivers = finding.bands().stream()
                .flatMap(it -> it.when().keySet().stream())
                .filter(findings::containsKey)
                .distinct()
                .count();
        if (drivers > 1) {
            fault(here + "/bands", "depend on " + drivers + " other findings", "at most one other finding");
        }
    }

    private void starts(
            String here, ChecklistDraft.Finding finding, ChecklistDraft.Measure measure, ChecklistDraft.Case it) {
        it.from().forEach(start -> levelAt(here, finding, start.level()));
        if (it.from().isEmpty() || it.from().get(0).at().compareTo(measure.min()) != 0) {
            fault(
                    here,
                    "does not start at the least value",
                    "the first band at " + measure.min().toPlainString());
        }
        BigDecimal before = null;
        for (ChecklistDraft.Start start : it.from()) {
            if (before != null && start.at().compareTo(before) <= 0) {
                fault(here, start.at().toPlainString() + " is not above the band before it", "ascending bands");
            }
            if (measure.step().signum() > 0
                    && start.at().remainder(measure.step()).signum() != 0) {
                fault(here, start.at().toPlainString() + " is not on a step", "a multiple of " + measure.step());
            }
            before = start.at();
        }
    }

    private void implications() {
        for (int i = 0; i < draft.implies().size(); i++) {
            ChecklistDraft.Implication it = draft.implies().get(i);
            String here = "/implies/" + i;
            ChecklistDraft.Finding from = term(here, it.finding(), it.level());
            ChecklistDraft.Finding then = term(here, it.then(), it.is());
            if (draft.implies().stream().anyMatch(other -> other.finding().equals(it.then()))) {
                fault(here, "'" + it.then() + "' implies something itself", "one step only");
            }
            if (from != null && then != null) {
                boolean bothReassuring = from.levels().get(0).code().equals(it.level())
                        && then.levels().get(0).code().equals(it.is());
                if (!bothReassuring || from.chains().size() != 1 || from.measure() != null || then.measure() != null) {
                    fault(
                            here,
                            "leads from " + it.finding() + " '" + it.level() + "' to " + it.then() + " '" + it.is()
                                    + "'",
                            "from the reassuring level of a finding with one chain to a reassuring level");
                }
            }
        }
    }

    private void combinations() {
        for (int c = 0; c < draft.combinations().size(); c++) {
            ChecklistDraft.Combination it = draft.combinations().get(c);
            String here = "/combinations/" + c;
            when(here + "/when", it.when(), false);
            sources(here + "/source", it.source());
            if (it.outcome() == null && it.isolate() == null) {
                fault(here, "decides nothing", "an outcome, an isolation route, or both");
            }
            if (it.outcome() != null) {
                outcome(here + "/outcome", it.outcome());
            }
            if (it.isolate() != null) {
                route(here + "/isolate", it.isolate());
            }
            if (it.groups().isEmpty()) {
                fault(here + "/groups", "is empty", "at least one group");
            }
            for (int g = 0; g < it.groups().size(); g++) {
                group(here + "/groups/" + g, it.groups().get(g));
            }
        }
    }

    private void group(String here, ChecklistDraft.Group group) {
        if (group.of().isEmpty() == (group.pointsFromOthers() == null)) {
            fault(here, "must hold either terms or pointsFromOthers", "one of the two");
        }
        group.of().forEach(term -> term(here, term.finding(), term.level()));
        if (new HashSet<>(group.of()).size() < group.of().size()) {
            fault(here, "names a term twice", "each term once");
        }
        if (!group.of().isEmpty()
                && (group.needed() < 1 || group.needed() > group.of().size())) {
            fault(
                    here + "/atLeast",
                    "is " + group.needed(),
                    "1 to " + group.of().size());
        }
    }

    private void advice() {
        Set<String> conditions =
                draft.conditions().stream().map(ChecklistDraft.Condition::id).collect(Collectors.toSet());
        for (int a = 0; a < draft.advice().size(); a++) {
            ChecklistDraft.Advice it = draft.advice().get(a);
            String here = "/advice/" + a;
            sources(here + "/source", it.source());
            it.when().findings().forEach(term -> term(here + "/when", term.finding(), term.level()));
            it.when().outcomes().forEach(code -> outcome(here + "/when", code));
            when(here + "/when/attributes", it.when().attributes(), false);
            it.when().conditions().forEach(id -> oneOf(here + "/when", id, conditions, "the id of a condition"));
        }
    }

    private void when(String here, Map<String, List<String>> when, boolean findingsToo) {
        when.forEach((key, values) -> {
            ChecklistDraft.Finding finding = findingsToo ? findings.get(key) : null;
            if (finding != null) {
                values.forEach(value -> levelAt(here, finding, value));
            } else if (attributeValues.containsKey(key)) {
                values.forEach(value -> oneOf(here, value, attributeValues.get(key), "a value of " + key));
                values.forEach(value -> notAnAlias(here, key, value));
            } else {
                fault(here, "'" + key + "' is not known", findingsToo ? "an attribute or finding" : "an attribute");
            }
        });
    }

    /** A value that counts as another one is never met: a rule about it would never hold. */
    private void notAnAlias(String here, String attribute, String value) {
        for (ChecklistDraft.Attribute it : draft.attributes()) {
            for (ChecklistDraft.Attribute.Value known : it.values()) {
                if (it.id().equals(attribute) && known.code().equals(value) && known.countsAs() != null) {
                    fault(here, "'" + value + "' counts as '" + known.countsAs() + "'", "the value it counts as");
                }
            }
        }
    }

    private ChecklistDraft.@Nullable Finding term(String here, String finding, String level) {
        ChecklistDraft.Finding found = findingAt(here, finding);
        if (found != null) {
            levelAt(here, found, level);
        }
        return found;
    }

    private ChecklistDraft.@Nullable Finding findingAt(String here, String id) {
        ChecklistDraft.Finding found = findings.get(id);
        if (found == null) {
            fault(here, "there is no finding '" + id + "'", "the id of a finding");
        }
        return found;
    }

    private void levelAt(String here, ChecklistDraft.Finding finding, String level) {
        if (finding.levels().stream().noneMatch(it -> it.code().equals(level))) {
            fault(here, "'" + level + "' is not a level of " + finding.id(), "one of its levels");
        }
    }

    private void outcome(String here, String code) {
        oneOf(here, code, outcomes, "a code of the outcome scale");
    }

    private void route(String here, String code) {
        oneOf(here, code, routes, "a route of the isolation block");
    }

    private void sources(String here, List<String> ids) {
        ids.forEach(id -> oneOf(here, id, sources, "the id of a source"));
    }

    private void oneOf(String here, String code, Set<String> known, String right) {
        if (!known.contains(code)) {
            fault(here, "'" + code + "' is not known", right);
        }
    }

    private <T> void unique(String here, List<T> items, Function<T, String> id) {
        Set<String> met = new HashSet<>();
        for (T item : items) {
            if (!met.add(id.apply(item))) {
                fault(here, "'" + id.apply(item) + "' is there twice", "each id once");
            }
        }
    }

    private void fault(String pointer, String wrong, String right) {
        faults.add(new Fault(pointer, wrong, right));
    }
}
