package varanid.intake.share;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;
import varanid.intake.platform.web.Role;
import varanid.intake.platform.web.SecretText;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** Links as they are given out, opened, listed and revoked. */
@ServiceTest
class LinkIT {

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    @Autowired
    ShareLinkRows rows;

    @Autowired
    JdbcClient jdbc;

    Shelter shelter;
    Client anybody;

    @BeforeEach
    void someAnimal() {
        shelter = new Shelter(organisations);
        anybody = shelter.anybody;
    }

    private List<JsonNode> items(String path) {
        Answer page = shelter.keeper.get(path);
        assertThat(page.status()).as(page.body()).isEqualTo(200);
        List<JsonNode> items = new ArrayList<>();
        page.json().get("items").forEach(items::add);
        return items;
    }

    @Test
    void isGivenOutWithAnAddressThatIsShownOnce() {
        Shelter.Given link = shelter.give("summary");
        assertThat(link.answer().header("Location")).contains(shelter.links() + "/" + link.id());
        assertThat(link.answer().text("/address"))
                .matches("http://127\\.0\\.0\\.1:" + anybody.port()
                        + "/summary/vs1\\.[A-Za-z0-9_-]{22}\\.[A-Za-z0-9_-]{43}");
        assertThat(link.answer().text("/animalId")).isEqualTo(shelter.animal.toString());
        assertThat(anybody.get(link.path()).status()).isEqualTo(200);
        String random = link.secret().substring(link.secret().lastIndexOf('.') + 1);
        String told = shelter.link(link).body()
                + shelter.keeper.get(shelter.links()).body()
                + shelter.keeper
                        .get(shelter.links() + "/" + link.id() + "/openings")
                        .body()
                + shelter.revoke(link).body();
        assertThat(told)
                .contains(random.substring(0, 6) + "…")
                .doesNotContain(random.substring(0, 7), random.substring(7));
    }

    @Test
    void isNowhereInTheDatabaseButAsAHash() throws Exception {
        String body = "{\"kind\":\"summary\",\"recipient\":\"Recipient in plain text\"}";
        Shelter.Given link = new Shelter.Given(shelter.keeper.post(shelter.links(), body, "Idempotency-Key", "k"));
        assertThat(anybody.get(link.path()).status()).isEqualTo(200);
        String random = link.secret().substring(link.secret().lastIndexOf('.') + 1);
        assertThat(tablesWith(random.substring(7))).isEmpty();
        assertThat(tablesWith("Recipient in plain text")).containsExactly("share_link");
        byte[] hash = MessageDigest.getInstance("SHA-256").digest(link.secret().getBytes(StandardCharsets.UTF_8));
        assertThat(tablesWith(HexFormat.of().formatHex(hash))).containsExactly("share_link");
    }

    /** The tables that have the text somewhere, as it is or as bytes. */
    private List<String> tablesWith(String text) {
        String bytes = HexFormat.of().formatHex(text.getBytes(StandardCharsets.UTF_8));
        return jdbc
                .sql("SELECT tablename FROM pg_tables WHERE schemaname = current_schema()"
                        + " AND tablename <> 'flyway_schema_history' ORDER BY 1")
                .query(String.class)
                .list()
                .stream()
                .filter(table -> jdbc.sql("SELECT EXISTS (SELECT FROM \"" + table
                                + "\" t WHERE strpos(t::text, ?) > 0 OR strpos(t::text, ?) > 0)")
                        .params(text, bytes)
                        .query(Boolean.class)
                        .single())
                .toList();
    }

    @Test
    void opensUntilTheMomentItExpiresAndNotAtIt() {
        Shelter.Given link = shelter.give(shelter.keeper, "summary", 1);
        Instant expires = Instant.parse(link.answer().text("/expiresAt"));
        Instant made = Instant.parse(shelter.link(link).text("/recordedAt"));
        assertThat(Duration.between(made, expires)).isEqualTo(Duration.ofDays(1));
        byte[] hash = new SecretText("vs1", link.secret()).hash();
        UUID organisation = shelter.organisation.id();
        assertThat(rows.findOpen(organisation, hash, "summary", expires.minusMillis(1)))
                .isPresent();
        assertThat(rows.findOpen(organisation, hash, "summary", expires)).isEmpty();
        assertThat(anybody.get(link.path()).status()).isEqualTo(200);
        clock.later(Duration.ofDays(1), () -> {
            assertThat(anybody.get(link.path()).status()).isEqualTo(404);
            assertThat(shelter.link(link).text("/state")).isEqualTo("expired");
            assertThat(shelter.revoke(link).text("/state")).isEqualTo("revoked");
        });
    }

    @Test
    void livesFromOneDayToThirtyAndSevenWhereNothingIsSaid() {
        for (int days : List.of(1, 30)) {
            assertThat(life(shelter.give(shelter.keeper, "summary", days))).isEqualTo(Duration.ofDays(days));
        }
        Shelter.Given usual =
                new Shelter.Given(shelter.keeper.post(shelter.links(), "{\"kind\":\"reply\",\"recipient\":\"r\"}"));
        assertThat(life(usual)).isEqualTo(Duration.ofDays(7));
        for (String days : List.of("0", "31", "-1", "1.5", "\"7\"", "1e9", "[7]", "true", "2147483648")) {
            Answer refused = shelter.keeper.post(
                    shelter.links(), "{\"kind\":\"summary\",\"recipient\":\"r\",\"validDays\":" + days + "}");
            assertThat(refused.status()).as(days).isEqualTo(422);
            assertThat(refused.faults()).as(days).containsExactly("#/validDays");
        }
        assertThat(shelter.keeper
                        .post(
                                shelter.links(),
                                "{\"kind\":\"summary\",\"recipient\":\"r\",\"expiresAt\":\"2020-01-01T00:00:00Z\"}")
                        .faults())
                .containsExactly("#/expiresAt");
        assertThat(items(shelter.links())).hasSize(3);
    }

    private Duration life(Shelter.Given link) {
        JsonNode one = shelter.link(link).json();
        return Duration.between(
                Instant.parse(one.get("recordedAt").stringValue()),
                Instant.parse(one.get("expiresAt").stringValue()));
    }

    @Test
    void namesEveryFaultOfARequestAndKeepsNothingOfIt() {
        Answer refused = shelter.keeper.post(
                shelter.links(),
                "{\"kind\":\"door\",\"recipient\":\"" + "r".repeat(201) + "\",\"validDays\":0,\"secret\":\"mine\"}");
        assertThat(refused.faults()).containsExactlyInAnyOrder("#/kind", "#/recipient", "#/validDays", "#/secret");
        assertThat(shelter.keeper.post(shelter.links(), "{\"recipient\":\" \"}").faults())
                .containsExactlyInAnyOrder("#/kind", "#/recipient");
        assertThat(items(shelter.links())).isEmpty();
    }

    @Test
    void isGivenOnceForAnIdempotencyKey() {
        String body = "{\"kind\":\"summary\",\"recipient\":\"r\"}";
        Answer first = shelter.keeper.post(shelter.links(), body, "Idempotency-Key", "k");
        Answer again = shelter.keeper.post(shelter.links(), body, "Idempotency-Key", "k");
        assertThat(again.status()).isEqualTo(201);
        assertThat(again.body()).isEqualTo(first.body());
        assertThat(again.header("Idempotency-Replayed")).contains("true");
        assertThat(shelter.keeper
                        .post(shelter.links(), body.replace("\"r\"", "\"s\""), "Idempotency-Key", "k")
                        .isProblem("idempotency-key-reused"))
                .isTrue();
        assertThat(items(shelter.links())).hasSize(1);
        assertThat(anybody.get(new Shelter.Given(again).path()).status()).isEqualTo(200);
    }

    @Test
    void showsItsAnimalAndNoOther() {
        UUID other = shelter.animal("Borealis");
        Shelter.Given link = shelter.give("summary");
        for (String form : List.of("json", "html", "fhir")) {
            String shown = anybody.get(link.path() + "?form=" + form + "&animalId=" + other)
                    .body();
            assertThat(shown).as(form).contains("Ada").doesNotContain("Borealis", other.toString());
        }
        Shelter.Given reply = shelter.give("reply");
        assertThat(anybody.get(reply.path() + "?animalId=" + other, "Accept", "application/json")
                        .text("/animalId"))
                .isEqualTo(shelter.animal.toString());
        assertThat(shelter.keeper
                        .get("/api/v1/animals/" + other + "/summary", "Summary-Link", link.secret())
                        .status())
                .isEqualTo(400);
        assertThat(shelter.keeper
                        .get("/api/v1/animals/" + other + "/links/" + link.id())
                        .isProblem("not-found"))
                .isTrue();
        assertThat(shelter.keeper
                        .post("/api/v1/animals/" + other + "/links/" + link.id() + "/revocation", "{}")
                        .isProblem("not-found"))
                .isTrue();
        assertThat(shelter.link(link).text("/state")).isEqualTo("open");
    }

    @Test
    void isNoBusinessOfAnotherOrganisation() {
        Client stranger = organisations.create().person(Role.values());
        Shelter.Given link = shelter.give("summary");
        String one = shelter.links() + "/" + link.id();
        for (Answer answer : List.of(
                stranger.get(shelter.links()),
                stranger.get(one),
                stranger.get(one + "/openings"),
                stranger.post(one + "/revocation", "{}"),
                stranger.post(shelter.links(), "{\"kind\":\"summary\",\"recipient\":\"r\"}"))) {
            assertThat(answer.isProblem("not-found")).as(answer.body()).isTrue();
        }
        assertThat(shelter.link(link).text("/state")).isEqualTo("open");
        assertThat(items(shelter.links())).hasSize(1);
    }

    @Test
    void everyOpeningIsShownToTheOwner() {
        Shelter.Given link = shelter.give("summary");
        Shelter.Given reply = shelter.give(shelter.clinician, "reply", 7);
        assertThat(shelter.link(link).json().get("openings").intValue()).isZero();
        assertThat(shelter.link(link).text("/lastOpenedAt")).isEmpty();
        Instant before = clock.instant();
        for (String form : List.of("html", "json", "pdf", "fhir")) {
            assertThat(anybody.get(link.path() + "?form=" + form).status()).isEqualTo(200);
        }
        Instant after = clock.instant();
        assertThat(anybody.get(reply.path()).status()).isEqualTo(200);
        String openings = shelter.links() + "/" + link.id() + "/openings";
        List<JsonNode> all = items(openings);
        assertThat(all)
                .extracting(each -> each.get("what").stringValue())
                .containsExactly("html", "json", "pdf", "fhir");
        assertThat(all)
                .extracting(each -> Instant.parse(each.get("openedAt").stringValue()))
                .isSorted()
                .allSatisfy(at -> assertThat(at).isBetween(before, after));
        assertThat(all.stream().map(each -> each.get("place").stringValue()).distinct())
                .hasSize(1);
        JsonNode one = shelter.link(link).json();
        assertThat(one.get("openings").intValue()).isEqualTo(4);
        assertThat(one.get("lastOpenedAt")).isEqualTo(all.get(3).get("openedAt"));
        JsonNode other = items(shelter.links() + "/" + reply.id() + "/openings").get(0);
        assertThat(other.get("what").stringValue()).isEqualTo("reply-form");
        assertThat(other.get("place"))
                .as("places of two links say nothing of each other")
                .isNotEqualTo(all.get(0).get("place"));
        assertThat(items(shelter.links() + "?limit=200"))
                .extracting(each -> each.get("openings").intValue())
                .containsExactly(4, 1);
    }

    @Test
    void linksAndOpeningsComeInPages() {
        Shelter.Given link = shelter.give("summary");
        shelter.give("summary");
        shelter.give("reply");
        for (int i = 0; i < 3; i++) {
            anybody.get(link.path() + "?form=json");
        }
        for (String list : List.of(shelter.links(), shelter.links() + "/" + link.id() + "/openings")) {
            List<String> whole = ids(shelter.keeper.get(list));
            Answer first = shelter.keeper.get(list + "?limit=2");
            Answer second = shelter.keeper.get(first.link("next").orElseThrow());
            assertThat(whole).hasSize(3);
            assertThat(ids(first)).isEqualTo(whole.subList(0, 2));
            assertThat(ids(second)).isEqualTo(whole.subList(2, 3));
            assertThat(second.link("next")).isEmpty();
        }
    }

    private static List<String> ids(Answer list) {
        List<String> ids = new ArrayList<>();
        list.json().get("items").forEach(each -> ids.add(each.get("id").stringValue()));
        return ids;
    }

    @Test
    void isAskedForByHeadTooAndThatIsAnOpening() {
        Shelter.Given link = shelter.give("summary");
        String answer = shelter.raw("HEAD " + link.path() + " HTTP/1.1", "Host: x");
        assertThat(answer).startsWith("HTTP/1.1 200").endsWith("\r\n\r\n").contains("X-Robots-Tag: noindex");
        assertThat(shelter.link(link).json().get("openings").intValue()).isEqualTo(1);
        for (String method : List.of("POST", "PUT", "DELETE", "PATCH", "OPTIONS")) {
            assertThat(anybody.sendJson(method, link.path(), "{}").status())
                    .as(method)
                    .isEqualTo(401);
        }
    }

    @Test
    void headersOfForwardingDoNotChangeAnAddress() {
        String body = "{\"kind\":\"summary\",\"recipient\":\"r\"}";
        Answer made = shelter.keeper.post(
                shelter.links(),
                body,
                "X-Forwarded-Host",
                "evil.example",
                "X-Forwarded-Proto",
                "https",
                "X-Forwarded-Port",
                "444",
                "X-Forwarded-Prefix",
                "/evil",
                "Forwarded",
                "host=evil.example;proto=https");
        assertThat(made.text("/address")).startsWith("http://127.0.0.1:" + anybody.port() + "/summary/");
    }

    @Test
    void aHostThatIsNoneIsRefusedAndNothingIsGivenOut() {
        String body = "{\"kind\":\"summary\",\"recipient\":\"r\"}";
        for (String host : List.of("evil.example/x", "a@evil.example", "\"><script>", "a b", "evil.example#", "")) {
            assertThat(shelter.raw(
                            "POST " + shelter.links() + " HTTP/1.1",
                            "Host: " + host,
                            "Authorization: Bearer " + shelter.keeper.token(),
                            "Content-Type: application/json",
                            "Content-Length: " + body.length(),
                            "Connection: close\r\n\r\n" + body))
                    .as(host)
                    .startsWith("HTTP/1.1 400");
        }
        assertThat(items(shelter.links())).isEmpty();
    }

    @Test
    void whoGaveItOutMayBeAClinicianAndOnlyThenItConfirms() {
        assertThat(shelter.give(shelter.clinician, "reply", 7)
                        .answer()
                        .json()
                        .get("confirms")
                        .booleanValue())
                .isTrue();
        assertThat(shelter.give(shelter.clinician, "summary", 7)
                        .answer()
                        .json()
                        .get("confirms")
                        .booleanValue())
                .isFalse();
        assertThat(shelter.give("reply").answer().json().get("confirms").booleanValue())
                .isFalse();
    }
}
