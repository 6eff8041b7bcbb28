package varanid.intake.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The scorer against one that tries every completion, on small random checklists with everything in them. */
class EveryCompletionTest {

    private static final int LOOKS_EACH = 20;

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

    static Decision decide(Checklist checklist, Look look) {
        return new Scorer(checklist)
                .decide(
                        Circumstances.of(checklist, look.attributes(), look.conditions(), look.explainedBefore()),
                        look.answers());
    }
}
