package varanid.intake.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import varanid.intake.scoring.LookComparison.Kind;

/** What may be said of two looks; the laws are tried on random looks at the shipped checklist and at small random ones. */
class LookComparisonTest {

    private static final Checklist REAL = TestChecklists.REAL;
    private static final Map<Kind, Kind> THE_OTHER_WAY = theOtherWay();

    @Test
    void aLookComparedWithItselfIsOnlyTheSame() {
        int[] met = {0};
        forPairs(21, (scorer, one, other) -> {
            LookReading reading = scorer.read(one);
            LookComparison itself = LookComparison.of(reading, scorer.read(one));
            assertThat(itself.changes()).allMatch(change -> change.kind() == Kind.SAME);
            met[0] += itself.changes().size();
            assertThat(itself.notComparable()).isEmpty();
        });
        assertThat(met[0]).isPositive();
    }

    @Test
    void newAndWorseSwapWithGoneAndBetterWhenTheOrderIsSwapped() {
        EnumMap<Kind, Integer> met = new EnumMap<>(Kind.class);
        forPairs(22, (scorer, one, other) -> {
            LookComparison there = LookComparison.of(scorer.read(one), scorer.read(other));
            LookComparison back = LookComparison.of(scorer.read(other), scorer.read(one));
            Map<String, Kind> turned = new HashMap<>();
            there.changes()
                    .forEach(change -> turned.put(
                            change.finding().id(), Objects.requireNonNull(THE_OTHER_WAY.get(change.kind()))));
            assertThat(kinds(back)).isEqualTo(turned);
            assertThat(back.stillUnknown()).isEqualTo(there.stillUnknown());
            there.changes().forEach(change -> met.merge(change.kind(), 1, Integer::sum));
        });
        assertThat(met.keySet()).as("every kind was met").containsExactlyInAnyOrder(Kind.values());
    }

    @Test
    void whatWasNotObservedIsNeverBetter() {
        int[] tried = {0};
        forPairs(23, (scorer, one, other) -> {
            List<ChecklistDraft.Finding> findings = scorer.checklist().draft().findings();
            String finding = findings.get(tried[0]++ % findings.size()).id();
            Look unseen = RandomLooks.with(other, finding, Answer.notObserved());
            if (!scorer.faultsOf(unseen).isEmpty()) {
                return;
            }
            Optional<Kind> kind = kindOf(LookComparison.of(scorer.read(one), scorer.read(unseen)), finding);
            assertThat(kind).isIn(Optional.empty(), Optional.of(Kind.NO_LONGER_SEEN));
        });
    }

    @Test
    void whatLooksWellUnderAConditionThatHidesItIsNeverBetter() {
        int[] tried = {0};
        forPairs(24, (scorer, one, other) -> {
            LookReading after = scorer.read(other);
            for (LookComparison.Change change :
                    LookComparison.of(scorer.read(one), after).changes()) {
                LookReading.State state = after.find(change.finding().id()).orElseThrow();
                if (state.unknownBecause() == Result.Unknown.Why.MASKED && !state.isSign()) {
                    tried[0]++;
                    assertThat(change.kind()).isEqualTo(Kind.NO_LONGER_SEEN);
                }
            }
        });
        assertThat(tried[0]).isPositive();
    }

    @Test
    void aWorseAnswerByItselfIsNewOrWorseAndNothingElseIs() {
        for (ChecklistDraft.Finding finding : REAL.draft().findings()) {
            if (finding.measure() != null) {
                continue;
            }
            for (List<String> chain : finding.chains()) {
                for (int i = 0; i + 1 < chain.size(); i++) {
                    LookComparison it = compare(
                            Map.of(finding.id(), Answer.seen(chain.get(i))),
                            Map.of(finding.id(), Answer.seen(chain.get(i + 1))));
                    assertThat(kindOf(it, finding.id())).contains(i == 0 ? Kind.NEW : Kind.WORSE);
                    assertThat(it.changes().stream().filter(LookComparison.Change::isNewOrWorse))
                            .hasSize(1);
                }
            }
        }
    }

    @Test
    void comparesAnotherChainAsAChangeAndNumbersByTheirLevels() {
        assertThat(kindOf(
                        compare(
                                Map.of("body-condition", Answer.seen("lean")),
                                Map.of("body-condition", Answer.seen("obese"))),
                        "body-condition"))
                .contains(Kind.CHANGED);
        // 8 and 9 days without food are one level of an adult, and 30 are another.
        assertThat(kindOf(compareDaysRefused("8", "9"), "days-food-refused")).contains(Kind.SAME);
        assertThat(kindOf(compareDaysRefused("8", "40"), "days-food-refused")).contains(Kind.WORSE);
        assertThat(kindOf(compareDaysRefused("40", "0"), "days-food-refused")).contains(Kind.GONE);
    }

    @Test
    void countsAnExcusedAnswerAsItWasSeen() {
        Look warm = new Look(Map.of("dull", Answer.seen("absent")), Map.of(), Set.of());
        Look cold = new Look(Map.of("dull", Answer.seen("mild")), Map.of(), Set.of("cold"));
        LookComparison it = LookComparison.of(scorer().read(warm), scorer().read(cold));
        LookComparison.Change change = it.changes().stream()
                .filter(each -> each.finding().id().equals("dull"))
                .findFirst()
                .orElseThrow();
        assertThat(change.kind()).isEqualTo(Kind.NEW);
        assertThat(Objects.requireNonNull(change.after()).unknownBecause()).isEqualTo(Result.Unknown.Why.EXPLAINED);
    }

    @Test
    void doesNotCallWhatIsMildUnderAMaskBetterThanWhatWasMarked() {
        Look before = new Look(Map.of("belly-swollen", Answer.seen("marked")), Map.of(), Set.of());
        Look fed = new Look(
                Map.of("belly-swollen", Answer.seen("mild")), Map.of(), Set.of("fed"), Set.of("belly-swollen"));
        assertThat(kindOf(LookComparison.of(scorer().read(before), scorer().read(fed)), "belly-swollen"))
                .contains(Kind.CANNOT_TELL);
    }

    @Test
    void saysWhatTwoVersionsDoNotBothKnow() {
        ChecklistDraft draft = REAL.draft();
        List<ChecklistDraft.Finding> findings = new ArrayList<>();
        for (ChecklistDraft.Finding finding : draft.findings()) {
            if (!finding.id().equals("lump")) {
                findings.add(finding);
            }
        }
        Scorer second = new Scorer(Checklist.from(withFindings(draft, findings)));
        Look before =
                new Look(Map.of("lump", Answer.seen(worst("lump")), "ticks", Answer.seen("few")), Map.of(), Set.of());
        Look after = new Look(Map.of("ticks", Answer.seen("many")), Map.of(), Set.of());
        LookComparison there = LookComparison.of(scorer().read(before), second.read(after));
        assertThat(there.notComparable())
                .extracting(LookComparison.NotComparable::finding)
                .containsExactly("lump");
        assertThat(kindOf(there, "ticks")).contains(Kind.WORSE);
        assertThat(kindOf(there, "lump")).isEmpty();
        LookComparison back = LookComparison.of(second.read(after), scorer().read(before));
        assertThat(back.notComparable())
                .extracting(LookComparison.NotComparable::finding)
                .containsExactly("lump");
        assertThat(LookComparison.of(second.read(after), second.read(after)).notComparable())
                .isEmpty();
    }

    @Test
    void doesNotCompareByALevelThatOnlyOneVersionHas() {
        Scorer second = new Scorer(Checklist.from(withFindings(
                REAL.draft(),
                REAL.draft().findings().stream()
                        .map(finding -> finding.id().equals("lump") ? renamed(finding, "huge") : finding)
                        .toList())));
        Look before = new Look(Map.of("lump", Answer.seen(worst("lump"))), Map.of(), Set.of());
        Look after = new Look(Map.of("lump", Answer.seen("huge")), Map.of(), Set.of());
        LookComparison it = LookComparison.of(scorer().read(before), second.read(after));
        assertThat(it.notComparable()).hasSize(1);
        assertThat(kindOf(it, "lump")).isEmpty();
        Look reassuring = new Look(Map.of("lump", Answer.seen("absent")), Map.of(), Set.of());
        assertThat(kindOf(LookComparison.of(scorer().read(reassuring), second.read(reassuring)), "lump"))
                .contains(Kind.SAME);
    }

    @Test
    void refusesToCompareByTwoChecklists() {
        LookReading one = scorer().read(new Look(Map.of(), Map.of(), Set.of()));
        Scorer newborn = new Scorer(TestChecklists.NEWBORN);
        LookReading other = newborn.read(new Look(Map.of(), Map.of(), Set.of()));
        assertThatThrownBy(() -> LookComparison.of(one, other)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void hasOnlyThingsSeenForTheFirstTimeInAFirstLook() {
        forPairs(25, (scorer, one, other) -> {
            LookComparison first = LookComparison.first(scorer.read(one));
            assertThat(first.changes().stream().map(LookComparison.Change::kind))
                    .allMatch(kind -> kind == Kind.FIRST_SEEN);
            assertThat(first.changes().size() + first.stillUnknown().size())
                    .isEqualTo(scorer.checklist().draft().findings().size());
        });
    }

    /** Tried against scoring the look with the worse answer. */
    @Test
    void namesTheMildestWorseLevelThatRaisesTheOutcome() {
        int[] tried = {0};
        forPairs(26, (scorer, one, other) -> {
            LookReading reading = scorer.read(one);
            int now = scorer.decide(circumstances(scorer, one), one.answers()).recommendedIndex();
            Map<String, Map<String, String>> claimed = new HashMap<>();
            reading.wouldRaise()
                    .forEach(it -> claimed.computeIfAbsent(it.finding().id(), id -> new HashMap<>())
                            .put(it.level().code(), it.outcome()));
            for (LookReading.State sign : reading.signs()) {
                if (sign.finding().measure() != null) {
                    continue;
                }
                Map<String, String> expected = new HashMap<>();
                for (List<String> chain : sign.finding().chains()) {
                    int at = chain.indexOf(Objects.requireNonNull(sign.level()).code());
                    for (int i = at + 1; at >= 0 && i < chain.size(); i++) {
                        Look then = RandomLooks.with(one, sign.finding().id(), Answer.seen(chain.get(i)));
                        Decision decision = scorer.decide(circumstances(scorer, then), then.answers());
                        if (decision.lowestIndex() > now) {
                            expected.put(chain.get(i), decision.lowest());
                            break;
                        }
                    }
                }
                tried[0] += expected.size();
                assertThat(claimed.getOrDefault(sign.finding().id(), Map.of()))
                        .as(sign.finding().id())
                        .isEqualTo(expected);
            }
        });
        assertThat(tried[0]).isPositive();
    }

    private interface Use {
        void pair(Scorer scorer, Look one, Look other);
    }

    private static void forPairs(int seed, Use use) {
        Random random = new Random(seed);
        int cases = TestChecklists.costlyCases();
        for (int n = 0; n < cases; n++) {
            Checklist checklist = n % 2 == 0 ? REAL : new RandomDrafts(random, true).next();
            Scorer scorer = new Scorer(checklist);
            RandomLooks looks = new RandomLooks(checklist.draft(), random);
            Look one = readable(scorer, looks);
            Look other = readable(scorer, looks);
            try {
                use.pair(scorer, one, other);
            } catch (AssertionError e) {
                throw new AssertionError(
                        "seed " + seed + ", case " + n + ": " + e.getMessage() + "\n" + one + "\n" + other, e);
            }
        }
    }

    private static Look readable(Scorer scorer, RandomLooks looks) {
        Look look = looks.next();
        while (!scorer.faultsOf(look).isEmpty()) {
            look = looks.next();
        }
        return look;
    }

    private static Circumstances circumstances(Scorer scorer, Look look) {
        return Circumstances.of(scorer.checklist(), look.attributes(), look.conditions(), look.explainedBefore());
    }

    private static Scorer scorer() {
        return new Scorer(REAL);
    }

    private static LookComparison compare(Map<String, Answer> before, Map<String, Answer> after) {
        return LookComparison.of(
                scorer().read(new Look(before, Map.of("lifeStage", "adult"), Set.of())),
                scorer().read(new Look(after, Map.of("lifeStage", "adult"), Set.of())));
    }

    private static LookComparison compareDaysRefused(String before, String after) {
        return compare(
                Map.of("days-food-refused", Answer.measured(before)),
                Map.of("days-food-refused", Answer.measured(after)));
    }

    private static Map<String, Kind> kinds(LookComparison it) {
        return it.changes().stream()
                .collect(Collectors.toMap(change -> change.finding().id(), LookComparison.Change::kind));
    }

    private static Optional<Kind> kindOf(LookComparison it, String finding) {
        return Optional.ofNullable(kinds(it).get(finding));
    }

    private static String worst(String finding) {
        List<ChecklistDraft.Level> levels =
                REAL.findFinding(finding).orElseThrow().levels();
        return levels.get(levels.size() - 1).code();
    }

    /** With another code for its last level. */
    private static ChecklistDraft.Finding renamed(ChecklistDraft.Finding it, String code) {
        List<ChecklistDraft.Level> levels = new ArrayList<>(it.levels());
        ChecklistDraft.Level last = levels.remove(levels.size() - 1);
        levels.add(new ChecklistDraft.Level(
                code,
                last.label(),
                last.points(),
                last.floor(),
                last.floorReason(),
                last.floorSource(),
                last.isolate()));
        List<List<String>> chains = it.chains().stream()
                .map(chain -> chain.stream()
                        .map(each -> each.equals(last.code()) ? code : each)
                        .toList())
                .toList();
        return new ChecklistDraft.Finding(
                it.id(),
                it.section(),
                it.family(),
                it.mustSee(),
                it.effort(),
                it.question(),
                it.help(),
                it.lookAlike(),
                it.ifSeenByChance(),
                it.notYetDue(),
                it.measure(),
                levels,
                chains,
                it.bands(),
                it.reason(),
                it.pointsSource(),
                it.source());
    }

    /** A second version; what names a finding that it no longer has is left out. */
    private static ChecklistDraft withFindings(ChecklistDraft draft, List<ChecklistDraft.Finding> findings) {
        return new ChecklistDraft(
                draft.id(),
                draft.version() + 1,
                "draft",
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
                draft.implies(),
                draft.combinations(),
                draft.advice(),
                draft.sources());
    }

    private static Map<Kind, Kind> theOtherWay() {
        EnumMap<Kind, Kind> turned = new EnumMap<>(Kind.class);
        for (Kind kind : Kind.values()) {
            turned.put(kind, kind);
        }
        turned.put(Kind.NEW, Kind.GONE);
        turned.put(Kind.GONE, Kind.NEW);
        turned.put(Kind.WORSE, Kind.BETTER);
        turned.put(Kind.BETTER, Kind.WORSE);
        turned.put(Kind.FIRST_SEEN, Kind.NO_LONGER_SEEN);
        turned.put(Kind.NO_LONGER_SEEN, Kind.FIRST_SEEN);
        return turned;
    }
}
