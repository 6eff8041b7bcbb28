package varanid.intake.vet;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import varanid.intake.assessment.KeptLook;
import varanid.intake.checklist.ShippedChecklist;
import varanid.intake.scoring.Answer;
import varanid.intake.scoring.ChecklistDraft;
import varanid.intake.scoring.Look;
import varanid.intake.scoring.LookReading;
import varanid.intake.scoring.Result;
import varanid.intake.vet.AnswerRules.Outcome;
import varanid.intake.vet.Recommendation.By;
import varanid.intake.vet.Recommendation.NewSince;
import varanid.intake.vet.VetAnswer.FindingVerdict;
import varanid.intake.vet.VetAnswer.SawAnimal;
import varanid.intake.vet.VetAnswer.Verdict;
import varanid.intake.vet.VetAnswer.Writer;

/** What a vet's answer does, on single cases and as laws on random ones. */
class AnswerRulesTest {

    private static final LocalDate DAY = LocalDate.of(2026, 3, 9);
    private static final Instant NOON = Instant.parse("2026-03-09T12:00:00Z");
    private static final int CASES = 600;

    private static final List<ChecklistDraft.Finding> LOOKED_AT =
            ShippedChecklist.SCORER.checklist().draft().findings().stream()
                    .filter(finding -> finding.measure() == null)
                    .toList();

    private int made;

    // ------------------------------------------------------------------------------------------ single cases

    @Test
    void withoutAnAnswerTheLastLookHolds() {
        Outcome it = decide(List.of(look(0, Map.of("laboured-breathing", "mild"))), List.of());
        assertThat(it.urgency()).contains("asap");
        assertThat(it.by()).isEqualTo(By.COMPUTED);
        assertThat(it.isolation()).isEqualTo("strict");
        assertThat(it.routes()).contains("air");
        assertThat(it.newSince()).isEmpty();
    }

    @Test
    void nothingHoldsWhereNobodyLookedAndNoVetSpoke() {
        Outcome it = decide(List.of(), List.of());
        assertThat(it.urgency()).isEmpty();
        assertThat(it.computed()).isEmpty();
    }

    @Test
    void whatIsRecordedAtTheMomentOfTheSummaryWasSeenAndAMillisecondLaterWasNot() {
        LookFacts before = look(0, Map.of());
        LookFacts worse = look(60, Map.of("laboured-breathing", "mild"));
        Instant recorded = worse.kept().recordedAt();
        assertThat(decide(List.of(before, worse), List.of(answer(90, recorded, "routine", "standard")))
                        .urgency())
                .contains("routine");
        Outcome unseen =
                decide(List.of(before, worse), List.of(answer(90, recorded.minusMillis(1), "routine", "standard")));
        assertThat(unseen.urgency()).contains("asap");
        assertThat(unseen.by()).isEqualTo(By.COMPUTED);
        assertThat(unseen.isolation()).isEqualTo("strict");
        assertThat(unseen.newSince()).extracting(NewSince::finding).containsExactly("laboured-breathing");
    }

    @Test
    void aLaterLookThatShowsTheSameLeavesTheAnswerStanding() {
        Outcome it = decide(
                List.of(look(0, Map.of("laboured-breathing", "mild")), look(60, Map.of("laboured-breathing", "mild"))),
                List.of(answer(30, at(30), "routine", "standard")));
        assertThat(it.urgency()).contains("routine");
        assertThat(it.by()).isEqualTo(By.VET);
        assertThat(it.isolation()).isEqualTo("standard");
        assertThat(it.isolationBy()).isEqualTo(By.VET);
        assertThat(it.routes()).isEmpty();
        assertThat(it.newSince()).isEmpty();
    }

    @Test
    void aSignThatWasSeenOnceAndIsGoneCountsUntilAVetAnswers() {
        List<LookFacts> looks =
                List.of(look(0, Map.of()), look(60, Map.of("laboured-breathing", "marked")), look(120, Map.of()));
        VetAnswer first = answer(30, at(30), "routine", "standard");
        Outcome it = decide(looks, List.of(first));
        assertThat(it.urgency()).contains("stat");
        assertThat(it.isolation()).isEqualTo("strict");
        assertThat(it.newSince()).hasSize(1);
        assertThat(it.newSince().get(0).notSeenAt()).contains(at(120));
        Outcome then = decide(looks, List.of(first, answer(130, at(130), "routine", "standard")));
        assertThat(then.urgency()).contains("routine");
        assertThat(then.isolation()).isEqualTo("standard");
        assertThat(then.newSince()).isEmpty();
    }

    @Test
    void whatTheVetFoundAndNamedIsNothingNewUnlessItIsWorse() {
        FindingVerdict added = new FindingVerdict(
                Optional.of("laboured-breathing"), Verdict.ADDED, Optional.of("mild"), Optional.empty());
        VetAnswer answer = answer(30, at(30), "urgent", "standard", List.of(added));
        assertThat(decide(List.of(look(0, Map.of()), look(60, Map.of("laboured-breathing", "mild"))), List.of(answer))
                        .newSince())
                .isEmpty();
        Outcome same =
                decide(List.of(look(0, Map.of()), look(60, Map.of("laboured-breathing", "mild"))), List.of(answer));
        assertThat(same.urgency()).contains("urgent");
        assertThat(same.isolation()).isEqualTo("standard");
        assertThat(decide(List.of(look(0, Map.of()), look(60, Map.of("laboured-breathing", "marked"))), List.of(answer))
                        .newSince())
                .extracting(NewSince::level)
                .containsExactly("marked");
    }

    @Test
    void aSignThatTheVetNamedDoesNotHideAnotherReasonToKeepItApart() {
        FindingVerdict added =
                new FindingVerdict(Optional.of("mites"), Verdict.ADDED, Optional.of("few"), Optional.empty());
        VetAnswer answer = answer(30, at(30), "urgent", "standard", List.of(added));
        Map<String, Answer> nobodyKnowsOfTheOthers = withSigns(Map.of("mites", "few"));
        nobodyKnowsOfTheOthers.remove("bad-consignment");
        LookFacts before = look(0, Map.of());
        LookFacts after = looked(60, 60, nobodyKnowsOfTheOthers, Optional.empty());
        assertThat(after.kept().isolationRoutes())
                .containsAll(look(60, Map.of("mites", "few")).kept().isolationRoutes())
                .hasSizeGreaterThan(1);
        assertThat(decide(List.of(before, after), List.of(answer)).isolation()).isEqualTo("strict");
    }

    @Test
    void whatTheVetRejectedIsNewWhereItIsSeenForTheFirstTime() {
        FindingVerdict rejected = new FindingVerdict(
                Optional.of("laboured-breathing"), Verdict.REJECTED, Optional.of("mild"), Optional.empty());
        VetAnswer answer = answer(30, at(30), "urgent", "standard", List.of(rejected));
        assertThat(decide(List.of(look(0, Map.of()), look(60, Map.of("laboured-breathing", "mild"))), List.of(answer))
                        .newSince())
                .isNotEmpty();
    }

    @Test
    void aCorrectionOfALookThatTheVetHadSeenIsALookOfItsOwnIfItAddsSomething() {
        LookFacts seen = look(0, Map.of());
        VetAnswer answer = answer(30, at(30), "routine", "standard");
        LookFacts worse = correcting(seen, 0, 60, Map.of("mouth-bubbles", "marked"));
        Outcome it = decide(List.of(seen, worse), List.of(answer));
        assertThat(it.urgency()).contains("stat");
        assertThat(it.newSince()).extracting(NewSince::finding).containsExactly("mouth-bubbles");
        LookFacts same = correcting(seen, 0, 60, Map.of());
        assertThat(decide(List.of(seen, same), List.of(answer)).urgency()).contains("routine");
    }

    @Test
    void aLookWrittenDownLaterThatWasEarlierIsNotPassedOver() {
        LookFacts seen = look(0, Map.of());
        LookFacts late = look(-60, 60, Map.of("mouth-bubbles", "marked"));
        Outcome it = decide(List.of(seen, late), List.of(answer(30, at(30), "routine", "standard")));
        assertThat(it.urgency()).contains("stat");
        assertThat(it.newSince()).hasSize(1);
    }

    @Test
    void whatMustBeSeenAndIsNoLongerSeenRaises() {
        Map<String, Answer> blind = ShippedChecklist.nothingWrong();
        blind.remove("laboured-breathing");
        Outcome it = decide(
                List.of(look(0, Map.of()), looked(60, 60, blind, Optional.empty())),
                List.of(answer(30, at(30), "routine", "standard")));
        assertThat(it.urgency()).contains("urgent");
        assertThat(it.newSince()).as("it is not known to be there").isEmpty();
    }

    @Test
    void whereTheVetHadSeenNoLookEverythingIsNew() {
        Outcome it = decide(
                List.of(look(60, Map.of("laboured-breathing", "mild"))),
                List.of(answer(30, at(30), "routine", "standard")));
        assertThat(it.urgency()).contains("asap");
        assertThat(it.newSince()).hasSize(1);
    }

    @Test
    void whatALaterAnswerLeavesUnsaidStaysAsTheEarlierOneSaid() {
        VetAnswer first = answer(30, at(30), "routine", "standard");
        VetAnswer results = answer(90, at(90), null, null);
        Outcome it = decide(List.of(look(0, Map.of("laboured-breathing", "mild"))), List.of(first, results));
        assertThat(it.standing()).contains(results);
        assertThat(it.urgency()).contains("routine");
        assertThat(it.urgencyAnswer()).contains(first);
        assertThat(it.isolation()).isEqualTo("standard");
    }

    @Test
    void whatWasSupersededByAConfirmedAnswerSaysNothingAnyMore() {
        VetAnswer first = answer(30, at(30), "routine", "standard");
        VetAnswer second = superseding(first, answer(90, at(90), null, null));
        Outcome it = decide(List.of(look(0, Map.of("laboured-breathing", "mild"))), List.of(first, second));
        assertThat(it.urgency()).contains("asap");
        assertThat(it.by()).isEqualTo(By.COMPUTED);
        Outcome unconfirmed =
                decide(List.of(look(0, Map.of("laboured-breathing", "mild"))), List.of(first, second.unconfirmed()));
        assertThat(unconfirmed.urgency()).contains("routine");
    }

    @Test
    void anAnswerGivenBeforeTheOneThatStandsChangesNothing() {
        VetAnswer standing = answer(90, at(90), "urgent", "strict");
        Outcome it = decide(List.of(look(0, Map.of())), List.of(standing, answer(30, at(30), "stat", "standard")));
        assertThat(it.standing()).contains(standing);
        assertThat(it.urgency()).contains("urgent");
        assertThat(it.isolation()).isEqualTo("strict");
    }

    @Test
    void anUnconfirmedAnswerRaisesAndIsNamedAsSuch() {
        VetAnswer standing = answer(30, at(30), "routine", "standard");
        VetAnswer unconfirmed = answer(60, at(60), "asap", "strict").unconfirmed();
        Outcome it = decide(List.of(look(0, Map.of())), List.of(standing, unconfirmed));
        assertThat(it.urgency()).contains("asap");
        assertThat(it.by()).isEqualTo(By.VET);
        assertThat(it.raisedBy()).contains(unconfirmed);
        assertThat(it.urgencyAnswer()).isEmpty();
        assertThat(it.isolation()).isEqualTo("strict");
        assertThat(it.standing()).contains(standing);
        assertThat(it.unconfirmed()).containsExactly(unconfirmed);
    }

    @Test
    void aLookOfALaterDayIsLeftOut() {
        LookFacts tomorrow = look(24 * 60, Map.of("laboured-breathing", "marked"));
        Outcome it = decide(List.of(look(0, Map.of()), tomorrow), List.of(answer(30, at(30), "routine", "standard")));
        assertThat(it.urgency()).contains("routine");
    }

    // ------------------------------------------------------------------------------------------ laws

    @Test
    void aWorseSignInALaterLookNeverLowersAnything() {
        int[] tried = {0};
        int[] raised = {0};
        forCases(1, (random, looks, answers) -> {
            Instant seen = answers.get(answers.size() - 1).seenUpTo();
            List<LookFacts> later =
                    looks.stream().filter(look -> !look.wasRecordedBy(seen)).toList();
            if (later.isEmpty()) {
                return;
            }
            LookFacts one = later.get(random.nextInt(later.size()));
            Optional<LookFacts> worse = worse(random, one);
            if (worse.isEmpty()) {
                return;
            }
            List<LookFacts> instead = new ArrayList<>(looks);
            instead.set(looks.indexOf(one), worse.get());
            Outcome before = decide(looks, answers);
            Outcome after = decide(instead, answers);
            assertNotLower(before, after);
            tried[0]++;
            raised[0] += rank(after) > rank(before) ? 1 : 0;
        });
        assertThat(tried[0]).isGreaterThan(CASES / 4);
        assertThat(raised[0]).isPositive();
    }

    @Test
    void anotherLookThatShowsOneSignMoreNeverLowersAnything() {
        int[] tried = {0};
        forCases(2, (random, looks, answers) -> {
            LookFacts last = looks.get(looks.size() - 1);
            if (last.wasRecordedBy(answers.get(answers.size() - 1).seenUpTo())) {
                return;
            }
            Optional<LookFacts> worse = worse(random, last).map(it -> moved(it, 10_000));
            if (worse.isEmpty()) {
                return;
            }
            List<LookFacts> more = new ArrayList<>(looks);
            more.add(worse.get());
            assertNotLower(decide(looks, answers), decide(more, answers));
            tried[0]++;
        });
        assertThat(tried[0]).isGreaterThan(CASES / 4);
    }

    @Test
    void anUnconfirmedAnswerNeverLowersAnything() {
        int[] raised = {0};
        forCases(3, (random, looks, answers) -> {
            VetAnswer more = randomAnswer(random, random.nextInt(400)).unconfirmed();
            List<VetAnswer> with = new ArrayList<>(answers);
            with.add(more);
            Outcome before = decide(looks, answers);
            Outcome after = decide(looks, with);
            assertNotLower(before, after);
            assertThat(after.standing()).isEqualTo(before.standing());
            assertThat(after.newSince()).isEqualTo(before.newSince());
            raised[0] += rank(after) > rank(before) ? 1 : 0;
        });
        assertThat(raised[0]).isPositive();
    }

    @Test
    void aLookThatTheVetHadSeenNeverOutranksAConfirmedAnswer() {
        int[] lowered = {0};
        forCases(4, (random, looks, answers) -> {
            VetAnswer last = answer(500, at(500), randomUrgency(random), randomIsolation(random));
            List<VetAnswer> with = new ArrayList<>(answers);
            with.add(last);
            Outcome it = decide(looks, with);
            assertThat(it.urgency()).isEqualTo(last.urgency());
            assertThat(it.isolation()).isEqualTo(last.isolation().orElseThrow());
            assertThat(it.by()).isEqualTo(By.VET);
            assertThat(it.standing()).contains(last);
            assertThat(it.newSince()).isEmpty();
            lowered[0] += rank(it) < rank(decide(looks, answers)) ? 1 : 0;
        });
        assertThat(lowered[0]).as("a later answer may lower, too").isPositive();
    }

    @Test
    void aNewSignThatCannotWaitAlwaysCalls() {
        int[] called = {0};
        forCases(5, (random, looks, answers) -> {
            Outcome it = decide(looks, answers);
            VetAnswer standing = it.standing().orElseThrow();
            List<LookFacts> seen = looks.stream()
                    .filter(look -> look.wasRecordedBy(standing.seenUpTo()))
                    .toList();
            Set<String> everSeen = seen.stream()
                    .flatMap(look -> look.kept().signs().stream())
                    .map(KeptLook.Sign::finding)
                    .collect(Collectors.toSet());
            Set<String> expected = looks.stream()
                    .filter(look -> !look.wasRecordedBy(standing.seenUpTo()))
                    .flatMap(look -> look.kept().signs().stream())
                    .filter(sign -> sign.floor().filter(Urgency::isSoon).isPresent())
                    .map(KeptLook.Sign::finding)
                    .filter(finding -> !everSeen.contains(finding))
                    .filter(finding -> standing.findings().stream()
                            .noneMatch(said -> said.finding().equals(Optional.of(finding))))
                    .collect(Collectors.toSet());
            assertThat(it.newSince().stream().map(NewSince::finding).collect(Collectors.toSet()))
                    .containsAll(expected);
            called[0] += expected.isEmpty() ? 0 : 1;
            it.newSince()
                    .forEach(each -> assertThat(Urgency.rank(it.urgency().orElseThrow()))
                            .isGreaterThanOrEqualTo(Urgency.rank(each.floor())));
        });
        assertThat(called[0]).isPositive();
    }

    @Test
    void theOrderOfRecordingIsIrrelevant() {
        forCases(6, (random, looks, answers) -> {
            List<LookFacts> shuffledLooks = new ArrayList<>(looks);
            List<VetAnswer> shuffledAnswers = new ArrayList<>(answers);
            Collections.shuffle(shuffledLooks, random);
            Collections.shuffle(shuffledAnswers, random);
            assertThat(decide(shuffledLooks, shuffledAnswers)).isEqualTo(decide(looks, answers));
        });
    }

    // ------------------------------------------------------------------------------------------ random cases

    private interface Case {
        void of(Random random, List<LookFacts> looks, List<VetAnswer> answers);
    }

    private void forCases(long seed, Case each) {
        Random random = new Random(seed);
        for (int i = 0; i < CASES; i++) {
            List<LookFacts> looks = new ArrayList<>();
            int many = 1 + random.nextInt(4);
            for (int j = 0; j < many; j++) {
                looks.add(randomLook(random, 10 + j * 100));
            }
            List<VetAnswer> answers = new ArrayList<>();
            int spoken = 1 + random.nextInt(3);
            for (int j = 0; j < spoken; j++) {
                VetAnswer answer = randomAnswer(random, j * 100 + random.nextInt(100));
                answers.add(j > 0 && random.nextInt(3) == 0 ? answer.unconfirmed() : answer);
            }
            answers.sort(VetAnswer.IN_ORDER);
            if (answers.stream().anyMatch(VetAnswer::confirmed)) {
                each.of(random, looks, answers);
            }
        }
    }

    private LookFacts randomLook(Random random, int minute) {
        while (true) {
            Map<String, Answer> answers = ShippedChecklist.nothingWrong();
            int changed = random.nextInt(5);
            for (int i = 0; i < changed; i++) {
                ChecklistDraft.Finding finding = LOOKED_AT.get(random.nextInt(LOOKED_AT.size()));
                if (random.nextInt(5) == 0) {
                    answers.put(finding.id(), Answer.notObserved());
                } else {
                    List<ChecklistDraft.Level> levels = finding.levels();
                    answers.put(
                            finding.id(),
                            Answer.seen(
                                    levels.get(random.nextInt(levels.size())).code()));
                }
            }
            if (isGood(answers)) {
                return looked(minute, minute, answers, Optional.empty());
            }
        }
    }

    private VetAnswer randomAnswer(Random random, int minute) {
        return answer(
                minute,
                at(random.nextInt(minute + 1)),
                random.nextInt(3) == 0 ? null : randomUrgency(random),
                random.nextInt(3) == 0 ? null : randomIsolation(random),
                random.nextInt(3) == 0 ? List.of(randomFinding(random)) : List.of());
    }

    private static FindingVerdict randomFinding(Random random) {
        ChecklistDraft.Finding finding = LOOKED_AT.get(random.nextInt(LOOKED_AT.size()));
        List<ChecklistDraft.Level> levels = finding.levels();
        return new FindingVerdict(
                Optional.of(finding.id()),
                Verdict.values()[random.nextInt(3)],
                Optional.of(levels.get(random.nextInt(levels.size())).code()),
                Optional.empty());
    }

    private static String randomUrgency(Random random) {
        return Urgency.CODES.get(random.nextInt(4));
    }

    private static String randomIsolation(Random random) {
        return random.nextBoolean() ? "standard" : "strict";
    }

    private final Map<UUID, Map<String, Answer>> given = new HashMap<>();

    /** The same look with one finding one step further along a chain. */
    private Optional<LookFacts> worse(Random random, LookFacts look) {
        Map<String, Answer> answers = new HashMap<>(given.get(look.id()));
        ChecklistDraft.Finding finding = LOOKED_AT.get(random.nextInt(LOOKED_AT.size()));
        if (!(answers.get(finding.id()) instanceof Answer.Seen seen)) {
            return Optional.empty();
        }
        List<String> further = finding.chains().stream()
                .filter(chain -> chain.contains(seen.level()))
                .flatMap(chain -> chain.stream().skip(chain.indexOf(seen.level()) + 1L))
                .toList();
        if (further.isEmpty()) {
            return Optional.empty();
        }
        answers.put(finding.id(), Answer.seen(further.get(random.nextInt(further.size()))));
        return isGood(answers)
                ? Optional.of(looked(
                        look.id(), look.kept().occurredAt(), look.kept().recordedAt(), answers, Optional.empty()))
                : Optional.empty();
    }

    private LookFacts moved(LookFacts look, int seconds) {
        return looked(
                new UUID(0, ++made),
                look.kept().occurredAt().plusSeconds(seconds),
                look.kept().recordedAt().plusSeconds(seconds),
                Objects.requireNonNull(given.get(look.id())),
                Optional.empty());
    }

    private static boolean isGood(Map<String, Answer> answers) {
        return ShippedChecklist.SCORER.faultsOf(asLook(answers)).isEmpty();
    }

    // ------------------------------------------------------------------------------------------ making them

    private static Look asLook(Map<String, Answer> answers) {
        return new Look(answers, Map.of("lifeStage", "adult", "origin", "U"), Set.of());
    }

    private static Instant at(int minute) {
        return NOON.plus(Duration.ofMinutes(minute));
    }

    private LookFacts look(int minute, Map<String, String> signs) {
        return look(minute, minute, signs);
    }

    private LookFacts look(int occurred, int recorded, Map<String, String> signs) {
        return looked(occurred, recorded, withSigns(signs), Optional.empty());
    }

    private LookFacts correcting(LookFacts earlier, int occurred, int recorded, Map<String, String> signs) {
        return looked(occurred, recorded, withSigns(signs), Optional.of(earlier.id()));
    }

    private static Map<String, Answer> withSigns(Map<String, String> signs) {
        Map<String, Answer> answers = ShippedChecklist.nothingWrong();
        signs.forEach((finding, level) -> answers.put(finding, Answer.seen(level)));
        return answers;
    }

    private LookFacts looked(int occurred, int recorded, Map<String, Answer> answers, Optional<UUID> supersedes) {
        return looked(new UUID(0, ++made), at(occurred), at(recorded), answers, supersedes);
    }

    private LookFacts looked(
            UUID id, Instant occurred, Instant recorded, Map<String, Answer> answers, Optional<UUID> supersedes) {
        given.put(id, answers);
        Result result = ShippedChecklist.SCORER.score(asLook(answers));
        LookReading reading = ShippedChecklist.SCORER.read(asLook(answers));
        Result.Isolation isolation = result.isolation();
        KeptLook kept = new KeptLook(
                id,
                new UUID(1, 1),
                occurred,
                recorded,
                LocalDate.ofInstant(occurred, ZoneOffset.UTC),
                result.urgency().recommended(),
                isolation == null ? Optional.empty() : Optional.of(isolation.recommended()),
                isolation == null ? Set.of() : Set.copyOf(isolation.routes()),
                result.urgency().settled(),
                reading.signs().stream().map(AnswerRulesTest::sign).toList(),
                reading.unseenMustSee().stream()
                        .map(state -> state.finding().id())
                        .toList(),
                Set.of());
        return new LookFacts(
                kept,
                supersedes,
                result.urgency().recommended(),
                result.urgency().recommended(),
                result.urgency().basis() == Result.Basis.UNSEEN,
                reading);
    }

    private static KeptLook.Sign sign(LookReading.State state) {
        ChecklistDraft.Level level = Objects.requireNonNull(state.level());
        return new KeptLook.Sign(
                state.finding().id(),
                level.code(),
                String.valueOf(level.label()),
                level.points(),
                Optional.ofNullable(level.floor()),
                level.isolate() == null ? Set.of() : Set.of(level.isolate()));
    }

    private VetAnswer answer(int minute, Instant seenUpTo, @Nullable String urgency, @Nullable String isolation) {
        return answer(minute, seenUpTo, urgency, isolation, List.of());
    }

    private VetAnswer answer(
            int minute,
            Instant seenUpTo,
            @Nullable String urgency,
            @Nullable String isolation,
            List<FindingVerdict> findings) {
        return new VetAnswer(
                new UUID(2, ++made),
                new UUID(1, 1),
                at(minute),
                at(minute),
                seenUpTo,
                SawAnimal.EXAMINED,
                Optional.ofNullable(urgency),
                Optional.ofNullable(isolation),
                findings,
                List.of(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of("words"),
                new Writer("n", "p", "l", Optional.empty()),
                true,
                Optional.of(at(minute)),
                Optional.empty(),
                Optional.empty(),
                Optional.of(new UUID(3, 3)),
                Optional.empty());
    }

    private static VetAnswer superseding(VetAnswer earlier, VetAnswer it) {
        return new VetAnswer(
                it.id(),
                it.animalId(),
                it.answeredAt(),
                it.recordedAt(),
                it.seenUpTo(),
                it.sawAnimal(),
                it.urgency(),
                it.isolation(),
                it.findings(),
                it.tests(),
                it.instructions(),
                it.rulings(),
                it.quarantineUntil(),
                it.approvesRelease(),
                it.nextVisit(),
                it.words(),
                it.writer(),
                it.confirmed(),
                it.confirmedAt(),
                it.confirmedBy(),
                Optional.of(earlier.id()),
                it.recordedBy(),
                it.linkId());
    }

    private static Outcome decide(List<LookFacts> looks, List<VetAnswer> answers) {
        return AnswerRules.decide(looks, answers, DAY);
    }

    private static int rank(Outcome it) {
        return it.urgency().map(Urgency::rank).orElse(-1);
    }

    private static void assertNotLower(Outcome before, Outcome after) {
        assertThat(rank(after)).isGreaterThanOrEqualTo(rank(before));
        if (before.isolation().equals("strict")) {
            assertThat(after.isolation()).isEqualTo("strict");
        }
    }
}
