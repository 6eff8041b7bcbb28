package varanid.intake.vet;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.UUID;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;

/** An organisation with a keeper, a clinician and one animal, for tests of what vets answer. */
final class Clinic {

    static final String WRITER = "\"writer\":{\"name\":\"Ines Okafor\",\"practice\":\"Harbour Reptile Practice\","
            + "\"licenceStatement\":\"Register of Vets 4711\"}";

    final Organisations.Organisation organisation;
    final Client keeper;
    final Client clinician;
    final UUID animal;

    Clinic(Organisations organisations) {
        organisation = organisations.create();
        keeper = organisation.keeper();
        clinician = organisation.clinician();
        animal = UUID.fromString(keeper.post("/api/v1/animals", "{\"lifeStage\":\"adult\",\"declaredOrigin\":\"C\"}")
                .id());
    }

    String path(String rest) {
        return "/api/v1/animals/" + animal + rest;
    }

    /** Keeps a look, of now, and gives its id. */
    String look(String answers) {
        return created(keeper.post(
                path("/assessments"), "{\"checklist\":\"varanid-intake\",\"version\":1,\"answers\":" + answers + "}"));
    }

    /** The fields of an answer that had seen everything up to a moment. */
    static String body(Instant seenUpTo, String fields) {
        return "{\"seenUpTo\":\"" + seenUpTo + "\",\"sawAnimal\":\"examined\"," + fields + "," + WRITER + "}";
    }

    String answers(Instant seenUpTo, String fields) {
        return created(clinician.post(path("/vet-decisions"), body(seenUpTo, fields)));
    }

    Answer recommendation() {
        Answer answer = keeper.get(path("/recommendation"));
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return answer;
    }

    static String created(Answer answer) {
        assertThat(answer.status()).as(answer.body()).isEqualTo(201);
        return answer.id();
    }
}
