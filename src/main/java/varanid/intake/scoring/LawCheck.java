package varanid.intake.scoring;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Whether scoring by this checklist keeps its laws: worse never counts for less, and one level of every finding is the
 * worst in every respect. Runs on a checklist whose references are sound.
 */
final class LawCheck {

    private final Checklist checklist;
    private final ChecklistDraft draft;
    private final List<Fault> faults = new ArrayList<>();

    private LawCheck(Checklist checklist) {
        this.checklist = checklist;
        draft = checklist.draft();
    }

    static List<Fault> faultsOf(Checklist checklist) {
        LawCheck check = new LawCheck(checklist);
        for (FindingRules finding : checklist.findings) {
            check.chainsNeverFall(finding);
            check.oneLevelIsTheWorst(finding);
            check.familyStartsAtNothing(finding);
            check.mustSeeIsWorthIt(finding);
            check.standsAloneIfRead(finding);
            if (finding.isMeasured()) {
                check.bandsRunAlongChains(finding);
                check.everyAnimalHasACase(finding);
            }
        }
        check.explanationsAreMild();
        check.unknownExposureIsTheLeastOfIt();
        check.boundsStayExact();
        return check.faults;
    }

    private void chainsNeverFall(FindingRules finding) {
        for (int c = 0; c < finding.draft.chains().size(); c++) {
            List<String> chain = finding.draft.chains().get(c);
            for (int i = 1; i < chain.size(); i++) {
                int milder = finding.levelIndex(chain.get(i - 1));
                int worse = finding.levelIndex(chain.get(i));
                if (!finding.atLeast(worse, milder)) {
                    fault(
                            finding,
                            "/chains/" + c,
                            "'" + chain.get(i) + "' counts for less than '" + chain.get(i - 1) + "' before it",
                            "points, floor and isolation that never fall along a chain");
                }
            }
        }
    }

    private void oneLevelIsTheWorst(FindingRules finding) {
        if (finding.worstOf(finding.all).length > 1) {
            fault(finding, "/levels", "no level is the worst in every respect", "one level that dominates the others");
        }
        for (int b = 0; b < finding.cases.length; b++) {
            if (finding.worstOf(finding.cases[b].allLevels()).length > 1) {
                fault(
                        finding,
                        "/bands/" + b,
                        "no level of this case is the worst in every respect",
                        "one level that dominates the others");
            }
        }
    }

    /** What depends on another finding must not also depend on conditions, nor the other one on a third. */
    private void standsAloneIfRead(FindingRules finding) {
        if (finding.driver < 0) {
            return;
        }
        String driver = checklist.findings[finding.driver].draft.id();
        if (checklist.findings[finding.driver].driver >= 0) {
            fault(finding, "/bands", "depend on " + driver + ", which depends on another finding", "one step only");
        }
        if (finding.mustSee || finding.mustSeeUnderCondition.length > 0) {
            fault(finding, "/mustSee", "is said of a finding that depends on " + driver, "a finding of its own");
        }
        if (finding.maskedByCondition.length > 0 || finding.excuses.length > 0) {
            fault(
                    finding,
                    "/bands",
                    "depend on " + driver + ", and a condition masks or explains the finding",
                    "one of the two");
        }
    }

    private void familyStartsAtNothing(FindingRules finding) {
        if (finding.family >= 0 && finding.basePoints != 0) {
            fault(
                    finding,
                    "/levels/0/points",
                    "is not zero in a family, of which only the heaviest member counts",
                    "0 for the reassuring level");
        }
    }

    private void mustSeeIsWorthIt(FindingRules finding) {
        boolean mustSee = finding.mustSee || finding.mustSeeUnderCondition.length > 0;
        if (mustSee && finding.floor[finding.worst] < checklist.precautionOutcome) {
            fault(
                    finding,
                    "/mustSee",
                    "its worst level is less urgent than the precaution",
                    "a floor of at least " + checklist.outcomeCode(checklist.precautionOutcome));
        }
    }

    private void bandsRunAlongChains(FindingRules finding) {
        for (int b = 0; b < finding.cases.length; b++) {
            int[] levels = finding.cases[b].levelsInOrder();
            int i = 1;
            while (i < levels.length && (finding.orWorse(levels[i]) & 1 << levels[i - 1]) != 0) {
                i++;
            }
            while (i < levels.length && (finding.orWorse(levels[i - 1]) & 1 << levels[i]) != 0) {
                i++;
            }
            if (i < levels.length) {
                fault(
                        finding,
                        "/bands/" + b,
                        "jump to '" + finding.levels[levels[i]] + "'",
                        "levels that get milder along one chain, then worse along another");
            }
        }
    }

    private void everyAnimalHasACase(FindingRules finding) {
        forEveryAnimal(animal -> {
            if (finding.driver < 0) {
                if (findCase(finding, animal, -1, null) == null) {
                    fault(finding, "/bands", "there is none for " + describe(animal), "a last case without 'when'");
                }
                return;
            }
            FindingRules driver = checklist.findings[finding.driver];
            for (int l = 0; l < driver.levels.length; l++) {
                if (findCase(finding, animal, l, null) == null) {
                    fault(
                            finding,
                            "/bands",
                            "there is none for " + describe(animal) + " with " + driver.draft.id() + " '"
                                    + driver.levels[l] + "'",
                            "a last case without 'when'");
                }
            }
            worseDriverIsNeverMilder(finding, driver, animal, null);
            for (ChecklistDraft.Case it : finding.draft.bands()) {
                if (it.companionUpTo() != null) {
                    worseDriverIsNeverMilder(finding, driver, animal, it.companionUpTo());
                }
            }
        });
    }

    private void worseDriverIsNeverMilder(
            FindingRules finding, FindingRules driver, int[] animal, @Nullable BigDecimal companion) {
        for (int milder = 0; milder < driver.levels.length; milder++) {
            for (int worse = 0; worse < driver.levels.length; worse++) {
                CaseRules before = findCase(finding, animal, milder, companion);
                CaseRules after = findCase(finding, animal, worse, companion);
                if (worse == milder || (driver.orWorse(milder) & 1 << worse) == 0 || before == null || after == null) {
                    continue;
                }
                for (BigDecimal value : breaks(before, after)) {
                    int then = after.levelOf(finding.inSteps(value));
                    int first = before.levelOf(finding.inSteps(value));
                    if (!finding.atLeast(then, first)) {
                        fault(
                                finding,
                                "/bands",
                                value.toPlainString() + " is '" + finding.levels[then] + "' with "
                                        + driver.draft.id() + " '" + driver.levels[worse] + "', but '"
                                        + finding.levels[first] + "' with '" + driver.levels[milder]
                                        + "'",
                                "a worse answer there never makes this one milder");
                        return;
                    }
                }
            }
        }
    }

    private static List<BigDecimal> breaks(CaseRules one, CaseRules other) {
        List<BigDecimal> breaks = new ArrayList<>(List.of(one.starts()));
        breaks.addAll(List.of(other.starts()));
        return breaks;
    }

    private static @Nullable CaseRules findCase(
            FindingRules finding, int[] animal, int driverLevel, @Nullable BigDecimal companion) {
        for (CaseRules it : finding.cases) {
            if (it.isFor(animal, driverLevel) && it.takesCompanion(companion)) {
                return it;
            }
        }
        return null;
    }

    private void explanationsAreMild() {
        for (int c = 0; c < draft.conditions().size(); c++) {
            ChecklistDraft.Condition condition = draft.conditions().get(c);
            for (int e = 0; e < condition.explains().size(); e++) {
                ChecklistDraft.Condition.Explains explains =
                        condition.explains().get(e);
                FindingRules finding = checklist.findings[checklist.indexOf(explains.finding())];
                int level = finding.levelIndex(explains.level());
                String here = "/conditions/" + c + "/explains/" + e;
                if (level == 0 || !isMildestWorrying(finding, level)) {
                    faults.add(new Fault(
                            here,
                            "'" + explains.level() + "' is not the mildest worrying level of " + explains.finding(),
                            "the first level of a chain that counts for anything"));
                }
                int meanwhile = explains.meanwhile() == null ? 0 : checklist.outcome(explains.meanwhile());
                if (finding.floor[level] == checklist.lastOutcome() && meanwhile < checklist.lastOutcome() - 1) {
                    faults.add(new Fault(
                            here,
                            "excuses a level with the most urgent floor and asks for nothing meanwhile",
                            "meanwhile: " + checklist.outcomeCode(Math.max(0, checklist.lastOutcome() - 1))
                                    + " or more"));
                }
                worseIsNeverLessThanExcused(here, finding, level, meanwhile);
            }
        }
    }

    /** While excused, a level asks for what holds meanwhile (or for the precaution); a worse one must not ask for less. */
    private void worseIsNeverLessThanExcused(String here, FindingRules finding, int level, int meanwhile) {
        boolean mustSee = finding.mustSee || finding.mustSeeUnderCondition.length > 0;
        int least = Math.max(meanwhile, mustSee ? checklist.precautionOutcome : 0);
        for (int worse = 0; worse < finding.levels.length; worse++) {
            boolean after = worse != level && (finding.orWorse(level) & 1 << worse) != 0;
            if (after && finding.floor[worse] < least) {
                faults.add(new Fault(
                        here,
                        "asks for '" + checklist.outcomeCode(least) + "' while '" + finding.levels[level]
                                + "' is excused, but '" + finding.levels[worse] + "', which is worse, does not",
                        "a floor of at least that for every worse level"));
            }
        }
    }

    /** Not knowing keeps the animal apart, so knowing the worst must too. */
    private void unknownExposureIsTheLeastOfIt() {
        ChecklistDraft.Isolation isolation = draft.isolation();
        if (isolation == null || isolation.unknownExposure() == null) {
            return;
        }
        for (String id : isolation.unknownExposure().findings()) {
            FindingRules finding = checklist.findings[checklist.indexOf(id)];
            if (finding.routes[finding.worst] == 0 || finding.excuses.length > 0 || finding.driver >= 0) {
                faults.add(
                        new Fault(
                                "/isolation/unknownExposure/findings",
                                "'" + id + "' can be known to be bad and then isolates less than if it is unknown",
                                "a finding whose worst level isolates, which no condition explains and no other finding decides"));
            }
        }
    }

    private static boolean isMildestWorrying(FindingRules finding, int level) {
        for (int before = 0; before < finding.levels.length; before++) {
            if (before != level && (finding.orMilder(level) & 1 << before) != 0 && !finding.isIdle(before)) {
                return false;
            }
        }
        return true;
    }

    private void boundsStayExact() {
        long tries = 1;
        for (int driver : checklist.drivers) {
            tries *= checklist.findings[driver].levels.length;
        }
        for (FindingRules finding : checklist.findings) {
            int most = 1;
            for (int set = 1; set <= finding.all && finding.isMeasured(); set++) {
                most = Math.max(most, Math.max(finding.mildestOf(set).length, finding.worstOf(set).length));
            }
            tries *= most;
            if (tries > Bounds.MOST_TRIES) {
                faults.add(new Fault(
                        "/findings",
                        "exact bounds could need more than " + Bounds.MOST_TRIES + " tries",
                        "fewer findings that decide how others are read, or that have two equal worst levels"));
                return;
            }
        }
    }

    private void forEveryAnimal(Consumer<int[]> use) {
        forEveryAnimal(0, new int[checklist.attributes.length], use);
    }

    private void forEveryAnimal(int attribute, int[] animal, Consumer<int[]> use) {
        if (attribute == animal.length) {
            use.accept(animal);
            return;
        }
        AttributeRules rules = checklist.attributes[attribute];
        for (int value = 0; value < rules.draft.values().size(); value++) {
            if (rules.countsAs(value) == value) {
                animal[attribute] = value;
                forEveryAnimal(attribute + 1, animal, use);
            }
        }
    }

    private String describe(int[] animal) {
        List<String> values = new ArrayList<>();
        for (int a = 0; a < animal.length; a++) {
            ChecklistDraft.Attribute attribute = checklist.attributes[a].draft;
            values.add(attribute.id() + " " + attribute.values().get(animal[a]).code());
        }
        return values.isEmpty() ? "any animal" : String.join(", ", values);
    }

    private void fault(FindingRules finding, String pointer, String wrong, String right) {
        Fault fault = new Fault(
                "/findings/" + finding.index + pointer,
                finding.draft.id() + ": " + Objects.requireNonNull(wrong),
                right);
        if (!faults.contains(fault)) {
            faults.add(fault);
        }
    }
}
