package varanid.intake.scoring;

/** One completion of a look, summed up: every finding has one level. */
final class Tally {

    private final Checklist checklist;
    int raised;
    final int[] sections;
    int outcome;
    int routes;
    /** The heaviest member so far of each family, then of each part of a family that is in one section. */
    private final int[] heaviest;

    /** Terms of combinations that this completion satisfies. */
    private final long[] met;

    private Tally(Checklist checklist, int[] sections, int[] heaviest, long[] met) {
        this.checklist = checklist;
        this.sections = sections;
        this.heaviest = heaviest;
        this.met = met;
    }

    /** Nothing added yet. */
    static Tally empty(Checklist checklist) {
        return new Tally(
                checklist,
                new int[checklist.sectionBands.length],
                new int[checklist.familyCount + checklist.sectionOfFamilyPart.length],
                new long[checklist.termWords]);
    }

    static Tally of(Circumstances circumstances, int[] levels) {
        Tally tally = empty(circumstances.checklist);
        for (FindingRules finding : circumstances.checklist.findings) {
            tally.add(finding, levels[finding.index]);
        }
        return tally.decide(circumstances, levels);
    }

    /** Another one with the same added, to be added to. */
    Tally copy() {
        Tally copy = new Tally(checklist, sections.clone(), heaviest.clone(), met.clone());
        copy.raised = raised;
        copy.outcome = outcome;
        copy.routes = routes;
        return copy;
    }

    void add(FindingRules finding, int level) {
        if (finding.isIdle(level)) {
            return;
        }
        int points = finding.raised[level];
        if (finding.family < 0) {
            raised += points;
            sections[finding.section] += points;
        } else {
            int part = checklist.familyCount + finding.familyPart;
            heaviest[finding.family] = Math.max(heaviest[finding.family], points);
            heaviest[part] = Math.max(heaviest[part], points);
        }
        outcome = Math.max(outcome, finding.floor[level]);
        routes |= finding.routes[level];
        long[] terms = finding.terms[level];
        for (int w = 0; w < met.length; w++) {
            met[w] |= terms[w];
        }
    }

    /** Once every finding is added: what families, bands and combinations make of it. */
    Tally decide(Circumstances circumstances, int[] levels) {
        for (int family = 0; family < checklist.familyCount; family++) {
            raised += heaviest[family];
        }
        for (int p = 0; p < checklist.sectionOfFamilyPart.length; p++) {
            sections[checklist.sectionOfFamilyPart[p]] += heaviest[checklist.familyCount + p];
        }
        outcome = Math.max(outcome, checklist.totalBands.outcomeOf(raised));
        for (int s = 0; s < sections.length; s++) {
            outcome = Math.max(outcome, checklist.sectionBands[s].outcomeOf(sections[s]));
        }
        for (int c = 0; c < checklist.combinations.length; c++) {
            // Most fail here already, before anything else of them is looked at.
            if (checklist.leastTerms[c] != 0 && (met[0] & checklist.leastTerms[c]) == 0) {
                continue;
            }
            CombinationRules combination = checklist.combinations[c];
            boolean matters = combination.outcome > outcome || (combination.routes & ~routes) != 0;
            if (matters && holds(combination, circumstances, levels)) {
                outcome = Math.max(outcome, combination.outcome);
                routes |= combination.routes;
            }
        }
        return this;
    }

    boolean holds(CombinationRules combination, Circumstances circumstances, int[] levels) {
        return combination.holds(checklist, levels, met) && combination.attributes.holds(circumstances.attributeValues);
    }
}
