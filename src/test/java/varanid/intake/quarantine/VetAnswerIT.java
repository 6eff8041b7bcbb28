package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;
import static varanid.intake.quarantine.Rescue.created;
import static varanid.intake.quarantine.Rescue.each;
import static varanid.intake.quarantine.Rescue.ok;

import java.net.URI;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;
import varanid.intake.service.Answer;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** What a vet's answer moves: the clock of the room, the plan, and what is said of release. */
@ServiceTest
class VetAnswerIT {

    private static final String WRITER =
            "\"writer\":{\"name\":\"Ines Okafor\",\"practice\":\"Harbour Reptile Practice\","
                    + "\"licenceStatement\":\"Register of Vets 4711\"}";

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    Rescue rescue;
    String shed;
    String ada;

    @BeforeEach
    void arrive() {
        rescue = new Rescue(organisations, clock);
        shed = rescue.room("Shed");
        ada = rescue.animal("Ada");
    }

    // ---- what people do

    private String body(Instant seenUpTo, String fields) {
        return "{\"seenUpTo\":\"" + seenUpTo + "\"," + fields + "," + WRITER + "}";
    }

    private Answer answers(String animal, Instant seenUpTo, String fields) {
        return rescue.vet.post("/api/v1/animals/" + animal + "/vet-decisions", body(seenUpTo, fields));
    }

    /** By a clinician's account, who has seen everything. */
    private String answered(String fields) {
        return created(answers(ada, clock.instant(), fields)).id();
    }

    /** By a link that the keeper gave out: nobody knows who wrote it. */
    private String replied(String fields) {
        String address = created(rescue.keeper.post(
                        "/api/v1/animals/" + ada + "/links", "{\"kind\":\"reply\",\"recipient\":\"the vet\"}"))
                .text("/address");
        return created(organisations.nobody().post(URI.create(address).getPath(), body(clock.instant(), fields)))
                .text("/id");
    }

    private void confirm(String answer) {
        Answer confirmed =
                rescue.vet.post("/api/v1/animals/" + ada + "/vet-decisions/" + answer + "/confirmation", "{}");
        assertThat(confirmed.status()).as(confirmed.body()).isIn(200, 201);
    }

    private String ruling(String cause, String ruling) {
        return "\"rulings\":[{\"cause\":\"" + cause + "\",\"ruling\":\"" + ruling + "\"}]";
    }

    private String until(int day) {
        return "\"quarantineUntil\":\"" + rescue.day(day) + "\"";
    }

    // ---- what people read

    private Answer quarantine(String animal) {
        return ok(rescue.keeper.get("/api/v1/animals/" + animal + "/quarantine"));
    }

    private List<JsonNode> visits(String animal) {
        return StreamSupport.stream(quarantine(animal).json().get("next").spliterator(), false)
                .filter(task -> task.get("kind").stringValue().equals("vet-visit"))
                .toList();
    }

    private void runsUntil(int day) {
        Answer shown = rescue.clock(shed);
        assertThat(shown.text("/standing")).as(shown.body()).isEqualTo("running");
        assertThat(shown.text("/earliestRelease"))
                .as(shown.text("/inWords"))
                .isEqualTo(rescue.day(day).toString());
    }

    private List<String> waitingFor() {
        return each(rescue.clock(shed).json().get("openQuestions"), "/cause");
    }

    private List<JsonNode> eventsOf(String answer) {
        return StreamSupport.stream(
                        ok(rescue.keeper.get("/api/v1/rooms/" + shed + "/events?limit=200"))
                                .json()
                                .get("items")
                                .spliterator(),
                        false)
                .filter(event -> event.at("/source/id").asString().equals(answer))
                .toList();
    }

    private JsonNode condition(String id) {
        return StreamSupport.stream(
                        ok(rescue.keeper.get("/api/v1/animals/" + ada + "/release-review"))
                                .json()
                                .get("conditions")
                                .spliterator(),
                        false)
                .filter(each -> each.get("id").stringValue().equals(id))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no condition " + id));
    }

    private String approval() {
        JsonNode approval = condition("vet-approval");
        return approval.get("state").stringValue() + " " + approval.get("evidence");
    }

    // ---- rulings

    /** 60 days from day -20, and the two that waited: 42. */
    @Test
    void oneRulingAnswersAllOpenAsksOfTheAnimalWithThatCause() {
        rescue.place(ada, shed, -20);
        rescue.look(ada, -2, "{\"nasal-discharge\":\"clear\"}");
        created(rescue.event(
                rescue.keeper,
                shed,
                "{\"kind\":\"occurred\",\"cause\":\"air-sign\",\"animalId\":\"%s\",\"on\":\"%s\"}",
                ada,
                rescue.day(-1)));
        assertThat(waitingFor()).containsExactly("air-sign", "air-sign");
        String answer = answered(ruling("air-sign", "goes-on"));
        assertThat(waitingFor()).isEmpty();
        // Something contagious was suspected: 90 instead of 60.
        runsUntil(-20 + 90 + 2);
        assertThat(eventsOf(answer)).hasSize(2).allSatisfy(event -> {
            assertThat(event.get("kind").stringValue()).isEqualTo("vet-spoke");
            assertThat(event.at("/source/kind").stringValue()).isEqualTo("vet-answer");
            assertThat(event.at("/source/part").stringValue()).isEqualTo("air-sign");
            assertThat(event.has("unconfirmed")).isFalse();
        });
        assertThat(rescue.event(
                                rescue.vet,
                                shed,
                                "{\"kind\":\"withdrawn\",\"about\":\"%s\",\"reason\":\"no\"}",
                                eventsOf(answer).get(0).get("id").stringValue())
                        .faults())
                .containsExactly("#/about");
    }

    @Test
    void whatTheVetHadNotSeenStaysOpen() {
        rescue.place(ada, shed, -20);
        Instant seen = clock.instant().minusSeconds(1);
        rescue.look(ada, -1, "{\"nasal-discharge\":\"clear\"}");
        created(answers(ada, seen, ruling("air-sign", "was-nothing")));
        assertThat(waitingFor()).containsExactly("air-sign");
        answered(ruling("air-sign", "was-nothing"));
        assertThat(waitingFor()).isEmpty();
        // No day was lost; but strict isolation was recommended, which asks for 90.
        runsUntil(-20 + 90);
    }

    @Test
    void rulingOnWhatNobodyAskedAboutChangesNothing() {
        rescue.place(ada, shed, -20);
        String answer = answered(ruling("mites", "restarts"));
        runsUntil(-20 + 60);
        assertThat(eventsOf(answer)).isEmpty();
    }

    @Test
    void aRulingOnNoCauseIsRefusedAndNothingIsKept() {
        rescue.place(ada, shed, -20);
        for (String cause : List.of("new-animal", "no-such-cause")) {
            Answer refused = answers(
                    ada,
                    clock.instant(),
                    "\"rulings\":[{\"cause\":\"mites\",\"ruling\":\"goes-on\"},{\"cause\":\"" + cause
                            + "\",\"ruling\":\"restarts\"}]");
            assertThat(refused.status()).isEqualTo(422);
            assertThat(refused.faults()).containsExactly("#/rulings/1/cause");
        }
        assertThat(ok(rescue.keeper.get("/api/v1/animals/" + ada + "/vet-decisions"))
                        .json()
                        .get("items"))
                .isEmpty();
    }

    // ---- who is not confirmed

    @Test
    void anUnconfirmedAnswerOnlyRaisesUntilItIsConfirmed() {
        rescue.place(ada, shed, -20);
        rescue.look(ada, -1, "{\"nasal-discharge\":\"clear\"}");
        String before = rescue.clock(shed).text("/notBefore");
        String reply = replied("\"urgency\":\"routine\",\"isolation\":\"standard\",\"approvesRelease\":true," + until(1)
                + "," + ruling("air-sign", "was-nothing"));
        assertThat(rescue.clock(shed).text("/notBefore")).isEqualTo(before);
        assertThat(waitingFor()).containsExactly("air-sign");
        assertThat(quarantine(ada).text("/isolation")).isEqualTo("strict");
        assertThat(quarantine(ada).text("/urgency")).isNotEqualTo("routine");
        assertThat(eventsOf(reply)).isEmpty();
        assertThat(approval()).startsWith("unmet");
        assertThat(condition("nothing-new-since-vet").get("state").stringValue())
                .isEqualTo("unknown");
        confirm(reply);
        assertThat(waitingFor()).isEmpty();
        runsUntil(1);
        assertThat(quarantine(ada).text("/isolation")).isEqualTo("standard");
        assertThat(quarantine(ada).text("/urgency")).isEqualTo("routine");
        assertThat(quarantine(ada).text("/urgencyBy")).isEqualTo("vet");
        assertThat(approval()).startsWith("met").contains("approved by Ines Okafor");
        assertThat(condition("nothing-new-since-vet").get("state").stringValue())
                .isEqualTo("met");
        assertThat(condition("nothing-new-since-vet").get("evidence").toString())
                .contains("Ines Okafor", "approves the release");
    }

    @Test
    void anUnconfirmedAnswerLetsTheDaysBeginAgainAndTheVetsWordIsStillWaitedFor() {
        rescue.place(ada, shed, -20);
        rescue.look(ada, -1, "{\"nasal-discharge\":\"clear\"}");
        String reply = replied("\"isolation\":\"strict\",\"approvesRelease\":false," + until(200) + ","
                + ruling("air-sign", "restarts"));
        Answer held = rescue.clock(shed);
        assertThat(held.text("/standing")).isEqualTo("held");
        assertThat(held.text("/start")).isEqualTo(rescue.day(0).toString());
        assertThat(held.text("/notBefore")).isEqualTo(rescue.day(200).toString());
        assertThat(waitingFor()).containsExactly("air-sign");
        assertThat(eventsOf(reply))
                .allSatisfy(event ->
                        assertThat(event.get("unconfirmed").booleanValue()).isTrue());
        assertThat(approval()).startsWith("unmet").contains("objects", "Ines Okafor");
        confirm(reply);
        assertThat(waitingFor()).isEmpty();
        runsUntil(200);
    }

    // ---- dates

    @Test
    void aLaterDateLengthensTheDaysOfTheRoomToThatDay() {
        rescue.place(ada, shed, -20);
        rescue.look(ada, -10, "{\"nasal-discharge\":\"clear\"}");
        // Ten days that did not count are not added to what the vet said.
        String answer = answered(ruling("air-sign", "goes-on") + "," + until(100));
        runsUntil(100);
        assertThat(each(rescue.clock(shed).json().get("why"), "/text").toString())
                .contains("Ines Okafor, Harbour Reptile Practice answered: not before");
        assertThat(eventsOf(answer)).hasSize(2);
    }

    @Test
    void anEarlierDateIsTheAnimalsAloneAndLeavesTheNeedsOfTheOthers() {
        String bo = rescue.animal("Bo", Rescue.CAPTIVE);
        rescue.place(ada, shed, -20);
        rescue.place(bo, shed, -20);
        answered(until(5));
        // Bo needs 90.
        runsUntil(-20 + 90);
        created(rescue.keeper.post(
                "/api/v1/animals/" + bo + "/departures",
                "{\"because\":\"moved-on\",\"on\":\"" + rescue.day(0) + "\"}"));
        runsUntil(5);
    }

    @Test
    void anEarlierDateOfWhoHadNotSeenWhatHappenedSinceShortensNothing() {
        rescue.place(ada, shed, -20);
        Instant seen = clock.instant().minusSeconds(1);
        rescue.occur(shed, "breach-with-contact", 0);
        created(answers(ada, seen, until(5)));
        runsUntil(60);
    }

    // ---- answers that take the place of others

    @Test
    void anAnswerThatTakesThePlaceOfAnotherUndoesWhatFollowedFromIt() {
        rescue.place(ada, shed, -20);
        rescue.look(ada, -1, "{\"nasal-discharge\":\"clear\"}");
        String first = answered("\"approvesRelease\":true," + until(50) + "," + ruling("air-sign", "was-nothing"));
        runsUntil(50);
        String unsure = replied("\"words\":\"let me think\",\"supersedes\":\"" + first + "\"");
        runsUntil(50);
        confirm(unsure);
        assertThat(waitingFor()).containsExactly("air-sign");
        assertThat(approval()).startsWith("unmet").doesNotContain("approved");
        Answer approvals = ok(rescue.keeper.get("/api/v1/animals/" + ada + "/release-approvals"));
        assertThat(approvals.json().at("/items/0/approves").booleanValue()).isTrue();
        assertThat(approvals.json().at("/items/1").has("approves")).isFalse();
        assertThat(approvals.text("/items/1/answeredBy")).contains("Ines Okafor");
    }

    // ---- what came after

    @Test
    void aNewSignSinceTheAnswerStandsAgainstReleaseUntilAVetAnswers() {
        rescue.place(ada, shed, -20);
        answered("\"urgency\":\"routine\",\"isolation\":\"standard\"");
        rescue.look(ada, 0, "{\"laboured-breathing\":\"marked\"}");
        assertThat(quarantine(ada).text("/urgency")).isEqualTo("stat");
        assertThat(quarantine(ada).text("/alert")).startsWith("New since the vet's answer: call.");
        assertThat(quarantine(ada).text("/workPlace/place")).isEqualTo("sick");
        assertThat(condition("nothing-new-since-vet").get("state").stringValue())
                .isEqualTo("unmet");
        answered("\"urgency\":\"urgent\"");
        assertThat(quarantine(ada).json().has("alert")).isFalse();
        assertThat(quarantine(ada).text("/urgency")).isEqualTo("urgent");
        assertThat(condition("nothing-new-since-vet").get("state").stringValue())
                .isEqualTo("met");
    }

    @Test
    void whatAVetHasSeenAndCalledRoutineIsNotLookedAtEveryMorning() {
        // By the schedule it is looked at on day 21, which is the day after tomorrow.
        rescue.place(ada, shed, -19);
        rescue.look(ada, 0, "{\"laboured-breathing\":\"mild\"}");
        assertThat(nextLook()).isEqualTo(rescue.day(1));
        answered("\"urgency\":\"routine\",\"isolation\":\"standard\"," + ruling("air-sign", "was-nothing"));
        assertThat(nextLook()).isEqualTo(rescue.day(2));
    }

    private LocalDate nextLook() {
        return StreamSupport.stream(quarantine(ada).json().get("next").spliterator(), false)
                .filter(task -> task.get("kind").stringValue().equals("re-look"))
                .map(task -> LocalDate.parse(task.get("due").stringValue()))
                .filter(day -> day.isAfter(rescue.today))
                .findFirst()
                .orElseThrow();
    }

    // ---- visits

    @Test
    void theDayOfTheNextVisitIsATaskUntilAVetHasExaminedTheAnimal() {
        rescue.place(ada, shed, -20);
        answered("\"sawAnimal\":\"examined\",\"nextVisit\":\"" + rescue.day(3) + "\"");
        assertThat(visits(ada)).singleElement().satisfies(visit -> {
            assertThat(visit.get("due").stringValue()).isEqualTo(rescue.day(3).toString());
            assertThat(visit.get("ordinal").intValue()).isEqualTo(1);
        });
        answered("\"sawAnimal\":\"read-only\",\"nextVisit\":\"" + rescue.day(1) + "\"");
        assertThat(visits(ada))
                .singleElement()
                .satisfies(visit -> assertThat(visit.get("due").stringValue())
                        .isEqualTo(rescue.day(1).toString()));
        Answer calendar = ok(rescue.keeper.get("/api/v1/animals/" + ada + "/calendar"));
        assertThat(calendar.body().replace("\r\n ", "")).contains("UID:" + ada + ".vet-visit.1@varanid-intake");
        replied("\"sawAnimal\":\"examined\",\"words\":\"seen\"");
        assertThat(visits(ada)).as("nobody knows who wrote that").hasSize(1);
        answered("\"sawAnimal\":\"examined\",\"words\":\"seen\"");
        assertThat(visits(ada)).isEmpty();
    }

    @Test
    void anAnimalThatIsInNoQuarantineIsVisitedToo() {
        answered("\"nextVisit\":\"" + rescue.day(3) + "\"");
        assertThat(visits(ada)).hasSize(1);
        String address = created(rescue.keeper.post("/api/v1/calendars", "{\"label\":\"All of them\"}"))
                .text("/address");
        assertThat(ok(organisations.nobody().get(address)).body().replace("\r\n ", ""))
                .contains("UID:" + ada + ".vet-visit.1@varanid-intake");
    }
}
