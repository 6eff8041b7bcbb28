package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** What is seen at an animal, and found in its samples, reaches the clock of its room. */
@ServiceTest
class LookToClockIT {

    private static final String NOTHING = "{\"mites\":\"absent\",\"nasal-discharge\":\"absent\"}";
    private static final String DISCHARGE = "{\"mites\":\"absent\",\"nasal-discharge\":\"clear\"}";

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    Rescue rescue;
    String shed;
    String ada;
    String bo;

    @BeforeEach
    void twoAnimalsForThirtyDays() {
        rescue = new Rescue(organisations, clock);
        shed = rescue.room("Shed");
        ada = rescue.animal("Ada");
        bo = rescue.animal("Bo");
        rescue.place(ada, shed, -30);
        rescue.place(bo, shed, -30);
    }

    @Test
    void aNewSignThatTravelsByAirPausesTheClockOfAll() {
        rescue.look(ada, -20, NOTHING);
        assertThat(rescue.clock(shed).text("/standing")).isEqualTo("running");
        Answer look = rescue.look(ada, -10, DISCHARGE);
        Answer clock = rescue.clock(shed);
        assertThat(clock.text("/standing")).isEqualTo("held");
        assertThat(clock.text("/waitingFor/0/cause")).isEqualTo("air-sign");
        assertThat(clock.text("/waitingFor/0/animal/name")).isEqualTo("Ada");
        assertThat(clock.text("/waitingFor/0/what")).contains("Nasal discharge: clear fluid");
        assertThat(clock.text("/history/2/event/source/id")).isEqualTo(look.id());
        rescue.look(ada, -9, DISCHARGE);
        assertThat(rescue.clock(shed).json().get("waitingFor"))
                .as("it is not new a day later")
                .hasSize(1);
    }

    @Test
    void mitesHoldAndAnotherContactSignPauses() {
        rescue.look(ada, -20, "{\"mites\":\"few\"}");
        assertThat(rescue.clock(shed).text("/waitingFor/0/cause")).isEqualTo("mites");
        rescue.look(bo, -19, "{\"stool-form\":\"watery\",\"ticks\":\"few\"}");
        assertThat(Rescue.each(rescue.clock(shed).json().get("waitingFor"), "/cause"))
                .containsExactlyInAnyOrder("mites", "other-sign", "ticks");
    }

    /** What the cold explains takes no urgency; the isolation counts it fully. */
    @Test
    void anExcusedSignCountsFully() {
        rescue.look(ada, -10, "{\"laboured-breathing\":\"mild\"}", ",\"conditions\":[\"handled\"]");
        assertThat(rescue.clock(shed).text("/waitingFor/0/cause")).isEqualTo("air-sign");
    }

    @Test
    void aCorrectedLookIsCorrectedInTheClockToo() {
        Answer wrong = rescue.look(ada, -10, "{\"mites\":\"many\"}");
        rescue.look(ada, -10, DISCHARGE, ",\"supersedes\":\"" + wrong.id() + "\"");
        Answer clock = rescue.clock(shed);
        assertThat(Rescue.each(clock.json().get("waitingFor"), "/cause")).containsExactly("air-sign");
        assertThat(clock.json().get("withdrawn")).anySatisfy(each -> {
            assertThat(each.at("/event/cause").asString()).isEqualTo("mites");
            assertThat(each.get("because").stringValue()).isEqualTo("corrected");
        });
    }

    @Test
    void aLookIsNotWithdrawnAsAnEventButAVetMaySayItWasNothing() {
        rescue.look(ada, -10, DISCHARGE);
        String event = rescue.clock(shed).text("/waitingFor/0/event");
        assertThat(rescue.event(
                                rescue.keeper,
                                shed,
                                "{\"kind\":\"withdrawn\",\"about\":\"%s\",\"reason\":\"water\"}",
                                event)
                        .faults())
                .containsExactly("#/about");
        Rescue.created(rescue.event(
                rescue.vet, shed, "{\"kind\":\"vet-spoke\",\"about\":\"%s\",\"ruling\":\"was-nothing\"}", event));
        assertThat(rescue.clock(shed).text("/standing")).isEqualTo("running");
    }

    @Test
    void anAnimalBringsTheSignsOfItsLastLookAlong() {
        String cy = rescue.animal("Cy");
        rescue.look(cy, -3, "{\"mites\":\"few\"}");
        Answer preview =
                rescue.keeper.post("/api/v1/rooms/" + shed + "/placement-preview", "{\"animalId\":\"" + cy + "\"}");
        assertThat(preview.text("/brings/0/cause")).isEqualTo("mites");
        assertThat(preview.text("/brings/0/what")).isEqualTo("Mites: a few");
        assertThat(preview.text("/after/standing")).isEqualTo("held");
        assertThat(preview.json().get("cautions")).hasSize(1);
        assertThat(preview.json().at("/minimumStay/days").intValue()).isEqualTo(90);
        rescue.place(cy, shed, 0);
        Answer clock = rescue.clock(shed);
        assertThat(clock.text("/waitingFor/0/cause")).isEqualTo("mites");
        assertThat(clock.text("/waitingFor/0/on")).isEqualTo(rescue.day(0).toString());
    }

    @Test
    void whatItsRoomStillWaitsForComesAlong() {
        rescue.look(ada, -10, "{\"mites\":\"few\"}");
        rescue.look(ada, -2, NOTHING);
        String garage = rescue.room("Garage");
        rescue.place(ada, garage, 0);
        assertThat(rescue.clock(garage).text("/waitingFor/0/cause"))
                .as("no mites were seen, and the treatment has not ended")
                .isEqualTo("mites");
    }

    @Test
    void aLookRecordedLateCountsWhereTheAnimalStoodThen() {
        String garage = rescue.room("Garage");
        rescue.place(ada, garage, -5);
        rescue.look(ada, -8, DISCHARGE);
        assertThat(rescue.clock(shed).text("/waitingFor/0/cause")).isEqualTo("air-sign");
        assertThat(rescue.clock(garage).text("/waitingFor/0/cause"))
                .as("its last look when it came")
                .isEqualTo("air-sign");
    }

    @Test
    void aMoveRecordedLateTakesTheLooksAlong() {
        rescue.look(ada, -3, DISCHARGE);
        assertThat(rescue.clock(shed).text("/standing")).isEqualTo("held");
        String garage = rescue.room("Garage");
        rescue.place(ada, garage, -5);
        assertThat(rescue.clock(shed).text("/standing")).isEqualTo("running");
        assertThat(rescue.clock(garage).text("/waitingFor/0/on"))
                .isEqualTo(rescue.day(-3).toString());
    }

    @Test
    void aStrictLookRaisesWhatTheAnimalNeeds() {
        assertThat(rescue.clock(shed).json().get("neededDays").intValue()).isEqualTo(60);
        Answer look = rescue.look(ada, -10, "{\"stool-form\":\"watery\"}");
        assertThat(rescue.clock(shed).json().get("neededDays").intValue()).isEqualTo(90);
        rescue.look(ada, -10, NOTHING, ",\"supersedes\":\"" + look.id() + "\"");
        assertThat(rescue.clock(shed).json().get("neededDays").intValue()).isEqualTo(60);
    }

    /** A clock that went on counting for a captive-bred animal would let a wild one out too early. */
    @Test
    void whatIsLearntOfItsOriginChangesWhatItNeeds() {
        Answer animal = rescue.keeper.get("/api/v1/animals/" + ada);
        Rescue.ok(rescue.keeper.put(
                "/api/v1/animals/" + ada,
                "{\"name\":\"Ada\",\"declaredOrigin\":\"W\",\"lifeStage\":\"juvenile\"}",
                "If-Match",
                animal.etag()));
        Answer clock = rescue.clock(shed);
        assertThat(clock.json().get("neededDays").intValue()).isEqualTo(90);
        assertThat(clock.json().get("vetRelease").booleanValue()).isTrue();
        assertThat(clock.text("/start"))
                .as("nothing began again")
                .isEqualTo(rescue.day(-30).toString());
    }

    @Test
    void anAgentInASampleActsAsThePolicySaysAndACorrectedResultNoMore() {
        String sample = Rescue.created(rescue.keeper.post(
                        "/api/v1/animals/" + ada + "/samples",
                        "{\"kind\":\"stool\",\"takenAt\":\"" + rescue.day(-12) + "T10:00:00Z\"}"))
                .header("Location")
                .orElseThrow();
        String result = "{\"method\":\"pcr\",\"outcome\":\"positive\",\"found\":[{\"agent\":\"entamoeba\"}],"
                + "\"reportedOn\":\"" + rescue.day(-8) + "\"}";
        Answer positive = Rescue.created(rescue.keeper.post(sample + "/results", result));
        Answer clock = rescue.clock(shed);
        assertThat(clock.text("/waitingFor/0/cause")).isEqualTo("entamoeba");
        assertThat(clock.text("/waitingFor/0/on")).isEqualTo(rescue.day(-8).toString());
        assertThat(clock.text("/history/2/event/source/kind")).isEqualTo("result");
        Rescue.created(rescue.keeper.post(
                sample + "/results",
                "{\"method\":\"pcr\",\"outcome\":\"negative\",\"supersedes\":\"" + positive.id() + "\"}"));
        assertThat(rescue.clock(shed).text("/standing")).isEqualTo("running");
        assertThat(rescue.clock(shed).text("/withdrawn/0/because")).isEqualTo("corrected");
    }

    @Test
    void coccidiaThatALaboratoryCallsSignificantAreAnotherCause() {
        String sample = Rescue.created(
                        rescue.keeper.post("/api/v1/animals/" + ada + "/samples", "{\"kind\":\"stool\"}"))
                .header("Location")
                .orElseThrow();
        Rescue.created(rescue.keeper.post(
                sample + "/results",
                "{\"method\":\"flotation\",\"outcome\":\"positive\","
                        + "\"found\":[{\"agent\":\"coccidia\",\"significant\":true},{\"agent\":\"tapeworm\"}]}"));
        Answer clock = rescue.clock(shed);
        assertThat(Rescue.each(clock.json().get("waitingFor"), "/cause")).containsExactly("coccidia-significant");
        assertThat(Rescue.each(clock.json().get("openQuestions"), "/cause")).containsExactly("tapeworm");
    }
}
