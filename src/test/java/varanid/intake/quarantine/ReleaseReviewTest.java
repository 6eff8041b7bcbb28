package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static varanid.intake.quarantine.Room.day;
import static varanid.intake.quarantine.Room.id;
import static varanid.intake.quarantine.Room.ninety;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import varanid.intake.quarantine.ReleaseFacts.Result;

class ReleaseReviewTest {

    private static final MinimumStay WILD = Room.POLICY.minimumStay(Origin.WILD, Isolation.STANDARD, Set.of());

    /** A case in which every condition is met on day 90, to be spoilt one thing at a time. */
    private static final class Case {
        private Room room = new Room().place(0, "Ada", ninety());
        private int asOf = 90;
        private final List<ReleaseFacts.StoolSample> samples = new ArrayList<>(
                List.of(stool(5, 1, Result.NEGATIVE), stool(31, 2, Result.NEGATIVE), stool(62, 1, Result.NEGATIVE)));
        private List<ReleaseFacts.MiteLook> miteLooks =
                List.of(new ReleaseFacts.MiteLook(day(5), false), new ReleaseFacts.MiteLook(day(86), false));
        private Optional<ReleaseFacts.Look> look = Optional.of(new ReleaseFacts.Look(day(88), List.of(), List.of()));
        private ReleaseFacts.Weight weight = ReleaseFacts.Weight.NOT_FALLING;
        private Optional<String> treatment = Optional.empty();
        private Optional<ReleaseFacts.Approval> approval = Optional.empty();
        private Optional<ReleaseFacts.Approval> objection = Optional.empty();
        private Optional<ReleaseFacts.Answers> answers = Optional.empty();
        private Optional<Boolean> hold = Optional.empty();
        private boolean seized;

        ReleaseReview review() {
            return ReleaseReview.of(
                    Room.POLICY,
                    new ReleaseFacts(
                            day(asOf),
                            room.read(asOf),
                            samples,
                            miteLooks,
                            look,
                            weight,
                            treatment,
                            approval,
                            objection,
                            answers,
                            hold,
                            seized));
        }

        ReleaseCondition get(ReleaseCondition.Id id) {
            return review().conditions().stream()
                    .filter(condition -> condition.id() == id)
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static ReleaseFacts.StoolSample stool(int day, int hours, Result result) {
        return new ReleaseFacts.StoolSample(day(day), Optional.of(hours), result);
    }

    @Test
    void whatTheVetHadNotSeenStandsAgainstIt() {
        Case it = new Case();
        assertThat(it.review().conditions())
                .extracting(ReleaseCondition::id)
                .doesNotContain(ReleaseCondition.Id.NOTHING_NEW_SINCE_VET);
        it.answers = Optional.of(new ReleaseFacts.Answers(Optional.of("Dr A, of B"), List.of(), List.of()));
        assertThat(it.get(ReleaseCondition.Id.NOTHING_NEW_SINCE_VET))
                .isEqualTo(new ReleaseCondition.Met(ReleaseCondition.Id.NOTHING_NEW_SINCE_VET, List.of("Dr A, of B")));
        it.answers = Optional.of(new ReleaseFacts.Answers(Optional.of("Dr A"), List.of("gasps"), List.of()));
        assertThat(it.get(ReleaseCondition.Id.NOTHING_NEW_SINCE_VET)).isInstanceOf(ReleaseCondition.Unmet.class);
        it.answers = Optional.of(new ReleaseFacts.Answers(Optional.empty(), List.of(), List.of("somebody")));
        assertThat(it.get(ReleaseCondition.Id.NOTHING_NEW_SINCE_VET)).isInstanceOf(ReleaseCondition.Unknown.class);
    }

    @Test
    void aVetsObjectionCountsWhetherOrNotAnApprovalIsAskedFor() {
        Case it = new Case();
        it.objection = Optional.of(new ReleaseFacts.Approval("the vet", day(89)));
        assertThat(it.get(ReleaseCondition.Id.VET_APPROVAL)).isInstanceOf(ReleaseCondition.Unmet.class);
        assertThat(it.get(ReleaseCondition.Id.VET_APPROVAL).evidence().get(0)).contains("objects");
    }

    @Test
    void aGrowingAnimalThatDoesNotGainIsNotReady() {
        Case it = new Case();
        it.weight = ReleaseFacts.Weight.NOT_GAINING;
        assertThat(it.get(ReleaseCondition.Id.WEIGHT)).isInstanceOf(ReleaseCondition.Unmet.class);
    }

    @Test
    void everyConditionCanBeMetAndStillAPersonDecides() {
        ReleaseReview review = new Case().review();
        assertThat(review.open()).isEmpty();
        assertThat(review.conditions())
                .extracting(ReleaseCondition::id)
                .containsExactly(
                        ReleaseCondition.Id.MINIMUM_STAY,
                        ReleaseCondition.Id.VETS_WORD,
                        ReleaseCondition.Id.STOOL_NEGATIVE,
                        ReleaseCondition.Id.MITE_FREE,
                        ReleaseCondition.Id.LAST_LOOK,
                        ReleaseCondition.Id.WEIGHT,
                        ReleaseCondition.Id.TREATMENT_ENDED);
        assertThat(ReleaseReview.CAUTION).contains("A person decides");
    }

    @Test
    void neverSaysHealthy() {
        Case spoilt = new Case();
        spoilt.room.occur(80, "sign", "other-sign");
        spoilt.samples.clear();
        for (ReleaseReview review : List.of(new Case().review(), spoilt.review())) {
            assertThat(review.toString().toLowerCase(Locale.ROOT)).doesNotContain("healthy");
        }
        assertThat(ReleaseReview.CAUTION).doesNotContainIgnoringCase("healthy");
    }

    @Test
    void aDayTooEarlyIsUnmetAndSaysUntilWhen() {
        Case early = new Case();
        early.asOf = 89;
        assertThat(early.get(ReleaseCondition.Id.MINIMUM_STAY))
                .isInstanceOfSatisfying(
                        ReleaseCondition.Unmet.class,
                        unmet -> assertThat(unmet.missing()).isEqualTo("the days up to Thursday 1 April 2027"));
    }

    @Test
    void anOpenQuestionToAVetIsUnmetWithItsReason() {
        Case asked = new Case();
        asked.room.occur(80, "worms", "tapeworm");
        assertThat(asked.get(ReleaseCondition.Id.VETS_WORD))
                .isInstanceOfSatisfying(
                        ReleaseCondition.Unmet.class,
                        unmet -> assertThat(unmet.evidence())
                                .singleElement()
                                .asString()
                                .contains("tapeworm"));
        asked.room.vet(85, "worms", ClockEvent.Ruling.GOES_ON);
        assertThat(asked.get(ReleaseCondition.Id.VETS_WORD)).isInstanceOf(ReleaseCondition.Met.class);
    }

    /** Two negatives, 14 days apart: from memory, after AZA 2007. Less than three hours old: Pasmans 2008. */
    @Test
    void countsTheLastNegativesFarEnoughApart() {
        Case one = new Case();
        one.samples.clear();
        one.samples.add(stool(50, 1, Result.NEGATIVE));
        one.samples.add(stool(63, 1, Result.NEGATIVE));
        assertThat(one.get(ReleaseCondition.Id.STOOL_NEGATIVE)).isInstanceOf(ReleaseCondition.Unmet.class);
        one.samples.add(stool(64, 1, Result.NEGATIVE));
        assertThat(one.get(ReleaseCondition.Id.STOOL_NEGATIVE)).isInstanceOf(ReleaseCondition.Met.class);
    }

    @Test
    void aPositiveSampleBeginsTheNegativesAgain() {
        Case positive = new Case();
        positive.samples.add(stool(70, 1, Result.POSITIVE));
        assertThat(positive.get(ReleaseCondition.Id.STOOL_NEGATIVE)).isInstanceOf(ReleaseCondition.Unmet.class);
        positive.samples.add(stool(72, 1, Result.NEGATIVE));
        assertThat(positive.get(ReleaseCondition.Id.STOOL_NEGATIVE)).isInstanceOf(ReleaseCondition.Unmet.class);
        positive.samples.add(stool(86, 1, Result.NEGATIVE));
        assertThat(positive.get(ReleaseCondition.Id.STOOL_NEGATIVE)).isInstanceOf(ReleaseCondition.Met.class);
    }

    @Test
    void oldUnusableAndEarlierSamplesDoNotCountAndAnUnwrittenAgeIsUnknown() {
        Case old = new Case();
        old.samples.clear();
        old.samples.add(stool(31, 3, Result.NEGATIVE));
        old.samples.add(stool(62, 2, Result.NEGATIVE));
        old.samples.add(stool(80, 1, Result.UNUSABLE));
        assertThat(old.get(ReleaseCondition.Id.STOOL_NEGATIVE)).isInstanceOf(ReleaseCondition.Unmet.class);
        old.samples.add(new ReleaseFacts.StoolSample(day(78), Optional.empty(), Result.NEGATIVE));
        assertThat(old.get(ReleaseCondition.Id.STOOL_NEGATIVE)).isInstanceOf(ReleaseCondition.Unknown.class);

        Case restarted = new Case();
        restarted.room.place(40, "Bo", ninety());
        assertThat(restarted.get(ReleaseCondition.Id.STOOL_NEGATIVE)).isInstanceOf(ReleaseCondition.Unmet.class);
    }

    @Test
    void aResultStillToComeIsUnknown() {
        Case pending = new Case();
        pending.samples.add(stool(85, 1, Result.PENDING));
        assertThat(pending.get(ReleaseCondition.Id.STOOL_NEGATIVE)).isInstanceOf(ReleaseCondition.Unknown.class);
    }

    @Test
    void mitesSeenLatelyAreUnmetAndMitesNotLookedForUnknown() {
        Case seen = new Case();
        seen.miteLooks = List.of(new ReleaseFacts.MiteLook(day(49), true), new ReleaseFacts.MiteLook(day(88), false));
        assertThat(seen.get(ReleaseCondition.Id.MITE_FREE)).isInstanceOf(ReleaseCondition.Unmet.class);
        seen.miteLooks = List.of(new ReleaseFacts.MiteLook(day(48), true), new ReleaseFacts.MiteLook(day(88), false));
        assertThat(seen.get(ReleaseCondition.Id.MITE_FREE)).isInstanceOf(ReleaseCondition.Met.class);
        seen.miteLooks = List.of(new ReleaseFacts.MiteLook(day(82), false));
        assertThat(seen.get(ReleaseCondition.Id.MITE_FREE)).isInstanceOf(ReleaseCondition.Unknown.class);
        seen.miteLooks = List.of();
        assertThat(seen.get(ReleaseCondition.Id.MITE_FREE)).isInstanceOf(ReleaseCondition.Unknown.class);
    }

    @Test
    void theLastLookIsFreshCompleteAndWithoutSigns() {
        Case look = new Case();
        look.look = Optional.of(new ReleaseFacts.Look(day(88), List.of("hard breathing"), List.of()));
        assertThat(look.get(ReleaseCondition.Id.LAST_LOOK)).isInstanceOf(ReleaseCondition.Unmet.class);
        look.look = Optional.of(new ReleaseFacts.Look(day(82), List.of(), List.of()));
        assertThat(look.get(ReleaseCondition.Id.LAST_LOOK)).isInstanceOf(ReleaseCondition.Unknown.class);
        look.look = Optional.of(new ReleaseFacts.Look(day(88), List.of(), List.of("mouth")));
        assertThat(look.get(ReleaseCondition.Id.LAST_LOOK)).isInstanceOf(ReleaseCondition.Unknown.class);
        look.look = Optional.empty();
        assertThat(look.get(ReleaseCondition.Id.LAST_LOOK)).isInstanceOf(ReleaseCondition.Unknown.class);
    }

    @Test
    void weightAndTreatmentAreAsked() {
        Case other = new Case();
        other.weight = ReleaseFacts.Weight.FALLING;
        assertThat(other.get(ReleaseCondition.Id.WEIGHT)).isInstanceOf(ReleaseCondition.Unmet.class);
        other.weight = ReleaseFacts.Weight.CANNOT_TELL;
        assertThat(other.get(ReleaseCondition.Id.WEIGHT)).isInstanceOf(ReleaseCondition.Unknown.class);
        other.treatment = Optional.of("mites");
        assertThat(other.get(ReleaseCondition.Id.TREATMENT_ENDED)).isInstanceOf(ReleaseCondition.Unmet.class);
    }

    @Test
    void aWildAnimalNeedsAVetsApprovalSinceTheStart() {
        Case wild = new Case();
        wild.room = new Room().place(0, "Ada", WILD).place(1, "Ada", WILD);
        wild.asOf = 91;
        assertThat(wild.get(ReleaseCondition.Id.VET_APPROVAL)).isInstanceOf(ReleaseCondition.Unmet.class);
        wild.approval = Optional.of(new ReleaseFacts.Approval("Dr. Example", day(0)));
        assertThat(wild.get(ReleaseCondition.Id.VET_APPROVAL)).isInstanceOf(ReleaseCondition.Unmet.class);
        wild.approval = Optional.of(new ReleaseFacts.Approval("Dr. Example", day(89)));
        assertThat(wild.get(ReleaseCondition.Id.VET_APPROVAL)).isInstanceOf(ReleaseCondition.Met.class);
    }

    @Test
    void aSeizedAnimalIsEvidenceUntilSomebodySaysOtherwise() {
        Case seized = new Case();
        seized.seized = true;
        assertThat(seized.get(ReleaseCondition.Id.NO_LEGAL_HOLD)).isInstanceOf(ReleaseCondition.Unknown.class);
        seized.hold = Optional.of(true);
        assertThat(seized.get(ReleaseCondition.Id.NO_LEGAL_HOLD)).isInstanceOf(ReleaseCondition.Unmet.class);
        seized.hold = Optional.of(false);
        assertThat(seized.get(ReleaseCondition.Id.NO_LEGAL_HOLD)).isInstanceOf(ReleaseCondition.Met.class);
    }

    @Test
    void aPersonOverridesOnlyWithAReasonForEachOpenCondition() {
        Case spoilt = new Case();
        spoilt.asOf = 89;
        spoilt.weight = ReleaseFacts.Weight.CANNOT_TELL;
        ReleaseReview review = spoilt.review();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new ReleaseDecision(
                        id("Eve"), day(89), review, Map.of(ReleaseCondition.Id.MITE_FREE, "why not")))
                .withMessageContaining("minimum-stay is not met")
                .withMessageContaining("weight is not met")
                .withMessageContaining("mite-free is met");
        Map<ReleaseCondition.Id, String> reasons = Map.of(
                ReleaseCondition.Id.MINIMUM_STAY, "moves to the clinic today",
                ReleaseCondition.Id.WEIGHT, "scales broke");
        assertThat(new ReleaseDecision(id("Eve"), day(89), review, reasons).overrides())
                .isEqualTo(reasons);
        assertThat(ReleaseDecision.faults(day(90), review, reasons))
                .singleElement()
                .asString()
                .contains("review");
    }
}
