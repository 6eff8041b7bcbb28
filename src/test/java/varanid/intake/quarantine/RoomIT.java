package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class RoomIT {

    private static final String ROOMS = "/api/v1/rooms";

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    Rescue rescue;

    @BeforeEach
    void arrive() {
        rescue = new Rescue(organisations, clock);
    }

    @Test
    void anEmptyRoomHasNoClock() {
        Answer made = rescue.keeper.post(ROOMS, "{\"name\":\"Shed\",\"notes\":\"own door\\nown tools\"}");
        assertThat(made.status()).isEqualTo(201);
        assertThat(made.text("/kind")).isEqualTo("quarantine");
        assertThat(made.text("/clock/standing")).isEqualTo("empty");
        assertThat(made.text("/clock/inWords")).isEqualTo("Nobody stands here.");
        assertThat(made.json().has("earliestRelease")).isFalse();
        Answer read = rescue.keeper.get(made.header("Location").orElseThrow());
        assertThat(read.body()).isEqualTo(made.body());
        assertThat(read.etag()).isEqualTo(made.etag());
        assertThat(rescue.clock(made.id()).json().get("history")).isEmpty();
    }

    @Test
    void changesNameAndNotesOfTheVersionThatWasRead() {
        Answer made = rescue.keeper.post(ROOMS, "{\"name\":\"Shed\"}");
        String path = ROOMS + "/" + made.id();
        Answer changed = rescue.keeper.put(path, "{\"name\":\"Garage\"}", "If-Match", made.etag());
        assertThat(changed.status()).isEqualTo(200);
        assertThat(changed.text("/name")).isEqualTo("Garage");
        assertThat(rescue.keeper
                        .put(path, "{\"name\":\"Attic\"}", "If-Match", made.etag())
                        .isProblem("changed-meanwhile"))
                .isTrue();
        assertThat(rescue.keeper.put(path, "{\"name\":\"Attic\"}").status()).isEqualTo(428);
        assertThat(rescue.keeper.get(path).text("/name")).isEqualTo("Garage");
    }

    /** Making residents of a whole room would end the quarantine of all in it. */
    @Test
    void neverChangesWhoARoomIsFor() {
        Answer made = rescue.keeper.post(ROOMS, "{\"name\":\"Shed\"}");
        assertThat(rescue.keeper
                        .put(
                                ROOMS + "/" + made.id(),
                                "{\"name\":\"Shed\",\"kind\":\"residents\"}",
                                "If-Match",
                                made.etag())
                        .faults())
                .containsExactly("#/kind");
    }

    @Test
    void refusesTwoRoomsOfOneName() {
        rescue.room("Shed");
        String other = rescue.room("Garage");
        assertThat(rescue.keeper.post(ROOMS, "{\"name\":\"SHED\"}").faults()).containsExactly("#/name");
        assertThat(rescue.keeper
                        .put(ROOMS + "/" + other, "{\"name\":\"shed\"}", "If-Match", "*")
                        .faults())
                .containsExactly("#/name");
        assertThat(rescue.keeper
                        .put(ROOMS + "/" + other, "{\"name\":\"GARAGE\"}", "If-Match", "*")
                        .status())
                .isEqualTo(200);
        assertThat(organisations
                        .create()
                        .keeper()
                        .post(ROOMS, "{\"name\":\"Shed\"}")
                        .status())
                .isEqualTo(201);
    }

    @Test
    void namesEveryFaultAndStoresNothing() {
        assertThat(rescue.keeper
                        .post(ROOMS, "{\"kind\":\"cellar\",\"notes\":7,\"colour\":\"red\"}")
                        .faults())
                .containsExactlyInAnyOrder("#/name", "#/kind", "#/notes", "#/colour");
        assertThat(rescue.keeper.post(ROOMS, "{\"name\":\"a\\u0000b\"}").faults())
                .containsExactly("#/name");
        assertThat(rescue.keeper.get(ROOMS).json().get("items")).isEmpty();
    }

    @Test
    void takesHostileTextAsText() {
        String name = "'); DROP TABLE room; -- <script>alert(1)</script> \\u202e";
        Answer made = rescue.keeper.post(ROOMS, "{\"name\":\"" + name + "\"}");
        assertThat(made.status()).isEqualTo(201);
        assertThat(rescue.keeper.get(ROOMS).text("/items/0/name"))
                .isEqualTo("'); DROP TABLE room; -- <script>alert(1)</script> \u202e".strip());
    }

    @Test
    void isForKeepersAndReadableByVets() {
        assertThat(rescue.vet.post(ROOMS, "{\"name\":\"Shed\"}").isProblem("forbidden"))
                .isTrue();
        String room = rescue.room("Shed");
        assertThat(rescue.vet.get(ROOMS + "/" + room).status()).isEqualTo(200);
        assertThat(rescue.vet.get(ROOMS + "/" + room + "/clock").status()).isEqualTo(200);
    }

    @Test
    void isRecordedOncePerKey() {
        Answer first = rescue.keeper.post(ROOMS, "{\"name\":\"Shed\"}", "Idempotency-Key", "shed");
        Answer again = rescue.keeper.post(ROOMS, "{\"name\":\"Shed\"}", "Idempotency-Key", "shed");
        assertThat(again.body()).isEqualTo(first.body());
        assertThat(again.header("Idempotency-Replayed")).contains("true");
        assertThat(rescue.keeper.get(ROOMS).json().get("items")).hasSize(1);
    }

    @Test
    void listsInPages() {
        List<String> made = List.of(rescue.room("One"), rescue.room("Two"), rescue.room("Three"));
        Answer first = rescue.keeper.get(ROOMS + "?limit=2");
        assertThat(Rescue.each(first.json().get("items"), "/id")).isEqualTo(made.subList(0, 2));
        Answer rest = rescue.keeper.get(first.link("next").orElseThrow());
        assertThat(Rescue.each(rest.json().get("items"), "/id")).isEqualTo(made.subList(2, 3));
        assertThat(rest.link("next")).isEmpty();
    }

    @Test
    void refusesADayFurtherAheadThanAnybodyPlans() {
        String room = rescue.room("Shed");
        Client keeper = rescue.keeper;
        assertThat(keeper.get(ROOMS + "/" + room + "/clock?asOf=" + rescue.day(400))
                        .faults())
                .containsExactly("asOf");
        assertThat(keeper.get(ROOMS + "/" + room + "/clock?asOf=soon&wrong=1").faults())
                .containsExactlyInAnyOrder("asOf", "“wrong”");
    }
}
