package varanid.intake.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What scoring may never do, tried on random looks at the shipped checklist; a failure names its seed and look. */
class LawsTest {

    private final Checklist checklist = TestChecklists.REAL;
    private final ChecklistDraft draft = checklist.draft();
    private final Scorer scorer = new Scorer(checklist);

    @Test
    void aWorseAnswerNeverLowersAnything() {
        int[] tried = {0};
        forRandomLooks(1, TestChecklists.cases(), (look, random) -> {
            ChecklistDraft.Finding finding = pick(draft.findings(), random);
            Answer worse = worseAnswer(finding, look, random);
            if (worse == null) {
                return;
            }
            Look then = RandomLooks.with(look, finding.id(), worse);
            if (isRefused(then)) {
                return;
            }
            tried[0]++;
            Decision a = decide(look);
            Decision b = decide(then);
            boolean kept = b.lowestIndex() >= a.lowestIndex()
                    && b.highestIndex() >= a.highestIndex()
                    && b.recommendedIndex() >= a.recommendedIndex()
                    && b.lowestPoints().compareTo(a.lowestPoints()) >= 0
                    && b.highestPoints().compareTo(a.highestPoints()) >= 0
                    && (b.isStrictRecommended() || !a.isStrictRecommended())
                    && (b.isStrictPossible() || !a.isStrictPossible());
            if (!kept) {
                fail(describe(a) + " became " + describe(b) + " when " + finding.id() + " became " + worse, look);
            }
        });
        assertThat(tried[0]).isGreaterThan(TestChecklists.cases() / 20);
    }

    @Test
    void answeringAnUnknownNeverWidensAnything() {
        int[] tried = {0};
        forRandomLooks(2, TestChecklists.cases(), (look, random) -> {
            ChecklistDraft.Finding finding = pick(draft.findings(), random);
            Answer before = look.answers().get(finding.id());
            if (before != null && before != Answer.notObserved()) {
                return;
            }
            Look then = RandomLooks.with(
                    look, finding.id(), new RandomLooks(draft, random).answer(finding, random.nextDouble()));
            if (isRefused(then)) {
                return;
            }
            tried[0]++;
            Decision a = decide(look);
            Decision b = decide(then);
            boolean kept = b.lowestIndex() >= a.lowestIndex()
                    && b.highestIndex() <= a.highestIndex()
                    && b.lowestPoints().compareTo(a.lowestPoints()) >= 0
                    && b.highestPoints().compareTo(a.highestPoints()) <= 0;
            if (!kept) {
                fail(describe(a) + " widened to " + describe(b) + " by " + finding.id() + " " + then, look);
            }
        });
        assertThat(tried[0]).isGreaterThan(TestChecklists.cases() / 20);
    }

    @Test
    void notLookingNeverReassuresMoreThanSeeingNothing() {
        forRandomLooks(3, TestChecklists.cases(), (look, random) -> {
            ChecklistDraft.Finding finding = pick(draft.findings(), random);
            if (finding.measure() != null) {
                return;
            }
            Look reassuring = RandomLooks.with(look, finding.id(), Answer.seen(NaiveScorer.reassuring(finding)));
            Look missing = RandomLooks.with(look, finding.id(), null);
            Look notObserved = RandomLooks.with(look, finding.id(), Answer.notObserved());
            if (isRefused(reassuring) || isRefused(missing)) {
                return;
            }
            Decision seen = decide(reassuring);
            for (Look unseen : List.of(missing, notObserved)) {
                Decision unknown = decide(unseen);
                boolean kept = unknown.highestIndex() >= seen.highestIndex()
                        && unknown.recommendedIndex() >= seen.recommendedIndex()
                        && unknown.highestPoints().compareTo(seen.highestPoints()) >= 0
                        && (unknown.isStrictRecommended() || !seen.isStrictRecommended())
                        && (unknown.isStrictPossible() || !seen.isStrictPossible());
                if (!kept) {
                    fail(finding.id() + " unseen: " + describe(unknown) + ", seen: " + describe(seen), look);
                }
            }
        });
    }

    @Test
    void whileAMustSeeFindingIsUnseenThePrecautionHolds() {
        List<ChecklistDraft.Finding> mustSee = draft.findings().stream()
                .filter(ChecklistDraft.Finding::mustSee)
                .toList();
        int precaution =
                checklist.outcome(Objects.requireNonNull(draft.precaution()).outcome());
        forRandomLooks(4, TestChecklists.cases(), (look, random) -> {
            Look then = RandomLooks.with(look, pick(mustSee, random).id(), Answer.notObserved());
            if (!isRefused(then) && decide(then).recommendedIndex() < precaution) {
                fail("recommended " + decide(then).recommended(), then);
            }
        });
    }

    @Test
    void theOrderOfTheAnswersIsIrrelevant() {
        forRandomLooks(5, TestChecklists.costlyCases(), (look, random) -> {
            List<String> ids = new ArrayList<>(look.answers().keySet());
            Collections.shuffle(ids, random);
            Map<String, Answer> shuffled = new LinkedHashMap<>();
            ids.forEach(
                    id -> shuffled.put(id, Objects.requireNonNull(look.answers().get(id))));
            Circumstances circumstances = circumstancesOf(checklist, look);

            assertThat(describe(scorer.decide(circumstances, shuffled))).isEqualTo(describe(decide(look)));
            assertThat(scorer.score(new Look(shuffled, look.attributes(), look.conditions(), look.explainedBefore())))
                    .isEqualTo(scorer.score(look));
        });
    }

    @Test
    void theSameLookGivesTheSameResultEveryTime() {
        Checklist readAgain = Checklist.from(draft);
        forRandomLooks(
                6,
                TestChecklists.costlyCases(),
                (look, random) -> assertThat(new Scorer(readAgain).score(look)).isEqualTo(scorer.score(look)));
    }

    @Test
    void aFindingWithoutPointsChangesNothing() {
        Checklist more = Checklist.from(withFindings(and(draft.findings(), idleFinding()), draft.implies()));
        forRandomLooks(7, TestChecklists.cases(), (look, random) -> {
            Answer answer = List.of(Answer.seen("no"), Answer.seen("yes"), Answer.notObserved())
                    .get(random.nextInt(3));
            Look then = RandomLooks.with(look, "idle", random.nextInt(4) == 0 ? null : answer);
            String with = describe(new Scorer(more).decide(circumstancesOf(more, then), then.answers()));
            if (!with.equals(describe(decide(look)))) {
                fail("with a finding that counts for nothing: " + with + ", without: " + describe(decide(look)), then);
            }
        });
    }

    /** Without implications, because an answer that was not observed may stand for what another one rules out. */
    @Test
    void theWitnessesScoreToTheBounds() {
        Scorer plain = new Scorer(Checklist.from(withFindings(draft.findings(), List.of())));
        int[] tried = {0};
        forRandomLooks(8, TestChecklists.costlyCases(), (look, random) -> {
            Result result = scorer.score(look);
            for (boolean lowest : List.of(true, false)) {
                Map<String, String> witness = lowest ? result.witnessLowest() : result.witnessHighest();
                String bound =
                        lowest ? result.urgency().lowest() : result.urgency().highest();
                Look whole = new Look(answersOf(witness, look), look.attributes(), Set.of());
                Decision again = plain.decide(circumstancesOf(plain.checklist(), whole), whole.answers());
                assertThat(List.of(again.lowest(), again.highest(), again.recommended()))
                        .as("the witness of " + bound + " of " + look)
                        .containsOnly(bound);
                tried[0]++;
            }
        });
        assertThat(tried[0]).isPositive();
    }

    @Test
    void theSettlingLooksSettle() {
        forRandomLooks(9, TestChecklists.costlyCases(), (look, random) -> {
            Result result = scorer.score(look);
            Reading reading = Reading.of(circumstancesOf(checklist, look), look.answers(), new ArrayList<>());
            for (String id : result.settling().looks()) {
                reading = reading.reassured(checklist.indexOf(id));
            }
            assertThat(new Decision(reading, Bounds.of(reading)).isSettled())
                    .as(look.toString())
                    .isTrue();
            assertThat(result.urgency().settled())
                    .isEqualTo(result.settling().looks().isEmpty());
        });
    }

    /** The points in the reasons are those of the total; nothing counts that is not given a reason. */
    @Test
    void theReasonsAddUpToTheLowestTotal() {
        forRandomLooks(10, TestChecklists.costlyCases(), (look, random) -> {
            Result result = scorer.score(look);
            BigDecimal sum = result.reasons().stream()
                    .map(Result.Reason::points)
                    .filter(points -> points.signum() != 0)
                    .reduce(BigDecimal.ZERO, BigDecimal::add);
            BigDecimal levels = result.reasons().stream()
                    .filter(reason -> reason.kind() == Result.Reason.Kind.LEVEL)
                    .map(Result.Reason::points)
                    .reduce(BigDecimal.ZERO, BigDecimal::add);
            assertThat(levels)
                    .as(look.toString())
                    .isEqualByComparingTo(result.score().lowest());
            assertThat(sum).isGreaterThanOrEqualTo(levels);
            int most = result.reasons().stream()
                    .mapToInt(reason -> checklist.outcome(reason.outcome()))
                    .max()
                    .orElse(0);
            assertThat(draft.outcomes().get(most).code())
                    .as(look.toString())
                    .isEqualTo(result.urgency().recommended());
        });
    }

    /** One answer or number per finding that falls in the witness's level. */
    private Map<String, Answer> answersOf(Map<String, String> witness, Look look) {
        Map<String, Answer> answers = new HashMap<>();
        witness.forEach((id, level) -> {
            ChecklistDraft.Finding finding = checklist.findFinding(id).orElseThrow();
            answers.put(id, finding.measure() == null ? Answer.seen(level) : numberIn(finding, level, look));
        });
        return answers;
    }

    private Answer numberIn(ChecklistDraft.Finding finding, String level, Look look) {
        ChecklistDraft.Measure measure = Objects.requireNonNull(finding.measure());
        for (ChecklistDraft.Case it : finding.bands()) {
            for (ChecklistDraft.Start start : it.from()) {
                for (BigDecimal over : companionsOf(finding)) {
                    Answer answer =
                            new Answer.Measured(start.at(), start.at(), measure.companion() == null ? null : over);
                    Reading reading = Reading.of(
                            Circumstances.of(checklist, look.attributes(), Set.of(), Set.of()),
                            Map.of(finding.id(), answer),
                            new ArrayList<>());
                    if (reading.possible[checklist.indexOf(finding.id())]
                            == 1 << checklist.findings[checklist.indexOf(finding.id())].levelIndex(level)) {
                        return answer;
                    }
                }
            }
        }
        throw new AssertionError("no number is " + finding.id() + " " + level + " in " + look.attributes());
    }

    private static List<BigDecimal> companionsOf(ChecklistDraft.Finding finding) {
        List<BigDecimal> companions = new ArrayList<>();
        for (ChecklistDraft.Case it : finding.bands()) {
            companions.add(it.companionUpTo() == null ? BigDecimal.valueOf(400) : it.companionUpTo());
        }
        return companions;
    }

    /** An answer one or more steps further along a chain, or null. */
    private @Nullable Answer worseAnswer(ChecklistDraft.Finding finding, Look look, Random random) {
        Answer answer = look.answers().get(finding.id());
        if (answer instanceof Answer.Seen seen) {
            List<String> chain = pick(finding.chains(), random);
            int at = chain.indexOf(seen.level());
            return at < 0 || at + 1 >= chain.size()
                    ? null
                    : Answer.seen(chain.get(at + 1 + random.nextInt(chain.size() - at - 1)));
        }
        if (answer instanceof Answer.Measured before && before.low().equals(before.high())) {
            Answer other = new RandomLooks(draft, random).answer(finding, 0);
            if (other instanceof Answer.Measured after && after.low().equals(after.high())) {
                Answer.Measured moved = new Answer.Measured(after.low(), after.high(), before.companion());
                return isFurther(finding, level(finding, before, look), level(finding, moved, look)) ? moved : null;
            }
        }
        return null;
    }

    private String level(ChecklistDraft.Finding finding, Answer answer, Look look) {
        Reading reading = Reading.of(
                Circumstances.of(checklist, look.attributes(), Set.of(), Set.of()),
                Map.of(finding.id(), answer),
                new ArrayList<>());
        int f = checklist.indexOf(finding.id());
        return checklist.findings[f].levels[Integer.numberOfTrailingZeros(reading.possible[f])];
    }

    private static boolean isFurther(ChecklistDraft.Finding finding, String milder, String worse) {
        return finding.chains().stream()
                .anyMatch(chain -> chain.contains(milder) && chain.indexOf(worse) > chain.indexOf(milder));
    }

    private void forRandomLooks(int seed, int cases, BiConsumer<Look, Random> use) {
        Random random = new Random(seed);
        RandomLooks looks = new RandomLooks(draft, random);
        for (int n = 0; n < cases; n++) {
            Look look = looks.next();
            while (isRefused(look)) {
                look = looks.next();
            }
            try {
                use.accept(look, random);
            } catch (AssertionError e) {
                throw new AssertionError("seed " + seed + ", case " + n + ": " + e.getMessage(), e);
            }
        }
    }

    private static void fail(String what, Look look) {
        throw new AssertionError(what + "\n" + look);
    }

    private boolean isRefused(Look look) {
        return !scorer.faultsOf(look).isEmpty();
    }

    private Decision decide(Look look) {
        return scorer.decide(circumstancesOf(checklist, look), look.answers());
    }

    private static Circumstances circumstancesOf(Checklist checklist, Look look) {
        return Circumstances.of(checklist, look.attributes(), look.conditions(), look.explainedBefore());
    }

    private static String describe(Decision it) {
        return it.recommended() + " in " + it.lowest() + ".." + it.highest() + ", points " + it.lowestPoints() + ".."
                + it.highestPoints() + ", strict " + it.isStrictRecommended() + ".." + it.isStrictPossible()
                + (it.isSettled() ? ", settled" : "");
    }

    private ChecklistDraft.Finding idleFinding() {
        return new ChecklistDraft.Finding(
                "idle",
                draft.sections().get(0).id(),
                null,
                false,
                null,
                "?",
                null,
                null,
                false,
                null,
                null,
                List.of(idleLevel("no"), idleLevel("yes")),
                List.of(List.of("no", "yes")),
                List.of(),
                null,
                List.of(),
                List.of());
    }

    private static ChecklistDraft.Level idleLevel(String code) {
        return new ChecklistDraft.Level(code, null, BigDecimal.ZERO, null, null, List.of(), null);
    }

    private ChecklistDraft withFindings(
            List<ChecklistDraft.Finding> findings, List<ChecklistDraft.Implication> implies) {
        return new ChecklistDraft(
                draft.id(),
                draft.version(),
                draft.status(),
                draft.title(),
                draft.about(),
                draft.notices(),
                draft.outcomes(),
                draft.total(),
                draft.precaution(),
                draft.nextLook(),
                draft.attributes(),
                draft.isolation(),
                draft.sections(),
                draft.families(),
                draft.conditions(),
                findings,
                implies,
                draft.combinations(),
                draft.advice(),
                draft.sources());
    }

    private static <T> List<T> and(List<T> list, T one) {
        List<T> more = new ArrayList<>(list);
        more.add(one);
        return more;
    }

    private static <T> T pick(List<T> list, Random random) {
        return list.get(random.nextInt(list.size()));
    }
}
