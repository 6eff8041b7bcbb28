package varanid.intake.cagecard;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class CageCardIT {

    private static final String WRITER =
            "\"writer\":{\"name\":\"Ines Okafor\",\"practice\":\"Harbour Reptile Practice\","
                    + "\"licenceStatement\":\"Register of Vets 4711\"}";
    /** As it stands between quotes of JSON. */
    private static final String HOSTILE =
            "<script>alert(1)</script> & \\\"q\\\" \\u202Eevil\\u202C \uD83E\uDD8E {id} ${it}";

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    Organisations.Organisation rescue;
    Client keeper;
    LocalDate today;

    @BeforeEach
    void open() {
        rescue = organisations.create();
        keeper = rescue.keeper();
        today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    }

    private static Answer created(Answer answer) {
        assertThat(answer.status()).as(answer.body()).isEqualTo(201);
        return answer;
    }

    private static Answer ok(Answer answer) {
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return answer;
    }

    private String animal(String body) {
        return created(keeper.post("/api/v1/animals", body)).id();
    }

    private String room(String name) {
        return created(keeper.post("/api/v1/rooms", "{\"name\":\"" + name + "\"}"))
                .id();
    }

    private void place(String animal, String room) {
        created(keeper.post(path(animal, "placements"), "{\"roomId\":\"" + room + "\",\"on\":\"" + today + "\"}"));
    }

    private void look(String animal, String answers) {
        created(keeper.post(
                path(animal, "assessments"), "{\"checklist\":\"varanid-intake\",\"answers\":" + answers + "}"));
    }

    private static String path(String animal, String what) {
        return "/api/v1/animals/" + animal + "/" + what;
    }

    private JsonNode card(String animal) {
        return ok(keeper.get(path(animal, "cage-card"))).json();
    }

    private static List<String> codes(JsonNode lines) {
        return StreamSupport.stream(lines.spliterator(), false)
                .map(line -> line.get("code").stringValue())
                .toList();
    }

    private static List<String> ids(Answer cards) {
        return StreamSupport.stream(cards.json().get("items").spliterator(), false)
                .map(card -> card.get("animalId").stringValue())
                .toList();
    }

    @Test
    void isStrictAndNotStartedWhereNothingIsKnown() {
        String animal = animal("{}");
        JsonNode card = card(animal);

        assertThat(card.get("title").stringValue()).isEqualTo("Animal " + animal.substring(28));
        assertThat(card.at("/isolation/code").stringValue()).isEqualTo("strict");
        assertThat(card.at("/quarantine/state").stringValue()).isEqualTo("not-started");
        assertThat(card.get("quarantine").has("notBefore")).isFalse();
        assertThat(card.at("/howSoon/headline").stringValue()).contains("look first");
        assertThat(card.get("howSoon").has("urgency")).isFalse();
        assertThat(codes(card.get("handling"))).contains("not-told", "salmonella", "wounds");
        assertThat(codes(card.get("beforeOpening"))).contains("last", "gloves", "lamps", "second", "after");
        assertThat(card.get("alerts")).isEmpty();
    }

    @Test
    void saysWhoItIsAndHowItsQuarantineStands() {
        String animal =
                animal("{\"name\":\"Pebble\",\"tag\":\"RB-014\",\"species\":{\"name\":\"Varanus exanthematicus\"}}");
        String shed = room("Shed");
        place(animal, shed);
        JsonNode card = card(animal);

        assertThat(card.get("title").stringValue()).isEqualTo("RB-014");
        assertThat(card.get("name").stringValue()).isEqualTo("Pebble");
        assertThat(card.get("species").stringValue()).isEqualTo("Varanus exanthematicus");
        assertThat(card.get("commonName").stringValue()).isEqualTo("savannah monitor");
        assertThat(card.get("room").stringValue()).isEqualTo("Shed");
        JsonNode clockOfRoom =
                ok(keeper.get("/api/v1/rooms/" + shed + "/clock")).json();
        assertThat(card.at("/quarantine/state").stringValue()).isEqualTo("running");
        assertThat(card.at("/quarantine/start").stringValue()).isEqualTo(today.toString());
        assertThat(card.at("/quarantine/notBefore").stringValue())
                .isEqualTo(clockOfRoom.get("earliestRelease").stringValue());
        assertThat(card.at("/quarantine/releaseText").stringValue()).startsWith("not before ");
    }

    @Test
    void saysThatTheDaysAreOnHold() {
        String animal = animal("{\"name\":\"Pebble\"}");
        String shed = room("Shed");
        place(animal, shed);
        created(keeper.post(
                "/api/v1/rooms/" + shed + "/events",
                "{\"kind\":\"occurred\",\"cause\":\"mites\",\"on\":\"" + today + "\"}"));
        assertThat(ok(keeper.get("/api/v1/rooms/" + shed + "/clock")).text("/standing"))
                .isEqualTo("held");

        JsonNode card = card(animal);
        assertThat(card.at("/quarantine/state").stringValue()).isEqualTo("held");
        assertThat(card.at("/quarantine/releaseText").stringValue()).contains("not yet known", "on hold");
    }

    @Test
    void isHeadedByWhatCannotWaitAndByAnAuthoritysHold() {
        String animal = animal("{\"tag\":\"RB-1\"}");
        look(animal, "{\"laboured-breathing\":\"marked\"}");
        created(keeper.post(
                path(animal, "legal-holds"), "{\"state\":\"held\",\"authority\":\"Harbour Wildlife Office\"}"));
        JsonNode card = card(animal);

        assertThat(codes(card.get("alerts"))).containsExactly("stat", "held");
        assertThat(card.at("/alerts/0/text").stringValue()).startsWith("Vet now");
        assertThat(card.at("/alerts/1/text").stringValue()).contains("Harbour Wildlife Office", "not to be moved");
        assertThat(card.at("/howSoon/urgency").stringValue()).isEqualTo("stat");
        assertThat(card.toString()).doesNotContainIgnoringCase("pneumonia");

        created(keeper.post(
                path(animal, "legal-holds"), "{\"state\":\"released\",\"authority\":\"Harbour Wildlife Office\"}"));
        assertThat(codes(card(animal).get("alerts"))).containsExactly("stat");
    }

    @Test
    void saysOfUrgencyAndIsolationWhatTheSummarySaysAfterAVetAnswered() {
        String animal = animal("{\"tag\":\"RB-1\"}");
        look(animal, "{\"laboured-breathing\":\"marked\"}");
        created(rescue.clinician()
                .post(
                        path(animal, "vet-decisions"),
                        "{\"seenUpTo\":\"" + clock.instant() + "\",\"urgency\":\"routine\",\"isolation\":\"standard\","
                                + WRITER + "}"));

        JsonNode summary = ok(keeper.get(path(animal, "summary"))).json();
        assertThat(summary.at("/standing/from").stringValue()).isEqualTo("vet");
        JsonNode card = card(animal);
        assertThat(card.at("/howSoon/urgency").stringValue()).isEqualTo("routine");
        assertThat(card.at("/howSoon/headline").stringValue())
                .isEqualTo(summary.at("/standing/headline").stringValue())
                .contains("Ines Okafor");
        assertThat(card.at("/howSoon/from").stringValue()).contains("vet");
        assertThat(card.at("/isolation/code").stringValue()).isEqualTo("standard");
        assertThat(codes(card.get("alerts"))).isEmpty();
    }

    @Test
    void isHeadedByWhatIsNewSinceAVetAnswered() {
        String animal = animal("{\"tag\":\"RB-1\"}");
        look(animal, "{\"mites\":\"absent\"}");
        created(rescue.clinician()
                .post(
                        path(animal, "vet-decisions"),
                        "{\"seenUpTo\":\"" + clock.instant() + "\",\"urgency\":\"routine\"," + WRITER + "}"));
        look(animal, "{\"laboured-breathing\":\"marked\"}");

        JsonNode card = card(animal);
        JsonNode summary = ok(keeper.get(path(animal, "summary"))).json();
        assertThat(codes(card.get("alerts"))).contains("summary");
        assertThat(card.get("alerts").toString())
                .contains(summary.at("/alerts/0/text").stringValue());
    }

    @Test
    void warnsOfBitesWithoutNamingWhoWasBitten() {
        String animal = animal("{\"tag\":\"RB-1\"}");
        created(keeper.post(
                path(animal, "reports"),
                "{\"handlingRisk\":{\"code\":\"calm-so-far\"},\"bites\":[{\"who\":\"the neighbour's son\","
                        + "\"brokeSkin\":\"yes\",\"doctorSeen\":\"no\"}]}"));
        JsonNode card = card(animal);

        assertThat(codes(card.get("handling"))).startsWith("hurt").doesNotContain("not-told");
        assertThat(card.toString()).doesNotContain("neighbour").doesNotContain("alm so far");
    }

    @Test
    void keepsWhatPeopleWroteToTheLetterAndLetsNothingOfItAct() {
        String animal = animal("{\"name\":\"" + HOSTILE + "\",\"species\":{\"name\":\"<b>V</b>\"}}");
        place(animal, room("<i>" + "W".repeat(90) + "</i>"));

        assertThat(card(animal).get("title").stringValue())
                .isEqualTo(keeper.get("/api/v1/animals/" + animal).text("/name"));
        Answer page = ok(keeper.get(path(animal, "cage-card"), "Accept", "text/html"));
        assertThat(page.body()).doesNotContain("<script", "<b>V", "<i>").contains("&lt;script&gt;");
        assertThat(page.header("Content-Security-Policy").orElseThrow()).contains("default-src 'none'");
        assertThat(ok(keeper.get(path(animal, "cage-card"), "Accept", "application/pdf"))
                        .body())
                .startsWith("%PDF");
    }

    @Test
    void holdsTheAddressOfTheAnimalsPageAndNoSecret() {
        String animal = animal("{}");
        Answer card = ok(keeper.get(path(animal, "cage-card")));

        assertThat(card.text("/address")).endsWith("/animals/" + animal).startsWith("http");
        assertThat(card.body()).doesNotContain(keeper.token());
        assertThat(ok(keeper.get(path(animal, "cage-card"), "Accept", "text/html"))
                        .body())
                .contains(card.text("/address"))
                .contains("class=\"qr\"")
                .doesNotContain(keeper.token());
    }

    @Test
    void givesTheFormThatIsAskedForAndIsKeptByNobody() {
        String path = path(animal("{}"), "cage-card");

        assertThat(keeper.get(path).header("Content-Type").orElseThrow()).startsWith("application/json");
        assertThat(keeper.get(path, "Accept", "text/html")
                        .header("Content-Type")
                        .orElseThrow())
                .startsWith("text/html");
        Answer pdf = ok(keeper.get(path, "Accept", "application/pdf"));
        assertThat(pdf.header("Content-Type").orElseThrow()).startsWith("application/pdf");
        assertThat(pdf.header("Cache-Control").orElseThrow()).contains("no-store");
        assertThat(pdf.header("Content-Disposition").orElseThrow()).contains(".pdf");
        assertThat(keeper.get(path, "Accept", "image/png").isProblem("not-acceptable"))
                .isTrue();
        assertThat(keeper.get(path + "?size=large").status()).isEqualTo(422);
    }

    @Test
    void isReadByEveryRoleOfTheOrganisationAndByNobodyElse() {
        String shed = room("Shed");
        for (String path : List.of(path(animal("{}"), "cage-card"), "/api/v1/rooms/" + shed + "/cage-cards")) {
            assertThat(rescue.clinician().get(path).status()).isEqualTo(200);
            assertThat(rescue.administrator().get(path).status()).isEqualTo(200);
            assertThat(organisations.create().keeper().get(path).status()).isEqualTo(404);
            assertThat(organisations.nobody().get(path).status()).isEqualTo(401);
        }
        assertThat(keeper.get(path(UUID.randomUUID().toString(), "cage-card")).status())
                .isEqualTo(404);
        assertThat(keeper.get("/api/v1/rooms/" + UUID.randomUUID() + "/cage-cards")
                        .status())
                .isEqualTo(404);
    }

    @Test
    void givesTheCardsOfARoomAPageAtATime() {
        String shed = room("Shed");
        String other = room("Attic");
        List<String> there = List.of(animal("{\"tag\":\"1\"}"), animal("{\"tag\":\"2\"}"), animal("{\"tag\":\"3\"}"));
        there.forEach(animal -> place(animal, shed));
        place(animal("{\"tag\":\"elsewhere\"}"), other);

        Answer first = ok(keeper.get("/api/v1/rooms/" + shed + "/cage-cards?limit=2"));
        assertThat(ids(first)).containsExactlyElementsOf(there.subList(0, 2));
        Answer rest = ok(keeper.get(first.link("next").orElseThrow()));
        assertThat(ids(rest)).containsExactly(there.get(2));
        assertThat(rest.link("next")).isEmpty();

        Answer page = ok(keeper.get(first.link("first").orElseThrow(), "Accept", "text/html"));
        assertThat(page.body().split("class=\"card ", -1)).hasSize(3);
        assertThat(page.link("next")).isPresent();
        Answer pdf = ok(keeper.get("/api/v1/rooms/" + shed + "/cage-cards", "Accept", "application/pdf"));
        assertThat(pdf.body()).startsWith("%PDF");
        assertThat(pdf.header("Cache-Control").orElseThrow()).contains("no-store");
    }

    @Test
    void saysThatNobodyStandsInAnEmptyRoom() {
        String path = "/api/v1/rooms/" + room("Shed") + "/cage-cards";

        assertThat(ok(keeper.get(path)).json().get("items")).isEmpty();
        assertThat(ok(keeper.get(path, "Accept", "text/html")).body()).contains("Nobody stands in this room.");
        assertThat(ok(keeper.get(path, "Accept", "application/pdf")).body()).startsWith("%PDF");
    }
}
