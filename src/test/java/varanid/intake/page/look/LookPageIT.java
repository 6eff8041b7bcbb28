package varanid.intake.page.look;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.Browser;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;
import varanid.intake.service.ServiceTest;

/** The look and the decision, as a browser without scripts uses them. */
@ServiceTest
class LookPageIT {

    private static final Pattern KEY = Pattern.compile("name=\"key\" value=\"([^\"]+)\"");

    /** The look of an animal in which nothing was found. */
    private static final Map<String, String> WELL = Map.ofEntries(
            Map.entry("checklist", "varanid-intake"),
            Map.entry("version", "1"),
            Map.entry("answer.laboured-breathing", "absent"),
            Map.entry("answer.open-mouth-breathing", "absent"),
            Map.entry("answer.tissue-from-vent", "absent"),
            Map.entry("answer.bleeding", "absent"),
            Map.entry("answer.cannot-lift-body", "absent"),
            Map.entry("answer.unresponsive", "absent"),
            Map.entry("answer.body-condition", "fit"));

    @Autowired
    Organisations organisations;

    private record Kept(Organisation rescue, Client keeper, Browser browser, String animal) {

        String look() {
            return "/animals/" + animal + "/look";
        }

        Answer send(Map<String, String> fields) {
            return browser.submit(look(), look(), fields);
        }

        long looks() {
            return keeper.get("/api/v1/animals/" + animal + "/assessments")
                    .json()
                    .at("/items")
                    .size();
        }
    }

    private Kept newcomer() {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        String animal = keeper.post("/api/v1/animals", """
                        {"name": "Pebble", "species": {"name": "Varanus salvator"}, "lifeStage": "adult",
                         "declaredOrigin": "C"}""").text("/id");
        return new Kept(rescue, keeper, Browser.signedIn(rescue, keeper), animal);
    }

    @Test
    void theSheetAsksEverythingAndAnswersNothingBeforehand() {
        Kept kept = newcomer();
        Answer page = kept.browser().get(kept.look());
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.body())
                .contains("Look over Pebble", "Sides heave or the neck stretches up with each breath", "Could not see")
                .doesNotContain("checked=\"checked\"", " style=", "<script>");
        assertThat(page.body().indexOf("Too cold to judge"))
                .as("conditions first, then what must be seen")
                .isLessThan(page.body().indexOf("q-laboured-breathing"));
        assertThat(page.body().indexOf("q-unresponsive")).isLessThan(page.body().indexOf("q-nasal-discharge"));
    }

    @Test
    void aSheetThatIsSentLeadsToTheDecision() {
        Kept kept = newcomer();
        Map<String, String> fields = new HashMap<>(WELL);
        fields.put("answer.laboured-breathing", "marked");
        fields.put("condition", "wet");
        fields.put("number.days-food-refused", "3");
        fields.put("skin", "29,5");
        fields.put("skin-unit", "Cel");
        fields.put("note", "Sat by the door.\r\nThen moved.");
        Answer sent = kept.send(fields);
        assertThat(sent.status()).as(sent.body()).isEqualTo(303);
        String path = sent.header("Location").orElseThrow();
        assertThat(path).startsWith("/animals/" + kept.animal() + "/looks/");
        Answer decision = kept.browser().get(path);
        assertThat(decision.status()).as(decision.body()).isEqualTo(200);
        assertThat(decision.body())
                .contains(
                        "vet now",
                        "Strictly apart",
                        "Phone a vet who sees reptiles before you drive",
                        "/animals/" + kept.animal() + "/hand-over",
                        "This is not a diagnosis");
        Answer stored = kept.keeper().get("/api/v1/animals/" + kept.animal() + "/assessments/" + lastOf(path));
        assertThat(stored.json().at("/answers/days-food-refused").intValue()).isEqualTo(3);
        assertThat(stored.json().at("/skinTemperature/celsius").decimalValue()).isEqualByComparingTo("29.5");
        assertThat(stored.text("/note")).isEqualTo("Sat by the door.\nThen moved.");
        assertThat(stored.text("/conditions/0")).isEqualTo("wet");
    }

    @Test
    void noneOfTheseSignsAnswersWhatWasLeftOpenAndOnlyWhereThatIsAnAnswer() {
        Kept kept = newcomer();
        Map<String, String> fields = new HashMap<>(WELL);
        fields.put("none.gut", "yes");
        fields.put("none.exposure", "yes");
        fields.put("answer.straining", "not-observed");
        Answer sent = kept.send(fields);
        assertThat(sent.status()).as(sent.body()).isEqualTo(303);
        Answer stored = kept.keeper()
                .get("/api/v1/animals/" + kept.animal() + "/assessments/"
                        + lastOf(sent.header("Location").orElseThrow()));
        assertThat(stored.text("/answers/regurgitation")).isEqualTo("absent");
        assertThat(stored.text("/answers/straining")).isEqualTo("not-observed");
        assertThat(stored.json().at("/answers").propertyNames())
                .as("what takes time, is counted, or would have to be told stays open")
                .doesNotContain("stool-form", "no-stool", "days-food-refused", "appetite", "bad-consignment")
                .doesNotContain("nasal-discharge");
    }

    @Test
    void aFaultIsToldAtItsFieldAndNothingTypedIsLost() {
        Kept kept = newcomer();
        Map<String, String> fields = new HashMap<>(WELL);
        fields.put("condition", "cold");
        fields.put("number.days-food-refused", "many");
        fields.put("number.weight-trend", "minus 5");
        fields.put("skin", "84");
        fields.put("skin-unit", "Cel");
        fields.put("note", "<script>alert(1)</script> & \"more\"");
        Answer page = kept.send(fields);
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.body())
                .contains("href=\"#q-days-food-refused\"", "href=\"#q-weight-trend\"", "href=\"#skin\"")
                .contains("value=\"many\"", "value=\"minus 5\"", "value=\"84\"", "name=\"skin-confirmed\"")
                .contains("&lt;script&gt;alert(1)&lt;/script&gt;")
                .doesNotContain("<script>alert");
        assertThat(page.body()).containsPattern("value=\"cold\"\\s+checked=\"checked\"");
        assertThat(page.body()).containsPattern("name=\"answer.body-condition\" value=\"fit\"\\s+checked=\"checked\"");
        assertThat(kept.looks()).isZero();
    }

    @Test
    void whatTheFormNeverAsksIsRefusedAndNotDropped() {
        Kept kept = newcomer();
        Map<String, String> fields = new HashMap<>(WELL);
        fields.put("answer.\"><img src=x>", "absent");
        fields.put("answer.bleeding", "'; drop table--");
        fields.put("condition", "made-up");
        Answer page = kept.send(fields);
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.body()).contains("href=\"#q-bleeding\"").doesNotContain("<img src=x>");
        assertThat(kept.looks()).isZero();
    }

    @Test
    void theSameFormSentTwiceKeepsOneLook() {
        Kept kept = newcomer();
        Map<String, String> fields = new HashMap<>(WELL);
        fields.put("key", keyIn(kept.browser().get(kept.look())));
        Answer first = kept.send(fields);
        Answer second = kept.send(fields);
        assertThat(first.status()).isEqualTo(303);
        assertThat(second.status()).isEqualTo(303);
        assertThat(second.header("Location")).isEqualTo(first.header("Location"));
        assertThat(kept.looks()).isEqualTo(1);
    }

    @Test
    void theSameFormSentAgainAfterSigningInAgainLeadsToTheLookThatWasKept() {
        Kept kept = newcomer();
        Map<String, String> fields = new HashMap<>(WELL);
        fields.put("key", keyIn(kept.browser().get(kept.look())));
        Answer first = kept.send(fields);
        assertThat(first.status()).isEqualTo(303);
        assertThat(kept.browser().submit(kept.look(), "/sign-out", Map.of()).status())
                .isEqualTo(303);
        Browser later = Browser.signedIn(kept.rescue(), kept.keeper());
        Answer second = later.submit(kept.look(), kept.look(), fields);
        assertThat(second.status()).as(second.body()).isEqualTo(303);
        assertThat(second.header("Location")).isEqualTo(first.header("Location"));
        fields.put("answer.bleeding", "running");
        assertThat(later.submit(kept.look(), kept.look(), fields).body())
                .as("what was changed in between is not taken for the same")
                .contains("kept as a look before you changed it");
        assertThat(kept.looks()).isEqualTo(1);
    }

    @Test
    void whatTheScriptSendsAgainFromAnotherSessionIsTheLookThatWasKept() {
        Kept kept = newcomer();
        String look = """
                {"checklist": "varanid-intake", "version": 1, "answers": {"bleeding": "absent"},
                 "occurredAt": "%s", "formKey": "%s"}""".formatted(Instant.now(), UUID.randomUUID());
        Answer first = sendByScript(kept, kept.browser(), look);
        Answer second = sendByScript(kept, Browser.signedIn(kept.rescue(), kept.keeper()), look);
        assertThat(first.status()).as(first.body()).isEqualTo(201);
        assertThat(second.status()).as(second.body()).isEqualTo(201);
        assertThat(second.body()).isEqualTo(first.body());
        assertThat(kept.looks()).isEqualTo(1);
    }

    @Test
    void oneFormSentFromManySessionsAtOnceIsKeptOnce() throws Exception {
        Kept kept = newcomer();
        Map<String, String> fields = new HashMap<>(WELL);
        fields.put("key", keyIn(kept.browser().get(kept.look())));
        List<Callable<Optional<String>>> sendings = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Browser session = Browser.signedIn(kept.rescue(), kept.keeper());
            Map<String, String> proven = new HashMap<>(fields);
            proven.put("_csrf", session.proof(kept.look()));
            sendings.add(() -> session.post(kept.look(), proven).header("Location"));
        }
        ExecutorService threads = Executors.newFixedThreadPool(sendings.size());
        try {
            Set<String> decisions = new HashSet<>();
            for (Future<Optional<String>> sent : threads.invokeAll(sendings)) {
                decisions.add(sent.get().orElseThrow());
            }
            assertThat(decisions).hasSize(1);
        } finally {
            threads.shutdownNow();
        }
        assertThat(kept.looks()).isEqualTo(1);
    }

    @Test
    void theFormsOfTwoPeopleAreTwoLooksWhateverTheirKey() {
        Kept kept = newcomer();
        Map<String, String> fields = new HashMap<>(WELL);
        fields.put("key", keyIn(kept.browser().get(kept.look())));
        assertThat(kept.send(fields).status()).isEqualTo(303);
        Browser other = Browser.signedIn(kept.rescue(), kept.rescue().keeper());
        assertThat(other.submit(kept.look(), kept.look(), fields).status()).isEqualTo(303);
        assertThat(kept.looks()).isEqualTo(2);
    }

    @Test
    void aFormThatWasSentAndChangedIsNotLostAndNotKeptUnasked() {
        Kept kept = newcomer();
        Map<String, String> fields = new HashMap<>(WELL);
        fields.put("key", keyIn(kept.browser().get(kept.look())));
        assertThat(kept.send(fields).status()).isEqualTo(303);
        fields.put("answer.bleeding", "running");
        Answer page = kept.send(fields);
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.body()).contains("kept as a look before you changed it");
        assertThat(page.body()).containsPattern("name=\"answer.bleeding\" value=\"running\"[^>]*checked");
        assertThat(kept.looks()).isEqualTo(1);
        fields.put("key", keyIn(page));
        assertThat(kept.send(fields).status()).isEqualTo(303);
        assertThat(kept.looks()).isEqualTo(2);
    }

    @Test
    void anAnswerOfLastTimeStandsBesideTheQuestionAndIsNotGivenAgain() {
        Kept kept = newcomer();
        assertThat(kept.send(WELL).status()).isEqualTo(303);
        assertThat(kept.browser().get(kept.look()).body())
                .contains("Last time: Pushes up on four legs")
                .doesNotContain("checked=\"checked\"");
    }

    @Test
    void whatAVetSaysStandsAboveTheLook() {
        Kept kept = newcomer();
        Map<String, String> fields = new HashMap<>(WELL);
        fields.put("answer.nasal-discharge", "clear");
        String path = kept.send(fields).header("Location").orElseThrow();
        assertThat(kept.browser().get(path).body())
                .contains("class=\"soon urgent\"")
                .doesNotContain("A vet has answered");
        Answer answered = kept.rescue()
                .clinician()
                .post("/api/v1/animals/" + kept.animal() + "/vet-decisions", """
                        {"seenUpTo": "%s", "sawAnimal": "examined", "urgency": "stat", "isolation": "strict",
                         "instructions": "Bring it <b>now</b>.",
                         "writer": {"name": "Dr Ines Fjord", "practice": "Reed Bank Vets",
                                    "licenceStatement": "licensed", "contact": "by phone"}}
                        """.formatted(Instant.now()));
        assertThat(answered.status()).as(answered.body()).isEqualTo(201);
        assertThat(kept.browser().get(path).body())
                .contains(
                        "class=\"soon stat\"",
                        "A vet has answered",
                        "This look by itself came to: vet within 7 days.",
                        "Dr Ines Fjord, Reed Bank Vets",
                        "Bring it &lt;b&gt;now&lt;/b&gt;.");
    }

    @Test
    void anOlderAndACorrectedLookSayThatTheyAre() {
        Kept kept = newcomer();
        String first = kept.send(WELL).header("Location").orElseThrow();
        String second = kept.send(WELL).header("Location").orElseThrow();
        assertThat(kept.browser().get(first).body()).contains("There is a newer look.", "href=\"" + second + "\"");
        assertThat(kept.browser().get(second).body()).doesNotContain("There is a newer look.");
        Answer correction = kept.keeper()
                .post(
                        "/api/v1/animals/" + kept.animal() + "/assessments",
                        "{\"checklist\": \"varanid-intake\", \"supersedes\": \"" + lastOf(second) + "\"}");
        assertThat(correction.status()).isEqualTo(201);
        assertThat(kept.browser().get(second).body())
                .contains("This look was corrected.", "/looks/" + correction.id() + "\"");
    }

    @Test
    void aLookIsCorrectedFromItsPage() {
        Kept kept = newcomer();
        Map<String, String> wrong = new HashMap<>(WELL);
        wrong.put("answer.bleeding", "running");
        wrong.put("number.days-food-refused", "3");
        wrong.put("condition", "wet");
        wrong.put("skin", "29.5");
        wrong.put("skin-unit", "Cel");
        wrong.put("note", "Sat by the door.");
        String first = kept.send(wrong).header("Location").orElseThrow();
        assertThat(kept.browser().get(first).body()).contains("Correct this look", "href=\"" + first + "/correction\"");
        Answer form = kept.browser().get(first + "/correction");
        assertThat(form.status()).as(form.body()).isEqualTo(200);
        assertThat(form.body())
                .contains("Correct the look at Pebble", "Why is it corrected?", "Sat by the door.")
                .contains("name=\"number.days-food-refused\"", "value=\"3\"", "value=\"29.5\"")
                .containsPattern("value=\"wet\"\\s+checked=\"checked\"")
                .containsPattern("name=\"answer.bleeding\" value=\"running\"[^>]*checked");

        Map<String, String> right = new HashMap<>(wrong);
        right.put("answer.bleeding", "absent");
        Answer unexplained = kept.browser().submit(first + "/correction", first + "/correction", right);
        assertThat(unexplained.status()).isEqualTo(422);
        assertThat(unexplained.body()).contains("Say why it is corrected", "href=\"#reason\"");
        right.put("reason", "It was <i>berry juice</i>.");
        String second = kept.browser()
                .submit(first + "/correction", first + "/correction", right)
                .header("Location")
                .orElseThrow();

        assertThat(kept.browser().get(first).body())
                .contains("This look was corrected.", "href=\"" + second + "\"")
                .doesNotContain("Correct this look");
        assertThat(kept.browser().get(second).body())
                .contains("This look corrects an earlier one", "href=\"" + first + "\"")
                .contains("It was &lt;i&gt;berry juice&lt;/i&gt;.", "class=\"soon routine\"");
        Answer stored = kept.keeper().get("/api/v1/animals/" + kept.animal() + "/assessments/" + lastOf(second));
        Answer before = kept.keeper().get("/api/v1/animals/" + kept.animal() + "/assessments/" + lastOf(first));
        assertThat(stored.text("/supersedes")).isEqualTo(lastOf(first));
        assertThat(stored.text("/reason")).isEqualTo("It was <i>berry juice</i>.");
        assertThat(stored.text("/occurredAt")).isEqualTo(before.text("/occurredAt"));
        assertThat(stored.json().at("/answers/days-food-refused").intValue()).isEqualTo(3);
        assertThat(stored.json().at("/skinTemperature/celsius").decimalValue()).isEqualByComparingTo("29.5");
    }

    @Test
    void twoCorrectionsOfOneLookAreNotBothKeptAndTheSecondIsNotLost() {
        Kept kept = newcomer();
        String first = kept.send(WELL).header("Location").orElseThrow();
        Map<String, String> right = new HashMap<>(WELL);
        right.put("answer.bleeding", "running");
        right.put("reason", "Overlooked");
        assertThat(kept.browser()
                        .submit(first + "/correction", first + "/correction", right)
                        .status())
                .isEqualTo(303);
        right.put("reason", "Overlooked by the other too");
        Answer late = kept.browser().submit(first + "/correction", first + "/correction", right);
        assertThat(late.status()).isEqualTo(409);
        assertThat(late.body())
                .contains("Somebody has corrected this look in the meantime", "Overlooked by the other too")
                .contains("To the correction, which counts");
        assertThat(kept.looks()).isEqualTo(2);
    }

    @Test
    void onlyWhoMayLookCorrectsAndOnlyTheirOwnAnimals() {
        Kept kept = newcomer();
        String first = kept.send(WELL).header("Location").orElseThrow();
        Browser vet = Browser.signedIn(kept.rescue(), kept.rescue().clinician());
        assertThat(vet.get(first).body()).doesNotContain("Correct this look");
        assertThat(vet.get(first + "/correction").status()).isEqualTo(403);
        assertThat(newcomer().browser().get(first + "/correction").status()).isEqualTo(404);
        assertThat(kept.keeper()
                        .post(
                                "/api/v1/animals/" + kept.animal() + "/assessments",
                                "{\"checklist\": \"varanid-intake\", \"reason\": \"none\"}")
                        .status())
                .as("a reason without a correction")
                .isEqualTo(422);
    }

    @Test
    void whatWasNotSeenIsNamedAndNeverReassures() {
        Kept kept = newcomer();
        String path = kept.send(Map.of("answer.bleeding", "not-observed", "condition", "cold"))
                .header("Location")
                .orElseThrow();
        assertThat(kept.browser().get(path).body())
                .contains(
                        "class=\"soon urgent\"",
                        "Must be seen, and was not",
                        "Is there blood, fresh or flowing?",
                        "It could still be: vet now.",
                        "Look again:",
                        "A cold monitor can look dead.");
    }

    @Test
    void whatIsToBeLookedAtNextSaysHowAndWhatNeverToDo() {
        Kept kept = newcomer();
        Map<String, String> fields = new HashMap<>(WELL);
        for (String section : List.of(
                "respiratory", "body-condition", "hydration", "gut", "mouth-and-eyes", "skin", "movement-and-nerves")) {
            fields.put("none." + section, "yes");
        }
        String path = kept.send(fields).header("Location").orElseThrow();
        assertThat(kept.browser().get(path).body())
                .contains("Was it seen on its back and unable to turn over?", "Never turn it over to find out.");
    }

    @Test
    void theAnimalsOfOthersAreNotThere() {
        Kept kept = newcomer();
        Answer sent = kept.send(WELL);
        Kept other = newcomer();
        String proof = other.browser().proof(other.look());
        assertThat(other.browser().get(kept.look()).status()).isEqualTo(404);
        assertThat(other.browser().get(sent.header("Location").orElseThrow()).status())
                .isEqualTo(404);
        Map<String, String> fields = new HashMap<>(WELL);
        fields.put("_csrf", proof);
        assertThat(other.browser().post(kept.look(), fields).status()).isEqualTo(404);
        assertThat(kept.looks()).isEqualTo(1);
        assertThat(other.browser()
                        .get("/animals/" + other.animal() + "/looks/" + UUID.randomUUID())
                        .status())
                .isEqualTo(404);
    }

    @Test
    void whoOnlyAnswersAsAVetDoesNotLook() {
        Kept kept = newcomer();
        Browser vet = Browser.signedIn(kept.rescue(), kept.rescue().clinician());
        assertThat(vet.get(kept.look()).status()).isEqualTo(403);
    }

    private static Answer sendByScript(Kept kept, Browser browser, String look) {
        return browser.send(
                "POST",
                "/api/v1/animals/" + kept.animal() + "/assessments",
                BodyPublishers.ofString(look),
                "Content-Type",
                "application/json",
                "X-CSRF-TOKEN",
                browser.proof(kept.look()));
    }

    private static String lastOf(String path) {
        return path.substring(path.lastIndexOf('/') + 1);
    }

    private static String keyIn(Answer page) {
        Matcher matcher = KEY.matcher(page.body());
        assertThat(matcher.find()).isTrue();
        return matcher.group(1);
    }
}
