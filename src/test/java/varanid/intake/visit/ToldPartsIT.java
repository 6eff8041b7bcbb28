package varanid.intake.visit;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.stream.StreamSupport;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Multipart;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** What people told, and what they attached, as the summary says it. */
@ServiceTest
class ToldPartsIT {

    @Autowired
    Organisations organisations;

    private Client keeper;
    private String animal;

    @BeforeEach
    void someAnimal() {
        keeper = organisations.create().keeper();
        animal = "/api/v1/animals/" + keeper.post("/api/v1/animals", "{}").id();
    }

    @Test
    void saysWhatWasToldInTheWordsItWasToldInAndThatItWasOnlyTold() {
        kept(keeper.post(animal + "/reports", """
                {"reportedBy":"previous keeper, by phone","occurredAt":"2026-03-09T12:00:00Z",
                 "lastMeal":{"food":"two crickets","daysAgo":3},"lastStool":{"unknown":true},"diet":"{crickets}",
                 "lamps":[{"type":"uv-tube","ageMonths":14}],
                 "temperatures":{"transport":{"value":59,"unit":"[degF]"}},
                 "transport":{"hours":30,"words":"nine in one box"},
                 "reproductiveState":{"code":"gravid-suspected","words":"digs"},
                 "treatments":[{"what":"<script>alert(1)</script> drops","amount":"5 drops","period":"in March"}],
                 "handlingRisk":{"code":"bites"},
                 "bites":[{"who":"a child","bodyPart":"hand","brokeSkin":"yes","doctorSeen":"no"}],
                 "vulnerablePeople":["child-under-five"],
                 "consent":{"by":"A. Keeper","given":["examination"]},"spendingLimit":"200",
                 "questions":["Is it \\"female\\"?","And when?"],"contact":{"phone":"030 1234","bestTime":"after 6"},
                 "note":"not for the vet"}"""));
        JsonNode summary = summary();
        JsonNode meal = only(summary, "intake-and-output", "last-meal");
        assertThat(meal.get("basis").asString()).isEqualTo("reported");
        assertThat(meal.get("text").asString()).isEqualTo("two crickets; “3 days ago”");
        assertThat(meal.get("on").asString()).isEqualTo("2026-03-06");
        assertThat(meal.get("by").asString()).isEqualTo("previous keeper, by phone");
        assertThat(meal.get("qualifier").asString()).isEqualTo("told on 9 Mar 2026; written down by A person");
        assertThat(only(summary, "intake-and-output", "last-stool").get("text").asString())
                .isEqualTo("nobody knows when");
        assertThat(only(summary, "intake-and-output", "diet").get("text").asString())
                .isEqualTo("{crickets}");
        assertThat(only(summary, "surroundings", "reported-lamp").get("text").asString())
                .isEqualTo("Tube with ultraviolet; 14 months old");
        JsonNode warmth = only(summary, "surroundings", "reported-temperature");
        assertThat(warmth.get("text").asString()).isEqualTo("59 °F (15 °C)");
        assertThat(warmth.at("/measure/unit").asString()).isEqualTo("Cel");
        assertThat(only(summary, "origin", "journey").get("text").asString())
                .isEqualTo("30 hours under way; nine in one box");
        assertThat(only(summary, "findings", "reproductive-state").get("text").asString())
                .isEqualTo("Eggs suspected; digs");
        JsonNode treatment = only(summary, "treatments", "treatment");
        assertThat(treatment.get("text").asString()).isEqualTo("<script>alert(1)</script> drops");
        assertThat(treatment.get("qualifier").asString())
                .isEqualTo("amount as told: 5 drops; given: in March; written down by A person");
        JsonNode bite = only(summary, "handling", "bite");
        assertThat(bite.get("weight").asString()).isEqualToIgnoringCase("strong");
        assertThat(bite.get("qualifier").asString()).startsWith("skin broken: yes; doctor seen: no");
        assertThat(all(summary, "handling").get(0).get("code").asString()).isEqualTo("handling-risk");
        assertThat(all(summary, "handling").stream()
                        .map(each -> each.at("/coding/code").asString()))
                .contains("bitten", "vulnerable");
        assertThat(all(summary, "questions").stream()
                        .map(each -> each.get("text").asString()))
                .containsExactly("Is it \"female\"?", "And when?");
        assertThat(only(summary, "consent-and-contact", "contact").get("text").asString())
                .isEqualTo("030 1234; best: after 6");
        assertThat(only(summary, "consent-and-contact", "payer").get("text").asString())
                .isEqualTo("not recorded");
        assertThat(summary.toString()).doesNotContain("not for the vet");
    }

    @Test
    void countsOneAndNoneAsPeopleDo() {
        kept(keeper.post(animal + "/reports", """
                {"occurredAt":"2026-03-09T12:00:00Z","lastMeal":{"daysAgo":1},"lastStool":{"daysAgo":0},
                 "lamps":[{"type":"uv-tube","ageMonths":1}],"transport":{"hours":1}}"""));
        JsonNode summary = summary();
        assertThat(only(summary, "intake-and-output", "last-meal").get("text").asString())
                .isEqualTo("“1 day ago”");
        assertThat(only(summary, "intake-and-output", "last-stool").get("text").asString())
                .isEqualTo("“today”");
        assertThat(only(summary, "surroundings", "reported-lamp").get("text").asString())
                .isEqualTo("Tube with ultraviolet; 1 month old");
        assertThat(only(summary, "origin", "journey").get("text").asString()).isEqualTo("1 hour under way");
    }

    @Test
    void saysWhatNobodyTold() {
        JsonNode summary = summary();
        assertThat(all(summary, "consent-and-contact").stream()
                        .map(each -> each.get("text").asString()))
                .startsWith("not recorded", "not recorded", "not recorded");
        assertThat(only(summary, "intake-and-output", "last-meal").get("basis").asString())
                .isEqualTo("recorded");
    }

    @Test
    void namesWhatIsAttachedAndNotWhatWasWithdrawn() throws IOException {
        String look = keeper.post(animal + "/assessments", "{\"checklist\":\"varanid-intake\"}")
                .id();
        String sample = keeper.post(animal + "/samples", "{\"kind\":\"stool\"}").id();
        kept(photo().field("assessment", look)
                .field("finding", "mites")
                .field("caption", "behind the arm")
                .field("takenAt", "2026-03-09T12:00:00Z")
                .post(keeper, animal + "/attachments"));
        kept(photo().field("sample", sample).post(keeper, animal + "/attachments"));
        Answer wrong = kept(photo().field("caption", "another animal").post(keeper, animal + "/attachments"));
        keeper.post(animal + "/attachments/" + wrong.id() + "/withdrawal", "{\"reason\":\"wrong\"}");

        JsonNode summary = summary();

        JsonNode photograph = only(summary, "findings", "attachment");
        assertThat(photograph.get("label").asString()).isEqualTo("Photograph: Mites");
        assertThat(photograph.get("text").asString()).isEqualTo("behind the arm");
        assertThat(photograph.get("at").asString()).isEqualTo("2026-03-09T12:00:00Z");
        assertThat(photograph.at("/coding/code").asString()).isEqualTo("mites");
        assertThat(photograph.get("qualifier").asString()).startsWith("of the look of ");
        JsonNode ofSample = only(summary, "samples", "attachment");
        assertThat(ofSample.get("text").asString()).isEqualTo("without a caption");
        assertThat(ofSample.get("qualifier").asString()).isEqualTo("added then; nobody said when it was made");
        assertThat(summary.toString()).doesNotContain("another animal");
    }

    private static Multipart photo() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(8, 8, BufferedImage.TYPE_INT_RGB), "png", bytes);
        return Multipart.of(bytes.toByteArray(), "p.png", "image/png");
    }

    private static Answer kept(Answer answer) {
        assertThat(answer.status()).as(answer.body()).isEqualTo(201);
        return answer;
    }

    private JsonNode summary() {
        Answer answer = keeper.get(animal + "/summary", "Accept", "application/json");
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return answer.json();
    }

    private static JsonNode only(JsonNode summary, String part, String code) {
        List<JsonNode> found = all(summary, part).stream()
                .filter(each -> each.get("code").asString().equals(code))
                .toList();
        assertThat(found).as(part + " " + code).hasSize(1);
        return found.get(0);
    }

    private static List<JsonNode> all(JsonNode summary, String part) {
        return StreamSupport.stream(summary.get("sections").spliterator(), false)
                .filter(section -> section.get("code").asString().equals(part))
                .flatMap(section ->
                        StreamSupport.stream(section.get("statements").spliterator(), false))
                .toList();
    }
}
