package varanid.intake.page.animal;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;

/** An animal of which much is recorded. All that is invented. */
final class Followed {

    final Organisation rescue;
    final Client keeper;
    final String animal;

    private final Instant now = Instant.now().minus(Duration.ofMinutes(5));

    Followed(Organisations organisations) {
        rescue = organisations.create();
        keeper = rescue.keeper();
        animal = created(keeper.post("/api/v1/animals", """
                {"name": "Pebble", "tag": "RB-021", "species": {"name": "Varanus salvator"}, "lifeStage": "juvenile",
                 "sex": "female", "arrivedOn": "%s", "evidence": {"ticks": "yes", "parents-known": "no"},
                 "weights": [{"value": 412, "unit": "g", "scale": "kitchen", "resolution": 1, "occurredAt": "%s"}]}""".formatted(day(20), moment(20))));
    }

    /** With a room, looks, weights, a diary, a sample and a vet's answer. */
    Followed furnished() {
        String room = created(keeper.post("/api/v1/rooms", "{\"name\": \"Boiler room\"}"));
        post("/placements", "{\"roomId\": \"%s\", \"on\": \"%s\"}".formatted(room, day(20)));
        look(20, """
                "laboured-breathing": "absent", "open-mouth-breathing": "absent", "nasal-discharge": "clear",
                "ticks": "few", "body-condition": "lean", "mites": "absent\"""");
        look(12, """
                "laboured-breathing": "mild", "open-mouth-breathing": "absent", "nasal-discharge": "thick",
                "ticks": "none", "body-condition": "lean", "mites": "absent\"""");
        look(3, """
                "laboured-breathing": "absent", "open-mouth-breathing": "absent", "nasal-discharge": "clear",
                "body-condition": "fit", "mites": "absent\"""");
        for (int days : new int[] {16, 12, 8, 4, 1}) {
            post(
                    "/weighings",
                    "{\"value\": %d, \"unit\": \"g\", \"scale\": \"kitchen\", \"resolution\": 1, \"occurredAt\": \"%s\"}"
                            .formatted(400 + days, moment(days)));
        }
        for (int days = 9; days > 0; days--) {
            post(
                    "/diary",
                    "{\"ate\": \"some\", \"food\": \"two quail chicks\", \"seen\": \"basking\", \"occurredAt\": \"%s\"}"
                            .formatted(moment(days)));
        }
        String sample = created(keeper.post(
                path("/samples"),
                "{\"kind\": \"stool\", \"takenAt\": \"%s\", \"freshHours\": 2, \"methods\": [\"flotation\"]}"
                        .formatted(moment(10))));
        post(
                "/samples/" + sample + "/results",
                "{\"method\": \"flotation\", \"outcome\": \"negative\", \"reportedOn\": \"%s\"}".formatted(day(8)));
        created(rescue.clinician().post(path("/vet-decisions"), """
                {"seenUpTo": "%s", "sawAnimal": "examined", "urgency": "urgent",
                 "instructions": "Keep it warm and weigh it on Mondays.",
                 "writer": {"name": "Ines Okafor", "practice": "Harbour Reptile Practice",
                            "licenceStatement": "Register of Vets 4711"}}""".formatted(Instant.now())));
        return this;
    }

    String path(String rest) {
        return "/api/v1/animals/" + animal + rest;
    }

    String page(String rest) {
        return "/animals/" + animal + rest;
    }

    private void look(int daysAgo, String answers) {
        post(
                "/assessments",
                "{\"checklist\": \"varanid-intake\", \"version\": 1, \"occurredAt\": \"%s\", \"answers\": {%s}}"
                        .formatted(moment(daysAgo), answers));
    }

    private void post(String rest, String json) {
        created(keeper.post(path(rest), json));
    }

    private Instant moment(int daysAgo) {
        return now.minus(Duration.ofDays(daysAgo));
    }

    private LocalDate day(int daysAgo) {
        return LocalDate.ofInstant(moment(daysAgo), ZoneOffset.UTC);
    }

    private static String created(Answer answer) {
        assertThat(answer.status()).as(answer.body()).isEqualTo(201);
        return answer.json().path("id").asString("");
    }
}
