package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** What careless and hostile people send about rooms, moves and releases. Nothing of it is kept, nothing fails. */
@ServiceTest
class CarelessUseIT {

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    Rescue rescue;
    String shed;
    String garage;
    String ada;

    @BeforeEach
    void arrive() {
        rescue = new Rescue(organisations, clock);
        shed = rescue.room("Shed");
        garage = rescue.room("Garage");
        ada = rescue.animal("Ada");
    }

    private Answer post(String rest, String body) {
        return rescue.keeper.post("/api/v1/animals/" + ada + rest, body);
    }

    @Test
    void nothingIsEndedWhereNothingBegan() {
        assertThat(post("/release-decisions", "{}").faults()).containsExactly("#");
        assertThat(rescue.keeper
                        .get("/api/v1/animals/" + ada + "/release-review")
                        .status())
                .isEqualTo(200);
        rescue.place(ada, shed, -3);
        Rescue.created(post("/departures", "{\"because\":\"died\",\"explained\":true}"));
        assertThat(post("/release-decisions", "{}").faults()).containsExactly("#");
        assertThat(rescue.keeper.get("/api/v1/animals/" + ada + "/quarantine").text("/where"))
                .isEqualTo("gone");
    }

    @Test
    void anEventOfOneRoomSaysNothingInAnother() {
        rescue.place(ada, shed, -3);
        String bo = rescue.animal("Bo");
        rescue.place(bo, garage, -3);
        String slip = rescue.occur(shed, "other-sign", -1);
        String before = rescue.clock(garage).body();
        assertThat(rescue.event(
                                rescue.vet,
                                garage,
                                "{\"kind\":\"vet-spoke\",\"about\":\"%s\",\"ruling\":\"restarts\"}",
                                slip)
                        .faults())
                .containsExactly("#/about");
        assertThat(rescue.event(rescue.keeper, garage, "{\"kind\":\"treatment-ended\",\"about\":\"%s\"}", slip)
                        .faults())
                .containsExactly("#/about");
        assertThat(rescue.event(
                                rescue.keeper,
                                garage,
                                "{\"kind\":\"withdrawn\",\"about\":\"%s\",\"reason\":\"x\"}",
                                slip)
                        .faults())
                .containsExactly("#/about");
        assertThat(rescue.event(
                                rescue.keeper,
                                garage,
                                "{\"kind\":\"occurred\",\"cause\":\"mites\",\"animalId\":\"%s\"}",
                                ada)
                        .faults())
                .containsExactly("#/animalId");
        assertThat(rescue.clock(garage).body()).isEqualTo(before);
    }

    @Test
    void aKeeperDoesNotSpeakForAVet() {
        rescue.place(ada, shed, -3);
        String sign = rescue.occur(shed, "other-sign", -1);
        for (String word : List.of(
                "{\"kind\":\"vet-spoke\",\"about\":\"" + sign + "\",\"ruling\":\"was-nothing\"}",
                "{\"kind\":\"vet-decided\",\"days\":0,\"reason\":\"I say so\"}")) {
            assertThat(rescue.event(rescue.keeper, shed, "%s", word).isProblem("forbidden"))
                    .as(word)
                    .isTrue();
        }
        assertThat(rescue.clock(shed).text("/standing")).isEqualTo("held");
    }

    @Test
    void refusesDaysThatCannotBe() {
        rescue.place(ada, shed, -3);
        assertThat(rescue.event(rescue.keeper, shed, "{\"kind\":\"lengthened\",\"days\":3651,\"reason\":\"x\"}")
                        .faults())
                .containsExactly("#/days");
        for (String day : List.of("0000-01-01", "-0001-01-01", "9999-12-31", "+999999999-12-31", "2026-02-30")) {
            Answer refused =
                    rescue.event(rescue.keeper, shed, "{\"kind\":\"occurred\",\"cause\":\"mites\",\"on\":\"%s\"}", day);
            assertThat(refused.status()).as(day + refused.body()).isEqualTo(422);
            assertThat(refused.faults()).containsExactly("#/on");
        }
        Rescue.created(
                rescue.event(rescue.keeper, shed, "{\"kind\":\"lengthened\",\"days\":3650,\"reason\":\"for good\"}"));
        assertThat(rescue.clock(shed).text("/earliestRelease"))
                .isEqualTo(rescue.day(3647).toString());
        Answer quarantine = Rescue.ok(rescue.keeper.get("/api/v1/animals/" + ada + "/quarantine"));
        assertThat(quarantine.json().get("next")).isNotEmpty();
    }

    /** It happened before anybody stood there: on record, and without effect. */
    @Test
    void whatHappenedBeforeTheFirstArrivalChangesNoDate() {
        rescue.place(ada, shed, -3);
        Answer early = rescue.event(
                rescue.keeper, shed, "{\"kind\":\"occurred\",\"cause\":\"mites\",\"on\":\"%s\"}", rescue.day(-9));
        assertThat(early.status()).as(early.body()).isIn(201, 422);
        assertThat(rescue.clock(shed).text("/standing")).isEqualTo("running");
        assertThat(rescue.clock(shed).text("/earliestRelease"))
                .isEqualTo(rescue.day(57).toString());
    }

    /** The look that stopped the days is corrected: they go on as if it had never been. */
    @Test
    void aCorrectedLookGivesTheDaysBack() {
        rescue.place(ada, shed, -9);
        Answer wrong = rescue.look(ada, -2, "{\"nasal-discharge\":\"clear\"}");
        assertThat(rescue.clock(shed).text("/standing")).isEqualTo("held");
        String event = rescue.clock(shed).text("/waitingFor/0/event");
        Rescue.created(rescue.event(
                rescue.vet, shed, "{\"kind\":\"vet-spoke\",\"about\":\"%s\",\"ruling\":\"restarts\"}", event));
        rescue.look(ada, -2, "{\"nasal-discharge\":\"absent\"}", ",\"supersedes\":\"" + wrong.id() + "\"");
        assertThat(rescue.clock(shed).text("/standing")).isEqualTo("running");
        assertThat(rescue.clock(shed).text("/start")).isEqualTo(rescue.day(-9).toString());
        assertThat(rescue.clock(shed).json().get("withdrawn")).isNotEmpty();
    }

    @Test
    void nothingCanBeDeleted() {
        Answer placed = rescue.place(ada, shed, -3);
        for (String path : List.of(
                "/api/v1/rooms/" + shed,
                "/api/v1/animals/" + ada,
                "/api/v1/animals/" + ada + "/placements/" + placed.id(),
                "/api/v1/rooms/" + shed + "/events/" + new UUID(0, 1))) {
            Answer refused = rescue.keeper.send("DELETE", path, java.net.http.HttpRequest.BodyPublishers.noBody());
            assertThat(refused.status()).as(path + refused.body()).isIn(404, 405);
        }
        assertThat(rescue.clock(shed).json().get("animals")).hasSize(1);
    }
}
