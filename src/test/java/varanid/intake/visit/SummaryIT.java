package varanid.intake.visit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class SummaryIT {

    private static final String HOSTILE =
            "<script>alert(1)</script> & \\\"quoted\\\" =cmd|' /C calc'!A0 \\u202Eevil\\u202C \uD83E\uDD8E {text} ${it}";

    @Autowired
    Organisations organisations;

    Organisations.Organisation rescue;
    Client keeper;

    @BeforeEach
    void open() {
        rescue = organisations.create();
        keeper = rescue.keeper();
    }

    private static Answer created(Answer answer) {
        assertThat(answer.status()).as(answer.body()).isEqualTo(201);
        return answer;
    }

    private String animal(String body) {
        return created(keeper.post("/api/v1/animals", body)).id();
    }

    private void look(String animal, String answers) {
        created(keeper.post(
                "/api/v1/animals/" + animal + "/assessments",
                "{\"checklist\":\"varanid-intake\",\"answers\":" + answers + "}"));
    }

    private JsonNode summary(String animal) {
        Answer answer = keeper.get("/api/v1/animals/" + animal + "/summary");
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        assertThat(SummarySchema.faults(answer.body())).isEmpty();
        return answer.json();
    }

    private static List<JsonNode> statements(JsonNode summary, String part) {
        List<JsonNode> found = new ArrayList<>();
        summary.get("sections").forEach(section -> {
            if (section.get("code").stringValue().equals(part)) {
                section.get("statements").forEach(found::add);
            }
        });
        return found;
    }

    private static Optional<JsonNode> find(JsonNode summary, String part, String code) {
        return statements(summary, part).stream()
                .filter(each -> each.get("code").stringValue().equals(code))
                .findFirst();
    }

    private static String text(JsonNode summary, String part, String code) {
        return find(summary, part, code).orElseThrow().get("text").stringValue();
    }

    private static List<String> parts(JsonNode summary) {
        return StreamSupport.stream(summary.get("sections").spliterator(), false)
                .map(section -> section.get("code").stringValue())
                .toList();
    }

    @Test
    void saysOfAnAnimalThatNobodyLookedAtWhatIsNotKnown() {
        JsonNode summary = summary(animal("{}"));

        assertThat(summary.at("/standing/headline").stringValue()).contains("look first");
        assertThat(summary.get("standing").has("urgency")).isFalse();
        assertThat(summary.at("/standing/isolation").stringValue()).isEqualTo("strict");
        assertThat(find(summary, "findings", "no-look")).isPresent();
        assertThat(text(summary, "intake-and-output", "last-meal")).isEqualTo("not recorded");
        assertThat(text(summary, "weight", "nothing-recorded")).isEqualTo("Nobody has weighed it.");
        assertThat(text(summary, "treatments", "nothing-recorded")).contains("Nobody may have been asked");
        assertThat(text(summary, "consent-and-contact", "hold")).contains("nobody has said");
        assertThat(parts(summary)).doesNotContain("recommendation");
    }

    @Test
    void putsThePartsInTheOrderAClinicianThinks() {
        String animal = animal("{\"name\":\"Reed\",\"arrivedOn\":\"2026-01-01\"}");
        look(animal, "{\"laboured-breathing\":\"marked\",\"ticks\":\"not-observed\"}");

        assertThat(parts(summary(animal)))
                .containsSubsequence(
                        "who-and-why",
                        "findings",
                        "weight",
                        "intake-and-output",
                        "treatments",
                        "surroundings",
                        "origin",
                        "samples",
                        "handling",
                        "done-and-not-done",
                        "recommendation",
                        "consent-and-contact");
    }

    @Test
    void tellsWhatWasSeenFromWhatWasMeasuredAndWorkedOut() {
        String animal = animal("""
                {"name": "Reed", "declaredOrigin": "C",
                 "weights": [{"value": 212, "unit": "g", "resolution": 1, "scale": "kitchen"}]}""");
        look(animal, "{\"laboured-breathing\":\"marked\",\"days-food-refused\":9}");
        JsonNode summary = summary(animal);

        List<JsonNode> signs = statements(summary, "findings").stream()
                .filter(each -> each.get("code").stringValue().equals("sign"))
                .toList();
        assertThat(signs.get(0).at("/coding/code").stringValue()).isEqualTo("laboured-breathing");
        assertThat(signs.get(0).get("basis").stringValue()).isEqualTo("observed");
        assertThat(signs.get(0).get("weight").stringValue()).isEqualTo("strong");
        JsonNode refused = signs.stream()
                .filter(each -> each.at("/coding/code").stringValue().equals("days-food-refused"))
                .findFirst()
                .orElseThrow();
        assertThat(refused.get("basis").stringValue()).isEqualTo("measured");
        assertThat(refused.at("/measure/value").intValue()).isEqualTo(9);
        assertThat(refused.at("/measure/unit").stringValue()).isEqualTo("d");
        JsonNode weight = find(summary, "weight", "weight").orElseThrow();
        assertThat(weight.get("basis").stringValue()).isEqualTo("measured");
        assertThat(weight.get("text").stringValue()).isEqualTo("212 g");
        assertThat(find(summary, "origin", "declared-origin")
                        .orElseThrow()
                        .get("basis")
                        .stringValue())
                .isEqualTo("reported");
        JsonNode recommendation =
                find(summary, "recommendation", "recommendation").orElseThrow();
        assertThat(recommendation.get("basis").stringValue()).isEqualTo("computed");
        assertThat(recommendation.get("text").stringValue()).startsWith("Vet now. Strictly apart");
        assertThat(recommendation.get("qualifier").stringValue()).contains("not validated");
        assertThat(summary.at("/standing/urgency").stringValue()).isEqualTo("stat");
        assertThat(summary.at("/look/urgency/recommended").stringValue()).isEqualTo("stat");
    }

    @Test
    void namesWhatMustBeSeenAndWasNotBeforeAllOtherGaps() {
        String animal = animal("{\"name\":\"Reed\"}");
        look(animal, "{\"mites\":\"absent\"}");
        JsonNode summary = summary(animal);

        List<String> codes = statements(summary, "findings").stream()
                .map(each -> each.get("code").stringValue())
                .distinct()
                .toList();
        assertThat(codes).containsSubsequence("unseen-must-see", "unseen", "absent");
        assertThat(text(summary, "findings", "unseen-must-see")).contains("laboured breathing");
        assertThat(find(summary, "findings", "unseen-must-see")
                        .orElseThrow()
                        .get("weight")
                        .stringValue())
                .isEqualTo("strong");
        assertThat(text(summary, "findings", "absent")).contains("mites");
    }

    @Test
    void keepsWhatPeopleWroteToTheLetter() {
        String animal = animal("{\"name\":\"" + HOSTILE + "\",\"notes\":\"" + HOSTILE + "\"}");
        JsonNode summary = summary(animal);

        String wrote = keeper.get("/api/v1/animals/" + animal).text("/name");
        assertThat(summary.at("/animal/title").stringValue()).isEqualTo(wrote).contains("<script>", "{text}", "${it}");
        assertThat(text(summary, "who-and-why", "notes")).isEqualTo(wrote);
        Answer page = keeper.get("/api/v1/animals/" + animal + "/summary", "Accept", "text/html");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.body()).doesNotContain("<script").contains("&lt;script&gt;");
        assertThat(page.header("Content-Security-Policy").orElseThrow()).contains("default-src 'none'");
        assertThat(page.header("Content-Disposition").orElseThrow()).doesNotContain("\n", "<");
    }

    @Test
    void givesTheFormThatIsAskedForAndNothingElse() {
        String animal = animal("{\"name\":\"Reed\"}");
        String path = "/api/v1/animals/" + animal + "/summary";

        assertThat(keeper.get(path).header("Content-Type").orElseThrow()).startsWith("application/json");
        assertThat(keeper.get(path, "Accept", "*/*").header("Content-Type").orElseThrow())
                .startsWith("application/json");
        assertThat(keeper.get(path, "Accept", "text/html,application/json;q=0.9")
                        .header("Content-Type")
                        .orElseThrow())
                .startsWith("text/html");
        assertThat(keeper.get(path, "Accept", "application/json;q=0.1, application/pdf")
                        .header("Content-Type")
                        .orElseThrow())
                .startsWith("application/pdf");
        Answer refused = keeper.get(path, "Accept", "image/png");
        assertThat(refused.status()).isEqualTo(406);
        assertThat(refused.isProblem("not-acceptable")).isTrue();
        assertThat(keeper.get(path).header("Vary").orElseThrow()).containsPattern("(?i)(^|[ ,])accept(,|$)");
        assertThat(keeper.get(path).header("Cache-Control").orElseThrow()).contains("no-store");
    }

    @Test
    void isReadByEveryRoleOfTheOrganisationAndByNobodyElse() {
        String path = "/api/v1/animals/" + animal("{}") + "/summary";

        assertThat(rescue.clinician().get(path).status()).isEqualTo(200);
        assertThat(rescue.administrator().get(path).status()).isEqualTo(200);
        assertThat(organisations.create().keeper().get(path).status()).isEqualTo(404);
        assertThat(organisations.nobody().get(path).status()).isEqualTo(401);
        assertThat(keeper.get("/api/v1/animals/" + UUID.randomUUID() + "/summary")
                        .status())
                .isEqualTo(404);
    }

    @Test
    void opensByALinkThatWasGivenOutForItAndWritesTheOpeningDown() {
        String animal = animal("{\"name\":\"Reed\"}");
        String links = "/api/v1/animals/" + animal + "/links";
        Answer given = created(keeper.post(links, "{\"kind\":\"summary\",\"recipient\":\"The clinic\"}"));
        String path = given.text("/address").replaceFirst("^https?://[^/]+", "");
        Client nobody = organisations.nobody();

        Answer page = nobody.get(path, "Accept", "text/html");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.header("Content-Type").orElseThrow()).startsWith("text/html");
        assertThat(page.body()).contains("Reed").contains(path);
        assertThat(page.header("Referrer-Policy").orElseThrow()).isEqualTo("no-referrer");
        assertThat(page.header("X-Robots-Tag").orElseThrow()).contains("noindex");
        assertThat(page.header("Cache-Control").orElseThrow()).contains("no-store");
        assertThat(nobody.get(path + "?form=json").json().at("/animal/title").stringValue())
                .isEqualTo("Reed");

        JsonNode openings =
                keeper.get(links + "/" + given.id() + "/openings").json().get("items");
        assertThat(StreamSupport.stream(openings.spliterator(), false)
                        .map(each -> each.get("what").stringValue()))
                .containsExactly("html", "json");
        assertThat(keeper.get(links + "/" + given.id()).json().get("openings").intValue())
                .isEqualTo(2);
    }
}
