package varanid.intake.scoring;

import java.util.Arrays;

/** Findings that together mean more than their points. */
final class CombinationRules {

    final ChecklistDraft.Combination draft;
    final int outcome;
    final int routes;
    final AttributeTest attributes;
    private final long[][] groupTerms;
    private final int[] needed;
    /** Points that must come from findings not named here, or -1. */
    private final int pointsFromOthers;

    private final boolean[] named;

    CombinationRules(Checklist checklist, ChecklistDraft.Combination draft, Terms terms) {
        this.draft = draft;
        outcome = draft.outcome() == null ? 0 : checklist.outcome(draft.outcome());
        ChecklistDraft.Isolation isolation = checklist.draft().isolation();
        routes = draft.isolate() == null || isolation == null
                ? 0
                : 1 << FindingRules.routeIndex(isolation, draft.isolate());
        attributes = new AttributeTest(checklist, draft.when());
        ChecklistDraft.Group[] counting =
                draft.groups().stream().filter(group -> !group.of().isEmpty()).toArray(ChecklistDraft.Group[]::new);
        groupTerms = new long[counting.length][terms.words()];
        needed = new int[counting.length];
        named = new boolean[checklist.findings.length];
        for (int g = 0; g < counting.length; g++) {
            needed[g] = counting[g].needed();
            for (ChecklistDraft.Term term : counting[g].of()) {
                Terms.set(groupTerms[g], terms.number(term));
                named[checklist.indexOf(term.finding())] = true;
            }
        }
        pointsFromOthers = draft.groups().stream()
                .filter(group -> group.pointsFromOthers() != null)
                .mapToInt(group -> Math.abs(checklist.severity(group.pointsFromOthers())))
                .max()
                .orElse(-1);
    }

    /** Terms of which at least one must be met, where that can be said in one word of bits; 0 where it cannot. */
    long leastTerms() {
        for (long[] group : groupTerms) {
            boolean inFirstWord = true;
            for (int w = 1; w < group.length; w++) {
                inFirstWord &= group[w] == 0;
            }
            if (inFirstWord) {
                return group[0];
            }
        }
        return 0;
    }

    /** Whether it holds, the animal's attributes apart. */
    boolean holds(Checklist checklist, int[] levels, long[] met) {
        for (int g = 0; g < needed.length; g++) {
            int count = 0;
            long[] group = groupTerms[g];
            for (int w = 0; w < group.length; w++) {
                long both = group[w] & met[w];
                if (both != 0) {
                    count += Long.bitCount(both);
                }
            }
            if (count < needed[g]) {
                return false;
            }
        }
        return pointsFromOthers < 0 || raisedByOthers(checklist, levels) >= pointsFromOthers;
    }

    private int raisedByOthers(Checklist checklist, int[] levels) {
        int sum = 0;
        int[] families = new int[checklist.familyCount];
        for (FindingRules finding : checklist.findings) {
            int raised = finding.raised[levels[finding.index]];
            if (named[finding.index] || raised == 0) {
                continue;
            }
            if (finding.family < 0) {
                sum += raised;
            } else {
                families[finding.family] = Math.max(families[finding.family], raised);
            }
        }
        return sum + Arrays.stream(families).sum();
    }
}
