package varanid.intake.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** The scorer against one that tries every completion, on small random checklists with everything in them. */
class EveryCompletionTest {

    private static final int LOOKS_EACH = 5;

    @Test
    void boundsPointsAndIsolationAreThoseOfAllCompletions() {
        long seed = 31;
        Random random = new Random(seed);
        RandomDrafts drafts = new RandomDrafts(random, true);
        int contradictory = 0;
        for (int n = 0; n < TestChecklists.cases() / 10 / LOOKS_EACH; n++) {
            Checklist checklist = drafts.next();
            NaiveScorer naive = new NaiveScorer(checklist.draft());
            RandomLooks looks = new RandomLooks(checklist.draft(), random);
            for (int i = 0; i < LOOKS_EACH; i++) {
                Look look = looks.next();
                NaiveScorer.Verdict expected = naive.judge(look);
                String where =
                        "seed " + seed + ", checklist " + n + ", look " + i + ": " + look + "\n" + checklist.draft();
                List<Fault> faults = new Scorer(checklist).faultsOf(look);
                assertThat(!faults.isEmpty()).as("contradictory; " + where).isEqualTo(expected.contradictory());
                if (expected.contradictory()) {
                    contradictory++;
                } else {
                    Decision decision = decide(checklist, look);
                    assertThat(decision.lowestIndex()).as("lowest; " + where).isEqualTo(expected.lowest());
                    assertThat(decision.highestIndex()).as("highest; " + where).isEqualTo(expected.highest());
                    assertThat(decision.recommendedIndex())
                            .as("recommended; " + where)
                            .isEqualTo(expected.recommended());
                    assertThat(decision.lowestPoints().min(decision.highestPoints()))
                            .as("least points; " + where)
                            .isEqualByComparingTo(expected.leastTotal());
                    assertThat(decision.lowestPoints().max(decision.highestPoints()))
                            .as("most points; " + where)
                            .isEqualByComparingTo(expected.mostTotal());
                    assertThat(decision.isStrictRecommended())
                            .as("strict recommended; " + where)
                            .isEqualTo(expected.strictRecommended());
                    assertThat(decision.isStrictPossible())
                            .as("strict possible; " + where)
                            .isEqualTo(expected.strictPossible());
                    assertThat(decision.isSettled()).as("settled; " + where).isEqualTo(expected.settled());
                }
            }
        }
        assertThat(contradictory).isPositive();
    }

    @Test
    void theSettlingLooksSettleAndNoFewerDo() {
        long seed = 32;
        Random random = new Random(seed);
        RandomDrafts drafts = new RandomDrafts(random, false);
        for (int n = 0; n < TestChecklists.costlyCases(); n++) {
            Checklist checklist = drafts.next();
            NaiveScorer naive = new NaiveScorer(checklist.draft());
            RandomLooks looks = new RandomLooks(checklist.draft(), random);
            for (int i = 0; i < 5; i++) {
                Look look = looks.next();
                NaiveScorer.Verdict now = naive.judge(look);
                if (now.contradictory()) {
                    continue;
                }
                String where =
                        "seed " + seed + ", checklist " + n + ", look " + i + ": " + look + "\n" + checklist.draft();
                Map<String, String> reassuring = mildest(checklist, look, now);
                Result.Settling settling = new Scorer(checklist).score(look).settling();
                assertThat(settling.exact()).as(where).isTrue();
                assertThat(settles(naive, look, settling.looks(), reassuring))
                        .as("settles: " + settling + "; " + where)
                        .isTrue();
                for (List<String> fewer : subsets(
                        List.copyOf(reassuring.keySet()), settling.looks().size() - 1)) {
                    assertThat(settles(naive, look, fewer, reassuring))
                            .as("fewer settle: " + fewer + " instead of " + settling + "; " + where)
                            .isFalse();
                }
            }
        }
    }

    private static boolean settles(NaiveScorer naive, Look look, List<String> looks, Map<String, String> reassuring) {
        Map<String, String> fixed = new HashMap<>();
        looks.forEach(id -> fixed.put(id, reassuring.get(id)));
        return naive.judge(look, fixed).settled();
    }

    /**
     * For each open finding the mildest level that it may still be at. Where a mask adds the worst level of another
     * chain, two levels have none before them: then it is the one that was seen.
     */
    private static Map<String, String> mildest(Checklist checklist, Look look, NaiveScorer.Verdict now) {
        Map<String, String> mildest = new TreeMap<>();
        for (ChecklistDraft.Finding finding : checklist.draft().findings()) {
            Set<String> possible = Objects.requireNonNull(now.possible().get(finding.id()));
            if (possible.size() > 1) {
                List<String> first = finding.levels().stream()
                        .map(ChecklistDraft.Level::code)
                        .filter(possible::contains)
                        .filter(level -> finding.chains().stream()
                                .noneMatch(chain -> chain.contains(level)
                                        && chain.subList(0, chain.indexOf(level)).stream()
                                                .anyMatch(possible::contains)))
                        .toList();
                boolean seenIsOneOfThem =
                        look.answers().get(finding.id()) instanceof Answer.Seen seen && first.contains(seen.level());
                mildest.put(
                        finding.id(),
                        seenIsOneOfThem
                                ? ((Answer.Seen) Objects.requireNonNull(
                                                look.answers().get(finding.id())))
                                        .level()
                                : first.get(0));
            }
        }
        return mildest;
    }

    @Test
    void theNearestChangesChangeItAndNoFewerAnswersDo() {
        long seed = 33;
        Random random = new Random(seed);
        RandomDrafts drafts = new RandomDrafts(random, false);
        int changes = 0;
        for (int n = 0; n < TestChecklists.costlyCases(); n++) {
            Checklist checklist = drafts.next();
            NaiveScorer naive = new NaiveScorer(checklist.draft());
            RandomLooks looks = new RandomLooks(checklist.draft(), random);
            for (int i = 0; i < 5; i++) {
                Look look = looks.next();
                NaiveScorer.Verdict now = naive.judge(look);
                if (now.contradictory()) {
                    continue;
                }
                String where =
                        "seed " + seed + ", checklist " + n + ", look " + i + ": " + look + "\n" + checklist.draft();
                Result result = new Scorer(checklist).score(look);
                for (boolean worse : List.of(false, true)) {
                    Result.Change found = worse ? result.nearestWorse() : result.nearestMilder();
                    int fewest = fewestMoves(checklist, naive, look, now.lowest(), worse);
                    assertThat(found == null ? 0 : found.moves().size())
                            .as((worse ? "worse" : "milder") + " than " + now.lowest() + ": " + found + "; " + where)
                            .isEqualTo(fewest);
                    changes += fewest;
                }
            }
        }
        assertThat(changes).isPositive();
    }

    /** The fewest exact answers, at most three, that must be reassuring (or a step worse) to change the lowest; or 0. */
    private static int fewestMoves(Checklist checklist, NaiveScorer naive, Look look, int lowest, boolean worse) {
        List<String> answered = checklist.draft().findings().stream()
                .map(ChecklistDraft.Finding::id)
                .filter(id -> look.answers().get(id) instanceof Answer.Seen
                        || look.answers().get(id) instanceof Answer.Measured)
                .toList();
        for (int size = 1; size <= 3; size++) {
            for (List<String> moved : subsets(answered, size)) {
                if (moved.size() == size && changes(checklist, naive, look, moved, 0, lowest, worse)) {
                    return size;
                }
            }
        }
        return 0;
    }

    private static boolean changes(
            Checklist checklist,
            NaiveScorer naive,
            Look look,
            List<String> moved,
            int next,
            int lowest,
            boolean worse) {
        if (next == moved.size()) {
            NaiveScorer.Verdict then = naive.judge(look);
            return !then.contradictory() && (worse ? then.lowest() > lowest : then.lowest() < lowest);
        }
        ChecklistDraft.Finding finding = checklist.findFinding(moved.get(next)).orElseThrow();
        for (Answer other : movesOf(finding, look, worse)) {
            if (changes(
                    checklist, naive, RandomLooks.with(look, finding.id(), other), moved, next + 1, lowest, worse)) {
                return true;
            }
        }
        return false;
    }

    private static List<Answer> movesOf(ChecklistDraft.Finding finding, Look look, boolean worse) {
        Answer answer = look.answers().get(finding.id());
        if (!(answer instanceof Answer.Seen seen)) {
            return List.of();
        }
        if (!worse) {
            return List.of(Answer.seen(NaiveScorer.reassuring(finding)));
        }
        return finding.chains().stream()
                .filter(chain -> chain.contains(seen.level())
                        && !chain.get(chain.size() - 1).equals(seen.level()))
                .map(chain -> Answer.seen(chain.get(chain.indexOf(seen.level()) + 1)))
                .toList();
    }

    /** All subsets of up to so many. */
    private static List<List<String>> subsets(List<String> of, int most) {
        List<List<String>> subsets = new ArrayList<>();
        for (int bits = 0; bits < 1 << of.size(); bits++) {
            if (Integer.bitCount(bits) <= most) {
                List<String> subset = new ArrayList<>();
                for (int i = 0; i < of.size(); i++) {
                    if ((bits & 1 << i) != 0) {
                        subset.add(of.get(i));
                    }
                }
                subsets.add(subset);
            }
        }
        return subsets;
    }

    static Decision decide(Checklist checklist, Look look) {
        return new Scorer(checklist)
                .decide(
                        Circumstances.of(checklist, look.attributes(), look.conditions(), look.explainedBefore()),
                        look.answers());
    }
}
