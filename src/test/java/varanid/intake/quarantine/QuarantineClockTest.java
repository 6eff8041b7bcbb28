package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static varanid.intake.quarantine.Room.day;
import static varanid.intake.quarantine.Room.id;
import static varanid.intake.quarantine.Room.ninety;
import static varanid.intake.quarantine.Room.sixty;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import varanid.intake.quarantine.ClockEvent.Ruling;

class QuarantineClockTest {

    private static Standing running(int start, int release) {
        return new Standing.Running(day(start), day(release));
    }

    @Test
    void anEmptySpaceHasNoClock() {
        assertThat(new Room().read(5).standing()).isEqualTo(new Standing.Empty());
        assertThat(new Room().read(5).inWords()).isEqualTo("Nobody stands here.");
        assertThat(new Room().occur(1, "mites", "mites").read(5).standing()).isEqualTo(new Standing.Empty());
    }

    @Test
    void countsTheDaysAnAnimalNeeds() {
        assertThat(new Room().place(0, "Ada", sixty()).read(10).standing()).isEqualTo(running(0, 60));
    }

    /** AZA 2007 (second-hand): any new reptile in the group starts the time again. */
    @Test
    void aNewAnimalBeginsTheDaysOfAllAgainAndTheLongestNeedCounts() {
        Room room = new Room().place(0, "Ada", ninety()).place(20, "Bo", sixty());
        assertThat(room.read(19).standing()).isEqualTo(running(0, 90));
        assertThat(room.read(20).standing()).isEqualTo(running(20, 110));
    }

    @Test
    void thatWhichLeavesTakesItsNeedAlongButNotTheRestart() {
        Room room =
                new Room().place(0, "Ada", sixty()).place(20, "Bo", ninety()).leave(30, "Bo");
        assertThat(room.read(30).standing()).isEqualTo(running(20, 80));
    }

    @Test
    void thatWhichCameBackAndLeftAgainOnOneDayIsGone() {
        Room room = new Room().place(0, "Ada", sixty()).leave(10, "Ada").place(10, "Ada", sixty());
        assertThat(room.read(10).animals()).containsExactly(id("Ada"));
        room.add(new ClockEvent.Left(id("leave again"), day(10), id("Ada")));
        assertThat(room.read(10).standing()).isEqualTo(new Standing.Empty());
    }

    @Test
    void afterTheLastHasLeftTheNextBeginsANewClock() {
        Room room = new Room()
                .place(0, "Ada", ninety())
                .occur(5, "sign", "other-sign")
                .leave(10, "Ada")
                .place(40, "Bo", sixty());
        assertThat(room.read(12).standing()).isEqualTo(new Standing.Empty());
        assertThat(room.read(40).standing()).isEqualTo(running(40, 100));
    }

    @ParameterizedTest
    @ValueSource(strings = {"unexplained-death", "air-sign-confirmed"})
    void contagionBeginsAgainAndRaisesTheMinimumForAll(String cause) {
        ClockReading reading =
                new Room().place(0, "Ada", sixty()).occur(10, "it", cause).read(10);
        assertThat(reading.standing()).isEqualTo(running(10, 100));
        assertThat(reading.vetRelease()).isTrue();
        assertThat(reading.neededDays()).isEqualTo(90);
    }

    @Test
    void aSlipWithContactBeginsAgainAndOneWithoutIsOnlyWrittenDown() {
        Room with = new Room().place(0, "Ada", sixty()).occur(10, "slip", "breach-with-contact");
        assertThat(with.read(10).standing()).isEqualTo(running(10, 70));
        Room without = new Room().place(0, "Ada", sixty()).occur(10, "slip", "breach-without-contact");
        assertThat(without.read(10).standing()).isEqualTo(running(0, 60));
        assertThat(without.read(10).history().get(1).because()).contains("without blame");
    }

    @Test
    void mitesHoldTheClockUntilTreatmentHasEnded() {
        Room room = new Room().place(0, "Ada", sixty()).occur(10, "mites", "mites");
        assertThat(room.read(15).standing())
                .isEqualTo(new Standing.Held(day(0), day(15 + 90), day(10 + 90), List.of(id("mites"))));
        assertThat(room.read(16).standing().earliest()).contains(day(16 + 90));
        room.treated(30, "mites");
        assertThat(room.read(30).standing()).isEqualTo(running(30, 120));
    }

    @Test
    void ofTwoCoursesOfTreatmentTheLaterEndCounts() {
        Room room = new Room()
                .place(0, "Ada", sixty())
                .occur(10, "mites", "mites")
                .treated(30, "mites")
                .treated(44, "mites");
        assertThat(room.read(44).standing()).isEqualTo(running(44, 134));
    }

    @Test
    void daysWithoutMitesAreCountedEvenWhereTheMinimumIsShorter() {
        Room room = new Room()
                .place(0, "Ada", sixty())
                .occur(2, "mites", "mites")
                .decide(5, 30)
                .treated(8, "mites");
        ClockReading reading = room.read(10);
        assertThat(reading.standing()).isEqualTo(running(8, 8 + 42));
        assertThat(reading.why()).anySatisfy(why -> assertThat(why).isInstanceOf(Why.Clear.class));
    }

    @Test
    void anotherSignPausesUntilAVetHasSpoken() {
        Room room = new Room().place(0, "Ada", sixty()).occur(10, "sign", "other-sign");
        assertThat(room.read(14).standing())
                .isEqualTo(new Standing.Held(day(0), day(64), day(60), List.of(id("sign"))));
        assertThat(room.read(14).openQuestions()).containsExactly(id("sign"));
        room.vet(17, "sign", Ruling.GOES_ON);
        assertThat(room.read(17).standing()).isEqualTo(running(0, 67));
        assertThat(room.read(17).openQuestions()).isEmpty();
    }

    @Test
    void aSignThatWasNothingCostsNoDay() {
        Room room = new Room()
                .place(0, "Ada", sixty())
                .occur(10, "sign", "other-sign")
                .vet(17, "sign", Ruling.WAS_NOTHING);
        assertThat(room.read(16).standing()).isInstanceOf(Standing.Held.class);
        assertThat(room.read(17).standing()).isEqualTo(running(0, 60));
    }

    @Test
    void overlappingPausesCountOnce() {
        Room room = new Room()
                .place(0, "Ada", sixty())
                .occur(10, "one", "other-sign")
                .occur(12, "other", "coccidia")
                .vet(15, "one", Ruling.GOES_ON)
                .vet(20, "other", Ruling.GOES_ON);
        assertThat(room.read(20).standing()).isEqualTo(running(0, 70));
    }

    @Test
    void aPauseAfterTheDaysHavePassedAddsNoneButWaitsForAVet() {
        Room room = new Room().place(0, "Ada", sixty()).occur(65, "sign", "other-sign");
        assertThat(room.read(70).standing())
                .isEqualTo(new Standing.Held(day(0), day(70), day(60), List.of(id("sign"))));
        room.vet(75, "sign", Ruling.GOES_ON);
        assertThat(room.read(80).standing()).isEqualTo(running(0, 60));
    }

    @Test
    void aRestartTakesAPauseBeforeItIntoAccountNoMore() {
        Room room = new Room()
                .place(0, "Ada", sixty())
                .occur(10, "sign", "other-sign")
                .vet(15, "sign", Ruling.GOES_ON)
                .place(20, "Bo", sixty());
        assertThat(room.read(20).standing()).isEqualTo(running(20, 80));
    }

    /** A vet decides on Cryptosporidium: here, from the end of treatment. */
    @Test
    void aVetCanLetTheDaysBeginAgainAtOnceOrAfterTreatment() {
        Room atOnce = new Room()
                .place(0, "Ada", ninety())
                .occur(10, "crypto", "cryptosporidium")
                .vet(15, "crypto", Ruling.RESTARTS);
        assertThat(atOnce.read(15).standing()).isEqualTo(running(15, 105));
        Room after = new Room()
                .place(0, "Ada", ninety())
                .occur(10, "crypto", "cryptosporidium")
                .vet(15, "crypto", Ruling.RESTARTS_AFTER_TREATMENT);
        assertThat(after.read(20).standing())
                .isEqualTo(new Standing.Held(day(0), day(110), day(100), List.of(id("crypto"))));
        after.treated(40, "crypto");
        assertThat(after.read(40).standing()).isEqualTo(running(40, 130));
    }

    @Test
    void aTreatmentThatEndedBeforeTheVetSpokeCountsFromItsEnd() {
        Room room = new Room()
                .place(0, "Ada", ninety())
                .occur(10, "crypto", "cryptosporidium")
                .treated(20, "crypto")
                .vet(25, "crypto", Ruling.RESTARTS_AFTER_TREATMENT);
        assertThat(room.read(25).standing()).isEqualTo(running(20, 115));
    }

    @ParameterizedTest
    @ValueSource(strings = {"tapeworm", "thorny-head", "pinworm", "flagellates"})
    void whatNearlyAllCarryOnlyAsksForAVetsWord(String agent) {
        Room room = new Room().place(0, "Ada", ninety()).occur(10, "found", agent);
        assertThat(room.read(10).standing()).isEqualTo(running(0, 90));
        assertThat(room.read(10).openQuestions()).containsExactly(id("found"));
        room.vet(12, "found", Ruling.GOES_ON);
        assertThat(room.read(12).openQuestions()).isEmpty();
        assertThat(room.read(12).standing()).isEqualTo(running(0, 90));
    }

    @Test
    void salmonellaNeverTouchesTheClock() {
        Room room = new Room().place(0, "Ada", sixty()).occur(10, "found", "salmonella");
        assertThat(room.read(10).standing()).isEqualTo(running(0, 60));
        assertThat(room.read(10).openQuestions()).isEmpty();
    }

    @Test
    void theHouseLengthensAndOnlyLengthens() {
        assertThat(new Room().place(0, "Ada", sixty()).lengthen(5, 100).read(5).standing())
                .isEqualTo(running(0, 100));
        ClockReading shorter =
                new Room().place(0, "Ada", sixty()).lengthen(5, 30).read(5);
        assertThat(shorter.standing()).isEqualTo(running(0, 60));
        assertThat(shorter.history().get(1).did()).isEqualTo(ClockReading.Did.NOTHING);
    }

    @Test
    void aVetDecidesBelowTheFloorForThoseWhoStandThere() {
        Room room = new Room().place(0, "Ada", ninety()).decide(10, 40);
        assertThat(room.read(10).standing()).isEqualTo(running(0, 40));
        room.place(20, "Bo", sixty());
        assertThat(room.read(20).standing()).isEqualTo(running(20, 80));
        room.occur(25, "death", "unexplained-death");
        assertThat(room.read(25).standing()).isEqualTo(running(25, 115));
    }

    @Test
    void ofTwoDecisionsOfAVetOnOneDayTheLaterWrittenStands() {
        Room room = new Room().place(0, "Ada", ninety()).decide(10, 40);
        room.add(new ClockEvent.VetDecided(id("again"), day(10), 50, "on second thought", Optional.empty()));
        assertThat(room.read(10).standing()).isEqualTo(running(0, 50));
    }

    @Test
    void aVetsDecisionAboutOneAnimalLeavesTheNeedsOfTheOthers() {
        Room room = new Room().place(0, "Ada", ninety()).place(0, "Bo", sixty());
        room.add(new ClockEvent.VetDecided(id("Ada only"), day(10), 20, "seen today", Optional.of(id("Ada"))));
        assertThat(room.read(10).standing()).isEqualTo(running(0, 60));
        room.add(new ClockEvent.VetDecided(id("nobody"), day(11), 5, "elsewhere", Optional.of(id("Cy"))));
        assertThat(room.read(11).standing()).isEqualTo(running(0, 60));
        assertThat(room.leave(12, "Bo").read(12).standing()).isEqualTo(running(0, 20));
    }

    @Test
    void anUnconfirmedAnswerBeginsTheDaysAgainAndTheQuestionStaysOpen() {
        Room room = new Room().place(0, "Ada", sixty()).occur(10, "sign", "other-sign");
        room.add(new ClockEvent.VetSpoke(id("reply"), day(12), id("sign"), Ruling.RESTARTS, false));
        assertThat(room.read(14).standing())
                .isEqualTo(new Standing.Held(day(12), day(12 + 60 + 2), day(12 + 60), List.of(id("sign"))));
        assertThat(room.read(14).openQuestions()).containsExactly(id("sign"));
        room.add(new ClockEvent.VetSpoke(id("nothing"), day(13), id("sign"), Ruling.WAS_NOTHING, false));
        assertThat(room.read(14).standing()).isInstanceOf(Standing.Held.class);
        room.vet(14, "sign", Ruling.GOES_ON);
        assertThat(room.read(14).openQuestions()).isEmpty();
        assertThat(room.read(14).standing()).isEqualTo(running(0, 60 + 4));
    }

    @Test
    void thatWhichComesBackOnTheSameDayNeverLeft() {
        Room room = new Room().place(0, "Ada", sixty()).leave(10, "Ada").place(10, "Ada", sixty());
        assertThat(room.read(10).standing()).isEqualTo(running(10, 70));
        assertThat(room.read(10).animals()).containsExactly(id("Ada"));
    }

    @Test
    void doesNotKnowTheFuture() {
        Room room = new Room().place(0, "Ada", sixty()).place(20, "Bo", ninety());
        assertThat(room.read(19).animals()).containsExactly(id("Ada"));
        assertThat(room.read(19).history()).hasSize(1);
    }

    @Test
    void saysBeforehandWhomANewcomerDelaysAndUntilWhen() {
        Room room = new Room().place(0, "Ada", sixty()).place(0, "Bo", sixty());
        Placement placement = room.clock().ifPlaced(Room.placing(30, "Cy", ninety()));
        assertThat(placement.before().standing()).isEqualTo(running(0, 60));
        assertThat(placement.after().standing()).isEqualTo(running(30, 120));
        assertThat(placement.delayed())
                .containsExactlyInAnyOrder(
                        new Placement.Delay(id("Ada"), day(60), day(120), 60),
                        new Placement.Delay(id("Bo"), day(60), day(120), 60));
        assertThat(room.read(30).animals()).hasSize(2);
    }

    @Test
    void aNewcomerInAnEmptySpaceDelaysNobody() {
        assertThat(new Room().clock().ifPlaced(Room.placing(3, "Ada", sixty())).delayed())
                .isEmpty();
        assertThat(new Room()
                        .place(0, "Ada", sixty())
                        .clock()
                        .ifPlaced(Room.placing(0, "Bo", sixty()))
                        .delayed())
                .isEmpty();
    }

    @Test
    void explainsItsDate() {
        Room room = new Room()
                .place(0, "Ada", sixty())
                .occur(10, "sign", "other-sign")
                .vet(12, "sign", Ruling.GOES_ON);
        assertThat(room.read(20).inWords())
                .isEqualTo(
                        "Earliest release on Thursday 4 March 2027, because its days count from Friday 1 January 2027: the first"
                                + " animal was placed; it takes 60 days: captive-bred and from one known source; 2 days from"
                                + " Monday 11 January 2027 did not count: another new sign (a vet says whether it is contagious). A"
                                + " person decides.");
        assertThat(room.read(20).history())
                .extracting(ClockReading.Step::did)
                .containsExactly(ClockReading.Did.STARTED, ClockReading.Did.PAUSED, ClockReading.Did.WENT_ON);
        assertThat(room.read(20).history().get(2).earliest()).contains(LocalDate.of(2027, 3, 4));
    }

    @Test
    void explainsWhatItWaitsFor() {
        String words = new Room()
                .place(0, "Ada", sixty())
                .occur(10, "mites", "mites")
                .read(12)
                .inWords();
        assertThat(words)
                .startsWith("No date yet, and not before Tuesday 13 April 2027, because")
                .contains("it takes 90 days: something contagious was found or is suspected (mites)")
                .contains(
                        "it waits since Monday 11 January 2027 for the end of treatment: mites (they walk from cage to cage)");
    }

    @Test
    void refusesEventsThatMakeNoSenseAllAtOnce() {
        Room room = new Room()
                .place(0, "Ada", sixty())
                .place(0, "Ada", sixty())
                .occur(1, "what", "bad-luck")
                .occur(1, "new", "new-animal")
                .vet(2, "nothing", Ruling.GOES_ON)
                .occur(5, "late", "other-sign")
                .treated(4, "late");
        assertThatIllegalArgumentException()
                .isThrownBy(room::clock)
                .withMessageContaining("there twice")
                .withMessageContaining("no cause \"bad-luck\"")
                .withMessageContaining("a new animal is placed")
                .withMessageContaining(id("nothing").toString())
                .withMessageContaining(id("late").toString());
    }

    /** Spring forward in most of Europe: days are dates, so no hour is lost or won. */
    @Test
    void daysAreDatesOverTheChangeOfClocksAndLeapDays() {
        Room room = new Room();
        room.add(new ClockEvent.Placed(id("p"), LocalDate.of(2028, 2, 1), id("Ada"), sixty()));
        assertThat(room.clock().read(LocalDate.of(2028, 2, 1)).standing().earliest())
                .contains(LocalDate.of(2028, 4, 1));
    }
}
