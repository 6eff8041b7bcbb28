package varanid.intake.scoring;

/** One completion of a look, summed up: every finding has one level. */
final class Tally {

    final int raised;
    final int[] sections;
    final int outcome;
    final int routes;
    /** Terms of combinations that this completion satisfies. */
    private final long[] met;

    private Tally(int raised, int[] sections, int outcome, int routes, long[] met) {
        this.raised = raised;
        this.sections = sections;
        this.outcome = outcome;
        this.routes = routes;
        this.met = met;
    }

    static Tally of(Circumstances circumstances, int[] levels) {
        Checklist checklist = circumstances.checklist;
        int sum = 0;
        int outcome = 0;
        int routes = 0;
        int[] sections = new int[checklist.sectionBands.length];
        int[] families = new int[checklist.familyCount];
        int[] parts = new int[checklist.sectionOfFamilyPart.length];
        long[] met = new long[checklist.termWords];
        for (FindingRules finding : checklist.findings) {
            int level = levels[finding.index];
            if (finding.idle[level]) {
                continue;
            }
            int raised = finding.raised[level];
            if (finding.family < 0) {
                sum += raised;
                sections[finding.section] += raised;
            } else {
                families[finding.family] = Math.max(families[finding.family], raised);
                parts[finding.familyPart] = Math.max(parts[finding.familyPart], raised);
            }
            outcome = Math.max(outcome, finding.floor[level]);
            routes |= finding.routes[level];
            long[] terms = finding.terms[level];
            for (int w = 0; w < met.length; w++) {
                met[w] |= terms[w];
            }
        }
        for (int family : families) {
            sum += family;
        }
        for (int p = 0; p < parts.length; p++) {
            sections[checklist.sectionOfFamilyPart[p]] += parts[p];
        }
        outcome = Math.max(outcome, checklist.totalBands.outcomeOf(sum));
        for (int s = 0; s < sections.length; s++) {
            outcome = Math.max(outcome, checklist.sectionBands[s].outcomeOf(sections[s]));
        }
        for (CombinationRules combination : checklist.combinations) {
            boolean matters = combination.outcome > outcome || (combination.routes & ~routes) != 0;
            if (matters
                    && combination.attributes.holds(circumstances.attributeValues)
                    && combination.holds(checklist, levels, met)) {
                outcome = Math.max(outcome, combination.outcome);
                routes |= combination.routes;
            }
        }
        return new Tally(sum, sections, outcome, routes, met);
    }

    boolean holds(CombinationRules combination, Circumstances circumstances, int[] levels) {
        return combination.attributes.holds(circumstances.attributeValues)
                && combination.holds(circumstances.checklist, levels, met);
    }
}
