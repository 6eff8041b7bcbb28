package varanid.intake.page.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneOffset;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;

/** An animal that stands in a room for quarantine, of an organisation with some more rooms. All that is invented. */
final class Housed {

    final Organisation rescue;
    final Client keeper;
    final String animal;
    final String room;

    /** The animal came so many days ago. */
    static final int DAYS = 20;

    Housed(Organisations organisations) {
        rescue = organisations.create();
        keeper = rescue.keeper();
        animal = newcomer("Pebble");
        room = room("Boiler room", "quarantine");
        place(animal, room, DAYS);
    }

    String newcomer(String name) {
        return created(keeper.post(
                "/api/v1/animals",
                "{\"name\": \"%s\", \"species\": {\"name\": \"Varanus salvator\"}, \"arrivedOn\": \"%s\"}"
                        .formatted(name, day(DAYS))));
    }

    String room(String name, String kind) {
        return created(keeper.post("/api/v1/rooms", "{\"name\": \"%s\", \"kind\": \"%s\"}".formatted(name, kind)));
    }

    void place(String which, String where, int daysAgo) {
        created(keeper.post(
                "/api/v1/animals/" + which + "/placements",
                "{\"roomId\": \"%s\", \"on\": \"%s\"}".formatted(where, day(daysAgo))));
    }

    /** Mites are found in the room. */
    void mites() {
        created(keeper.post(
                "/api/v1/rooms/" + room + "/events",
                "{\"kind\": \"occurred\", \"cause\": \"mites\", \"animalId\": \"%s\", \"on\": \"%s\"}"
                        .formatted(animal, day(3))));
    }

    /** Another animal, of which everything is known and nothing speaks against a release but that no vet has approved it. */
    String ready() {
        String ready = newcomer("Sorrel");
        place(ready, room("Shed", "quarantine"), 95);
        for (int daysAgo : new int[] {60, 20}) {
            String sample = created(keeper.post(
                    "/api/v1/animals/" + ready + "/samples",
                    "{\"kind\": \"stool\", \"freshHours\": 1, \"takenAt\": \"%sT10:00:00Z\"}".formatted(day(daysAgo))));
            created(keeper.post(
                    "/api/v1/animals/" + ready + "/samples/" + sample + "/results",
                    "{\"method\": \"flotation\", \"outcome\": \"negative\"}"));
        }
        created(keeper.post("/api/v1/animals/" + ready + "/assessments", """
                {"checklist": "varanid-intake", "version": 1, "occurredAt": "%sT08:00:00Z", "answers": {
                 "laboured-breathing": "absent", "open-mouth-breathing": "absent", "tissue-from-vent": "absent",
                 "bleeding": "absent", "cannot-lift-body": "absent", "unresponsive": "absent", "mites": "absent",
                 "ticks": "none"}}""".formatted(day(1))));
        for (int daysAgo = 40; daysAgo >= 1; daysAgo -= 3) {
            created(keeper.post(
                    "/api/v1/animals/" + ready + "/weighings",
                    "{\"value\": %d, \"unit\": \"g\", \"scale\": \"kitchen\", \"resolution\": 0.1, \"occurredAt\": \"%sT08:00:00Z\"}"
                            .formatted(200 - daysAgo, day(daysAgo))));
        }
        return ready;
    }

    static LocalDate day(int daysAgo) {
        return LocalDate.now(ZoneOffset.UTC).minusDays(daysAgo);
    }

    static String created(Answer answer) {
        assertThat(answer.status()).as(answer.body()).isEqualTo(201);
        return answer.json().path("id").asString("");
    }
}
