package varanid.intake.vet;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** What a vet without an account is shown and answers, by a link. */
@ServiceTest
class ReplyIT {

    private static final String HOSTILE = "</textarea><script>alert(1)</script>\"'& ${7*7} [[${8*8}]] \u202Eabc";

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    Clinic clinic;
    Client anybody;

    @BeforeEach
    void someAnimal() {
        clinic = new Clinic(organisations);
        anybody = organisations.nobody();
    }

    private String link(Client issuer) {
        return link(issuer, "reply");
    }

    private String link(Client issuer, String kind) {
        Answer given = issuer.post(
                clinic.path("/links"), "{\"kind\":\"" + kind + "\",\"recipient\":\"Harbour Reptile Practice\"}");
        assertThat(given.status()).as(given.body()).isEqualTo(201);
        return URI.create(given.text("/address")).getPath();
    }

    private Answer page(String link) {
        Answer page = anybody.get(link, "Accept", "text/html");
        assertThat(page.status()).as(page.body()).isEqualTo(200);
        return page;
    }

    private static String hidden(Answer page, String name) {
        Matcher found =
                Pattern.compile("name=\"" + name + "\" value=\"([^\"]*)\"").matcher(page.body());
        assertThat(found.find()).as(name).isTrue();
        return found.group(1);
    }

    private static Map<String, String> filled(Answer page) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("seenUpTo", hidden(page, "seenUpTo"));
        fields.put("formKey", hidden(page, "formKey"));
        fields.put("name", "Ines Okafor");
        fields.put("practice", "Harbour Reptile Practice");
        fields.put("licence", "Register of Vets 4711");
        return fields;
    }

    private Answer send(String link, Map<String, String> fields) {
        String body = fields.entrySet().stream()
                .map(field -> encode(field.getKey()) + "=" + encode(field.getValue()))
                .collect(Collectors.joining("&"));
        return anybody.send(
                "POST", link, BodyPublishers.ofString(body), "Content-Type", "application/x-www-form-urlencoded");
    }

    private static String encode(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    private JsonNode answers() {
        return clinic.keeper.get(clinic.path("/vet-decisions")).json().get("items");
    }

    @Test
    void showsAPageThatNeedsNoScriptNoCookieAndNothingFromElsewhere() {
        clinic.look("{\"laboured-breathing\":\"mild\"}");
        Answer page = page(link(clinic.keeper));
        assertThat(page.header("Content-Type")).contains("text/html;charset=UTF-8");
        assertThat(page.header("Content-Security-Policy").orElseThrow())
                .contains("default-src 'none'", "form-action 'self'", "frame-ancestors 'none'")
                .doesNotContain("unsafe", "script-src");
        assertThat(page.header("Cache-Control")).contains("no-store");
        assertThat(page.header("Referrer-Policy")).contains("no-referrer");
        assertThat(page.header("X-Robots-Tag").orElseThrow()).contains("noindex");
        assertThat(page.header("X-Content-Type-Options")).contains("nosniff");
        assertThat(page.headers().containsHeader("Set-Cookie")).isFalse();
        assertThat(page.body())
                .doesNotContain("<script", "src=", "href=\"http", " style=", " onclick")
                .contains("Laboured breathing: sides move more than they should but the neck stays still");
        assertThat(anybody.get("/paper/reply.css").status()).isEqualTo(200);
    }

    @Test
    void everyFieldHasALabel() {
        clinic.look("{\"laboured-breathing\":\"mild\",\"ticks\":\"few\"}");
        String page = page(link(clinic.keeper)).body();
        Matcher fields = Pattern.compile("<(?:input type=\"(?:text|date)\"[^>]*|textarea|select) ?[^>]*id=\"([^\"]+)\"")
                .matcher(page);
        List<String> ids = new ArrayList<>();
        while (fields.find()) {
            ids.add(fields.group(1));
        }
        assertThat(ids).hasSizeGreaterThan(15).doesNotHaveDuplicates();
        assertThat(ids).allSatisfy(id -> assertThat(page).contains("<label for=\"" + id + "\""));
        Matcher radios = Pattern.compile("(.{22})<input type=\"radio\"").matcher(page);
        while (radios.find()) {
            assertThat(radios.group(1)).endsWith("<label class=\"choice\">");
        }
    }

    @Test
    void keepsWhatWasFilledInAndShowsIt() {
        clinic.look("{\"laboured-breathing\":\"mild\",\"ticks\":\"few\"}");
        String link = link(clinic.clinician);
        Map<String, String> fields = filled(page(link));
        fields.put("sawAnimal", "examined");
        fields.put("urgency", "routine");
        fields.put("isolation", "standard");
        fields.put("finding.laboured-breathing", "rejected");
        fields.put("level.laboured-breathing", "mild");
        fields.put("remark.laboured-breathing", "excited, no more");
        fields.put("finding.ticks", "confirmed");
        fields.put("level.ticks", "few");
        fields.put("added", "An old break of the tail.");
        fields.put("test-words.2", "Blood count");
        fields.put("test-on.2", "2026-03-01");
        fields.put("test-result.2", "nothing unusual");
        fields.put("instructions", "Two lines:\r\nrest, and water.");
        fields.put("cause.1", "ticks");
        fields.put("ruling.1", "goes-on");
        fields.put("approvesRelease", "false");
        fields.put("nextVisit", "");
        Answer sent = send(link, fields);
        assertThat(sent.status()).as(sent.body()).isEqualTo(303);
        JsonNode kept = answers().get(0);
        assertThat(kept.get("confirmed").booleanValue()).isTrue();
        assertThat(kept.get("recordedVia").stringValue()).isEqualTo("link");
        assertThat(kept.get("sawAnimal").stringValue()).isEqualTo("examined");
        assertThat(kept.get("instructions").stringValue()).isEqualTo("Two lines:\nrest, and water.");
        assertThat(kept.at("/findings/0/verdict").stringValue()).isEqualTo("rejected");
        assertThat(kept.at("/findings/0/words").stringValue()).isEqualTo("excited, no more");
        assertThat(kept.at("/findings/1/level").stringValue()).isEqualTo("few");
        assertThat(kept.at("/findings/2/words").stringValue()).isEqualTo("An old break of the tail.");
        assertThat(kept.at("/tests/0/words").stringValue()).isEqualTo("Blood count");
        assertThat(kept.get("approvesRelease").booleanValue()).isFalse();
        Answer shown = page(sent.header("Location").orElseThrow());
        assertThat(shown.body())
                .contains(
                        "Your answer is kept",
                        "It counts as a vet&#39;s answer.",
                        "Two lines:\nrest, and water.",
                        "excited, no more",
                        "Register of Vets 4711");
        assertThat(clinic.recommendation().text("/urgency/code")).isEqualTo("routine");
    }

    @Test
    void aLinkOfAKeeperGivesAnAnswerThatMayOnlyRaiseUntilAClinicianConfirmsIt() {
        clinic.look("{\"laboured-breathing\":\"mild\"}");
        String link = link(clinic.keeper);
        Map<String, String> fields = filled(page(link));
        fields.put("urgency", "routine");
        fields.put("isolation", "standard");
        assertThat(send(link, fields).status()).isEqualTo(303);
        Answer holds = clinic.recommendation();
        assertThat(holds.text("/urgency/code")).isEqualTo("asap");
        assertThat(holds.text("/isolation/code")).isEqualTo("strict");
        assertThat(holds.json().get("unconfirmed")).hasSize(1);
        assertThat(holds.json().has("standing")).isFalse();
        String id = holds.text("/unconfirmed/0/id");
        Answer confirmed = clinic.clinician.post(
                clinic.path("/vet-decisions/" + id + "/confirmation"), "{\"note\":\"I telephoned the practice\"}");
        assertThat(confirmed.status()).as(confirmed.body()).isEqualTo(200);
        assertThat(confirmed.text("/confirmedBy"))
                .isEqualTo(clinic.clinician.personId().toString());
        assertThat(clinic.clinician
                        .post(clinic.path("/vet-decisions/" + id + "/confirmation"), "{}")
                        .json())
                .isEqualTo(confirmed.json());
        assertThat(clinic.recommendation().text("/urgency/code")).isEqualTo("routine");
        assertThat(clinic.recommendation().text("/isolation/code")).isEqualTo("standard");
    }

    @Test
    void anUnconfirmedAnswerRaises() {
        String link = link(clinic.organisation.administrator());
        Map<String, String> fields = filled(page(link));
        fields.put("urgency", "stat");
        assertThat(send(link, fields).status()).isEqualTo(303);
        assertThat(clinic.recommendation().text("/urgency/code")).isEqualTo("stat");
        assertThat(clinic.recommendation().text("/headline")).contains("whose writer is not confirmed");
    }

    @Test
    void losesNothingThatWasTypedWhereSomethingIsWrongAndSaysItAtTheField() {
        clinic.look("{\"laboured-breathing\":\"mild\"}");
        String link = link(clinic.keeper);
        Answer empty = page(link);
        Map<String, String> fields = filled(empty);
        fields.put("name", "");
        fields.put("urgency", "asap");
        fields.put("finding.laboured-breathing", "confirmed");
        fields.put("level.laboured-breathing", "mild");
        fields.put("remark.laboured-breathing", "wet sound, too");
        fields.put("instructions", "Keep it \"warm\".\r\n<b>Call</b> me.");
        fields.put("test-words.3", "");
        fields.put("test-result.3", "pending");
        fields.put("cause.2", "ticks");
        fields.put("nextVisit", "2001-01-01");
        Answer again = send(link, fields);
        assertThat(again.status()).isEqualTo(422);
        assertThat(answers()).isEmpty();
        String body = again.body();
        assertThat(hidden(again, "seenUpTo")).isEqualTo(fields.get("seenUpTo"));
        assertThat(hidden(again, "formKey")).isEqualTo(fields.get("formKey"));
        assertThat(body)
                .contains("Keep it &quot;warm&quot;.\n&lt;b&gt;Call&lt;/b&gt; me.</textarea>")
                .contains("value=\"wet sound, too\"")
                .contains("name=\"urgency\" value=\"asap\" checked=\"checked\"")
                .contains("value=\"ticks\" selected=\"selected\"")
                .contains("value=\"2001-01-01\"")
                .contains(">pending</textarea>")
                .contains("id=\"wrong.name\"")
                .contains("id=\"wrong.test-words.3\"")
                .contains("id=\"wrong.ruling.2\"")
                .contains("id=\"wrong.nextVisit\"")
                .contains("href=\"#name\"");
        fields.put("name", "Ines Okafor");
        fields.put("test-words.3", "Swab");
        fields.put("ruling.2", "goes-on");
        fields.put("nextVisit", "");
        assertThat(send(link, fields).status()).isEqualTo(303);
        assertThat(answers()).hasSize(1);
    }

    @Test
    void saysWhatIsNeededOfAnEmptyForm() {
        String link = link(clinic.keeper);
        Map<String, String> fields = filled(page(link));
        fields.keySet().removeAll(List.of("name", "practice", "licence"));
        assertThat(send(link, fields).body()).contains("wrong.name", "wrong.practice", "wrong.licence");
        Answer nothingSaid = send(link, filled(page(link)));
        assertThat(nothingSaid.status()).isEqualTo(422);
        assertThat(nothingSaid.body()).contains("says nothing of the animal");
    }

    @Test
    void showsHostileWordsAsWords() {
        String link = link(clinic.keeper);
        Map<String, String> fields = filled(page(link));
        fields.put("instructions", HOSTILE);
        fields.put("added", HOSTILE);
        fields.put("name", "<img src=x onerror=alert(1)>");
        Answer sent = send(link, fields);
        assertThat(sent.status()).as(sent.body()).isEqualTo(303);
        assertThat(answers().get(0).get("instructions").stringValue()).isEqualTo(HOSTILE);
        Answer shown = page(sent.header("Location").orElseThrow());
        assertThat(shown.body())
                .doesNotContain("<script", "<img", " 49 ", " 64 ")
                .contains("&lt;/textarea&gt;&lt;script&gt;alert(1)&lt;/script&gt;", "${7*7}");
        fields.put("formKey", "another");
        fields.put("practice", "");
        Answer again = send(link, fields);
        assertThat(again.status()).isEqualTo(422);
        assertThat(again.body()).doesNotContain("<script", "<img");
        fields.put("instructions", "a\u0000b");
        fields.put("practice", "p");
        assertThat(send(link, fields).body()).contains("wrong.instructions");
    }

    @Test
    void sentTwiceItIsKeptOnceAndChangedItIsAnotherAnswer() throws Exception {
        String link = link(clinic.clinician);
        Map<String, String> fields = filled(page(link));
        fields.put("words", "Rest.");
        ExecutorService impatient = Executors.newFixedThreadPool(3);
        List<String> shown = new ArrayList<>();
        try {
            List<Future<Answer>> all = new ArrayList<>();
            for (int i = 0; i < 5; i++) {
                all.add(impatient.submit(() -> send(link, fields)));
            }
            for (Future<Answer> each : all) {
                shown.add(each.get().header("Location").orElse("none"));
            }
        } finally {
            impatient.shutdownNow();
        }
        assertThat(shown).doesNotContain("none");
        assertThat(shown.stream().distinct()).hasSize(1);
        assertThat(answers()).hasSize(1);
        fields.put("words", "Rest, and water.");
        assertThat(send(link, fields).status()).isEqualTo(303);
        assertThat(answers()).hasSize(2);
    }

    @Test
    void standsAboveWhatThePageShowedAndNotAboveWhatCameWhileItWasFilledIn() {
        clinic.look("{\"laboured-breathing\":\"absent\"}");
        String link = link(clinic.clinician);
        Map<String, String> fields = filled(page(link));
        fields.put("urgency", "routine");
        clock.later(Duration.ofMinutes(10), () -> {
            clinic.look("{\"laboured-breathing\":\"marked\"}");
            assertThat(send(link, fields).status()).isEqualTo(303);
            Answer holds = clinic.recommendation();
            assertThat(holds.text("/urgency/code")).isEqualTo("stat");
            assertThat(holds.json().get("callVet").booleanValue()).isTrue();
            assertThat(page(link).body()).contains("New since the vet&#39;s answer: call.");
        });
    }

    @Test
    void cannotClaimToHaveSeenTheFuture() {
        String link = link(clinic.clinician);
        Map<String, String> fields = filled(page(link));
        fields.put("urgency", "routine");
        fields.put("seenUpTo", clock.instant().plusSeconds(120).toString());
        Answer refused = send(link, fields);
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains("lies in the future");
        fields.put("seenUpTo", "yesterday");
        assertThat(send(link, fields).status()).isEqualTo(422);
    }

    @Test
    void programsAskAndAnswerInJson() {
        clinic.look("{\"laboured-breathing\":\"mild\"}");
        String link = link(clinic.keeper);
        Answer asked = anybody.get(link, "Accept", "application/json");
        assertThat(asked.status()).as(asked.body()).isEqualTo(200);
        assertThat(asked.text("/signs/0/finding")).isEqualTo("laboured-breathing");
        assertThat(asked.json().get("confirmed").booleanValue()).isFalse();
        String body = Clinic.body(Instant.parse(asked.text("/seenUpTo")), "\"urgency\":\"stat\"");
        Answer kept = anybody.post(link, body, "Idempotency-Key", "k");
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        assertThat(kept.text("/recordedVia")).isEqualTo("link");
        assertThat(kept.json().get("confirmed").booleanValue()).isFalse();
        Answer again = anybody.post(link, body, "Idempotency-Key", "k");
        assertThat(again.json()).isEqualTo(kept.json());
        assertThat(again.header("Idempotency-Replayed")).contains("true");
        assertThat(answers()).hasSize(1);
        Answer other = anybody.post(link, body.replace("stat", "asap"), "Idempotency-Key", "k");
        assertThat(other.isProblem("idempotency-key-reused")).isTrue();
        Answer faulty = anybody.post(link, "{\"urgency\":1}");
        assertThat(faulty.isProblem("invalid-request")).isTrue();
        assertThat(faulty.faults()).contains("#/seenUpTo", "#/urgency", "#/writer");
        assertThat(anybody.get(kept.header("Location").orElseThrow(), "Accept", "application/json")
                        .json())
                .isEqualTo(kept.json());
    }

    @Test
    void opensNothingByAWrongARevokedOrASummaryLink() {
        String link = link(clinic.keeper);
        String summary = link(clinic.keeper, "summary");
        Map<String, String> fields = filled(page(link));
        fields.put("words", "w");
        String wrong = link.substring(0, link.length() - 4) + "0000";
        String asReply = "/reply/" + summary.substring(summary.lastIndexOf('/') + 1);
        for (String address : List.of(wrong, asReply, "/reply/x")) {
            assertThat(anybody.get(address).status()).as(address).isEqualTo(404);
            assertThat(send(address, fields).status()).as(address).isEqualTo(404);
        }
        String id = clinic.keeper
                .get(clinic.path("/links"))
                .json()
                .at("/items/0/id")
                .stringValue();
        assertThat(clinic.keeper
                        .post(clinic.path("/links/" + id + "/revocation"), "{}")
                        .status())
                .isEqualTo(200);
        assertThat(send(link, fields).status()).isEqualTo(404);
        assertThat(answers()).isEmpty();
    }

    @Test
    void showsOnlyWhatCameByThatLink() {
        String kept = clinic.answers(clock.instant(), "\"words\":\"secret of the house\"");
        String link = link(clinic.keeper);
        assertThat(anybody.get(link + "?kept=" + kept).status()).isEqualTo(404);
        assertThat(anybody.get(link + "?kept=x").status()).isEqualTo(404);
    }

    @Test
    void refusesABodyThatIsTooLargeOrOfAnotherKind() {
        String link = link(clinic.keeper);
        Map<String, String> fields = filled(page(link));
        fields.put("words", "x".repeat(100_000));
        assertThat(send(link, fields).status()).isIn(413, 422);
        assertThat(anybody.send("POST", link, BodyPublishers.ofString("words=w"), "Content-Type", "text/plain")
                        .status())
                .isEqualTo(415);
        assertThat(answers()).isEmpty();
    }
}
