package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class ReleaseIT {

    private static final String WELL = """
            {"laboured-breathing": "absent", "open-mouth-breathing": "absent", "tissue-from-vent": "absent",
             "bleeding": "absent", "cannot-lift-body": "absent", "unresponsive": "absent", "mites": "absent",
             "ticks": "none"}""";

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    Rescue rescue;
    String shed;

    @BeforeEach
    void arrive() {
        rescue = new Rescue(organisations, clock);
        shed = rescue.room("Shed");
    }

    private Map<String, String> states(String animal) {
        Map<String, String> states = new TreeMap<>();
        Rescue.ok(rescue.keeper.get("/api/v1/animals/" + animal + "/release-review"))
                .json()
                .get("conditions")
                .forEach(each -> states.put(
                        each.get("id").stringValue(), each.get("state").stringValue()));
        return states;
    }

    private void sample(String animal, int day) {
        String sample = Rescue.created(rescue.keeper.post(
                        "/api/v1/animals/" + animal + "/samples",
                        "{\"kind\":\"stool\",\"freshHours\":1,\"takenAt\":\"" + rescue.day(day) + "T10:00:00Z\"}"))
                .header("Location")
                .orElseThrow();
        Rescue.created(rescue.keeper.post(sample + "/results", "{\"method\":\"flotation\",\"outcome\":\"negative\"}"));
    }

    private void weigh(String animal, int day, String grams) {
        Rescue.created(rescue.keeper.post(
                "/api/v1/animals/" + animal + "/weighings",
                "{\"value\":%s,\"unit\":\"g\",\"scale\":\"kitchen\",\"resolution\":0.1,\"occurredAt\":\"%sT08:00:00Z\"}"
                        .formatted(grams, rescue.day(day))));
    }

    /** An animal of which everything is known and nothing speaks against a release. */
    private String ready(String body) {
        String animal = rescue.animal("Ada", body);
        rescue.place(animal, shed, -95);
        sample(animal, -60);
        sample(animal, -20);
        rescue.look(animal, -1, WELL);
        for (int day = -40; day <= -1; day += 3) {
            weigh(animal, day, BigDecimal.valueOf(200 + day).toPlainString());
        }
        return animal;
    }

    private Answer decide(String animal, String body) {
        return rescue.keeper.post("/api/v1/animals/" + animal + "/release-decisions", body);
    }

    @Test
    void everyConditionMetStillTakesAPerson() {
        String ada = ready(Rescue.CAPTIVE);
        assertThat(states(ada))
                .isEqualTo(Map.of(
                        "minimum-stay", "met",
                        "vets-word", "met",
                        "stool-negative", "met",
                        "mite-free", "met",
                        "last-look", "met",
                        "weight", "met",
                        "treatment-ended", "met"));
        assertThat(rescue.clock(shed).json().get("animals")).hasSize(1);
        Answer decided = Rescue.created(decide(ada, "{\"note\":\"all done\"}"));
        assertThat(decided.text("/decidedBy"))
                .isEqualTo(rescue.keeper.personId().toString());
        assertThat(decided.json().get("attention")).isEmpty();
        assertThat(decided.text("/review/caution")).contains("no statement that the animal is free of infection");
        assertThat(rescue.clock(shed).text("/standing")).isEqualTo("empty");
    }

    @Test
    void anAnimalNobodyKnowsAnythingOfHasOpenConditionsThatSayWhatToFindOut() {
        String ada = rescue.animal("Ada");
        rescue.place(ada, shed, -5);
        Answer review = rescue.keeper.get("/api/v1/animals/" + ada + "/release-review");
        assertThat(states(ada))
                .containsEntry("minimum-stay", "unmet")
                .containsEntry("stool-negative", "unmet")
                .containsEntry("mite-free", "unknown")
                .containsEntry("last-look", "unknown")
                .containsEntry("weight", "unknown");
        review.json().get("conditions").forEach(each -> {
            switch (each.get("state").stringValue()) {
                case "unmet" -> assertThat(each.get("missing").stringValue()).isNotBlank();
                case "unknown" -> assertThat(each.get("findOut").stringValue()).isNotBlank();
                default -> assertThat(each.get("evidence")).isNotEmpty();
            }
        });
    }

    @Test
    void refusesADecisionThatDoesNotSayWhyAndNamesEachCondition() {
        String ada = rescue.animal("Ada");
        rescue.place(ada, shed, -5);
        Answer refused = decide(ada, "{\"overrides\":{\"weight\":\"no scales\",\"vets-word\":\"met anyway\"}}");
        assertThat(refused.faults())
                .containsExactlyInAnyOrder(
                        "#/overrides/minimum-stay",
                        "#/overrides/stool-negative",
                        "#/overrides/mite-free",
                        "#/overrides/last-look",
                        "#/overrides/vets-word");
        assertThat(decide(ada, "{\"overrides\":{\"luck\":\"x\",\"weight\":7},\"by\":\"me\"}")
                        .faults())
                .containsExactlyInAnyOrder("#/overrides/luck", "#/overrides/weight", "#/by");
        assertThat(rescue.clock(shed).json().get("animals")).hasSize(1);
        assertThat(rescue.keeper
                        .get("/api/v1/animals/" + ada + "/release-decisions")
                        .json()
                        .get("items"))
                .isEmpty();
    }

    @Test
    void anOverriddenApprovalIsSaidLoudlyAndStaysOnRecord() throws Exception {
        String ada = ready(Rescue.WILD);
        assertThat(states(ada)).containsEntry("vet-approval", "unmet");
        Answer decided =
                Rescue.created(decide(ada, "{\"overrides\":{\"vet-approval\":\"no vet within 300 km <b>&amp;\"}}"));
        assertThat(decided.text("/attention/0")).startsWith("ATTENTION").contains("approval");
        assertThat(decided.text("/overrides/vet-approval")).isEqualTo("no vet within 300 km <b>&amp;");
        Answer kept = rescue.vet.get(decided.header("Location").orElseThrow());
        assertThat(kept.body()).isEqualTo(decided.body());
        String digest = HexFormat.of()
                .formatHex(
                        MessageDigest.getInstance("SHA-256").digest(kept.body().getBytes(StandardCharsets.UTF_8)));
        assertThat(kept.etag()).isEqualTo('"' + digest + '"');
        assertThat(Rescue.each(kept.json().at("/review/conditions"), "/state")).contains("unmet");
    }

    @Test
    void onlyAVetApprovesAndTheLastWordCounts() {
        String ada = ready(Rescue.WILD);
        String path = "/api/v1/animals/" + ada + "/release-approvals";
        assertThat(rescue.keeper.post(path, "{\"approves\":true}").isProblem("forbidden"))
                .isTrue();
        assertThat(rescue.vet.post(path, "{}").faults()).containsExactly("#/approves");
        Rescue.created(rescue.vet.post(path, "{\"approves\":true,\"note\":\"seen today\"}"));
        assertThat(states(ada)).containsEntry("vet-approval", "met");
        Rescue.created(rescue.vet.post(path, "{\"approves\":false,\"note\":\"result came in\"}"));
        assertThat(states(ada)).containsEntry("vet-approval", "unmet");
        Answer decided = Rescue.created(decide(ada, "{\"overrides\":{\"vet-approval\":\"owner insists\"}}"));
        assertThat(decided.text("/attention/0")).contains("objects");
        assertThat(rescue.keeper.get(path).json().get("items")).hasSize(2);
    }

    @Test
    void anApprovalFromBeforeARestartIsOfAnotherStateOfThings() {
        String ada = ready(Rescue.WILD);
        Rescue.created(rescue.vet.post(
                "/api/v1/animals/" + ada + "/release-approvals",
                "{\"approves\":true,\"on\":\"" + rescue.day(-3) + "\"}"));
        assertThat(states(ada)).containsEntry("vet-approval", "met");
        rescue.occur(shed, "breach-with-contact", -1);
        assertThat(states(ada)).containsEntry("vet-approval", "unmet").containsEntry("minimum-stay", "unmet");
    }

    /** An objection counts where no approval is asked for, too. */
    @Test
    void aVetsObjectionIsACondition() {
        String ada = ready(Rescue.CAPTIVE);
        Rescue.created(rescue.vet.post("/api/v1/animals/" + ada + "/release-approvals", "{\"approves\":false}"));
        assertThat(states(ada)).containsEntry("vet-approval", "unmet");
        assertThat(decide(ada, "{}").faults()).containsExactly("#/overrides/vet-approval");
    }

    @Test
    void seizedAnimalsWaitForTheAuthority() {
        String ada = ready("{\"name\":\"%s\",\"declaredOrigin\":\"I\",\"lifeStage\":\"juvenile\"}");
        String path = "/api/v1/animals/" + ada + "/legal-holds";
        assertThat(states(ada)).containsEntry("no-legal-hold", "unknown");
        assertThat(rescue.keeper.post(path, "{\"state\":\"held\"}").faults()).containsExactly("#/authority");
        Rescue.created(rescue.keeper.post(
                path, "{\"state\":\"held\",\"authority\":\"District office\",\"reference\":\"17/3\"}"));
        assertThat(states(ada)).containsEntry("no-legal-hold", "unmet");
        Answer left = Rescue.created(
                rescue.keeper.post("/api/v1/animals/" + ada + "/departures", "{\"because\":\"moved-on\"}"));
        assertThat(left.text("/cautions/0")).contains("evidence");
        Rescue.created(rescue.keeper.post(path, "{\"state\":\"released\",\"authority\":\"District office\"}"));
        assertThat(states(ada)).containsEntry("no-legal-hold", "met");
        assertThat(Rescue.each(rescue.keeper.get(path).json().get("items"), "/state"))
                .isEqualTo(List.of("held", "released"));
    }

    @Test
    void mitesOnARoommateAreMitesInTheRoom() {
        String ada = ready(Rescue.CAPTIVE);
        String bo = rescue.animal("Bo");
        rescue.place(bo, shed, -95);
        rescue.look(bo, -4, "{\"mites\":\"few\"}");
        assertThat(states(ada))
                .containsEntry("mite-free", "unmet")
                .containsEntry("minimum-stay", "unmet")
                .containsEntry("treatment-ended", "unmet");
    }

    @Test
    void movesItAmongTheResidentsWhereARoomIsNamed() {
        String ada = ready(Rescue.CAPTIVE);
        String hall = rescue.residentsRoom("Hall");
        assertThat(decide(ada, "{\"roomId\":\"" + shed + "\"}").faults()).containsExactly("#/roomId");
        Answer decided = Rescue.created(decide(ada, "{\"roomId\":\"" + hall + "\"}"));
        assertThat(decided.text("/toRoomClock")).contains("residents");
        assertThat(Rescue.each(rescue.clock(hall).json().get("animals"), "/name"))
                .containsExactly("Ada");
        Answer now = rescue.keeper.get("/api/v1/animals/" + ada + "/quarantine");
        assertThat(now.text("/where")).isEqualTo("resident");
        assertThat(now.text("/workPlace/place")).isEqualTo("residents");
        assertThat(decide(ada, "{}").faults()).containsExactly("#");
    }

    @Test
    void endsItOncePerKey() {
        String ada = ready(Rescue.CAPTIVE);
        String path = "/api/v1/animals/" + ada + "/release-decisions";
        Answer first = rescue.keeper.post(path, "{}", "Idempotency-Key", "k");
        Answer again = rescue.keeper.post(path, "{}", "Idempotency-Key", "k");
        assertThat(first.status()).isEqualTo(201);
        assertThat(again.body()).isEqualTo(first.body());
        assertThat(rescue.keeper.get(path).json().get("items")).hasSize(1);
    }
}
