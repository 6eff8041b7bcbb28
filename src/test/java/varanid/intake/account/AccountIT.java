package varanid.intake.account;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class AccountIT {

    private static final String TOKENS = "/api/v1/tokens";
    private static final String PEOPLE = "/api/v1/people";

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    @Autowired
    JdbcClient jdbc;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "x",
                "vi1.AAAAAAAAAAAAAAAAAAAAAA.AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA",
                "vi1..",
                "' OR 1=1 --",
                "eyJhbGciOiJub25lIn0.e30.",
            })
    void refusesATokenThatIsNotKnown(String token) {
        Answer answer = new Client(organisations.nobody().port(), UUID.randomUUID(), token).get(TOKENS);
        assertThat(answer.isProblem("unauthenticated")).isTrue();
        assertThat(answer.header("WWW-Authenticate")).get().asString().contains("invalid_token");
    }

    @Test
    void refusesATokenWithOneCharacterChangedAndOneOfAnotherOrganisation() {
        Client keeper = organisations.create().keeper();
        String token = keeper.token();
        for (int i = 0; i < token.length(); i++) {
            char other = token.charAt(i) == 'A' ? 'B' : 'A';
            String changed = token.substring(0, i) + other + token.substring(i + 1);
            assertThat(new Client(keeper.port(), keeper.personId(), changed)
                            .get(TOKENS)
                            .status())
                    .isEqualTo(401);
        }
        String[] mine = token.split("\\.");
        String[] others = organisations.create().keeper().token().split("\\.");
        String mixed = mine[0] + "." + others[1] + "." + mine[2];
        assertThat(new Client(keeper.port(), keeper.personId(), mixed)
                        .get(TOKENS)
                        .status())
                .isEqualTo(401);
    }

    @Test
    void refusesAnotherSchemeAndTwoTokens() {
        Client keeper = organisations.create().keeper();
        Client nobody = organisations.nobody();
        assertThat(nobody.get(TOKENS, "Authorization", "Basic YTpi").status()).isEqualTo(401);
        assertThat(nobody.get(
                                TOKENS,
                                "Authorization",
                                "Bearer " + keeper.token(),
                                "Authorization",
                                "Bearer " + keeper.token())
                        .status())
                .isEqualTo(401);
    }

    @Test
    void makesATokenThatExpiresAfterNinetyDays() {
        Client keeper = organisations.create().keeper();
        Answer made = keeper.post(TOKENS, "{\"label\":\"phone\"}");
        assertThat(made.status()).isEqualTo(201);
        assertThat(Instant.parse(made.text("/expiresAt")))
                .isEqualTo(Instant.parse(made.text("/recordedAt")).plus(Duration.ofDays(90)));
        Client phone = new Client(keeper.port(), keeper.personId(), made.text("/token"));
        assertThat(phone.get(TOKENS).status()).isEqualTo(200);
        clock.later(
                Duration.ofDays(90).minusMinutes(1),
                () -> assertThat(phone.get(TOKENS).status()).isEqualTo(200));
        clock.later(Duration.ofDays(90).plusMinutes(1), () -> {
            Answer late = phone.get(TOKENS);
            assertThat(late.status()).isEqualTo(401);
            assertThat(late.text("/detail")).contains("expired");
        });
    }

    @Test
    void refusesALifeThatIsOverOrTooLong() {
        Client keeper = organisations.create().keeper();
        Instant now = clock.instant();
        for (Instant end : List.of(now.minusSeconds(1), now.plus(367, ChronoUnit.DAYS))) {
            assertThat(keeper.post(TOKENS, "{\"label\":\"x\",\"expiresAt\":\"" + end + "\"}")
                            .faults())
                    .containsExactly("#/expiresAt");
        }
    }

    @Test
    void refusesARevokedTokenAtOnce() {
        Client keeper = organisations.create().keeper();
        Answer made = keeper.post(TOKENS, "{\"label\":\"phone\"}");
        Client phone = new Client(keeper.port(), keeper.personId(), made.text("/token"));
        String revocation = TOKENS + "/" + made.id() + "/revocation";
        Answer revoked = keeper.send("POST", revocation, BodyPublishers.noBody());
        assertThat(revoked.status()).isEqualTo(200);
        assertThat(revoked.text("/revokedAt")).isNotBlank();
        assertThat(phone.get(TOKENS).text("/detail")).contains("revoked");
        assertThat(keeper.post(revocation, "{}").text("/revokedAt")).isEqualTo(revoked.text("/revokedAt"));
    }

    @Test
    void showsATokenOnceAndStoresItsHashOnly() {
        Organisations.Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        Answer made = keeper.post(TOKENS, "{\"label\":\"phone\"}");
        String secret = made.text("/token");
        assertThat(keeper.get(TOKENS).body()).doesNotContain(secret).contains(made.id());
        assertThat(keeper.get(TOKENS + "/" + made.id()).body()).doesNotContain(secret);
        String row = jdbc.sql("SELECT row_to_json(t)::text FROM api_token t WHERE organisation_id = ? AND id = ?::uuid")
                .params(rescue.id(), made.id())
                .query(String.class)
                .single();
        assertThat(row).doesNotContain(secret).doesNotContain(secret.substring(secret.lastIndexOf('.') + 8));
    }

    @Test
    void showsAPersonTheirOwnTokensAndAnAdministratorAll() {
        Organisations.Organisation rescue = organisations.create();
        Client one = rescue.keeper();
        Client other = rescue.keeper();
        String id = one.post(TOKENS, "{\"label\":\"x\"}").id();
        assertThat(other.get(TOKENS).body()).doesNotContain(id);
        assertThat(other.get(TOKENS + "/" + id).status()).isEqualTo(404);
        assertThat(other.post(TOKENS + "/" + id + "/revocation", "{}").status()).isEqualTo(404);
        assertThat(other.post(TOKENS, "{\"label\":\"x\",\"personId\":\"" + one.personId() + "\"}")
                        .faults())
                .containsExactly("#/personId");
        Client administrator = rescue.administrator();
        assertThat(administrator.get(TOKENS).body()).contains(id);
        Answer forOne = administrator.post(TOKENS, "{\"label\":\"x\",\"personId\":\"" + one.personId() + "\"}");
        assertThat(forOne.text("/issuedBy")).isEqualTo(administrator.personId().toString());
    }

    @Test
    void letsAdministratorsManagePeopleAndNobodyElse() {
        Organisations.Organisation rescue = organisations.create();
        String body = "{\"name\":\"Kim\",\"roles\":[\"keeper\",\"clinician\"]}";
        assertThat(rescue.keeper().post(PEOPLE, body).isProblem("forbidden")).isTrue();
        assertThat(rescue.clinician().post(PEOPLE, body).isProblem("forbidden")).isTrue();
        Client administrator = rescue.administrator();
        Answer added = administrator.post(PEOPLE, body);
        assertThat(added.status()).isEqualTo(201);
        String path = PEOPLE + "/" + added.id();
        Answer changed = administrator.put(
                path, "{\"name\":\"Kim\",\"roles\":[\"keeper\"],\"active\":true}", "If-Match", added.etag());
        assertThat(changed.json().get("roles")).hasSize(1);
        assertThat(rescue.keeper().get(path).body()).isEqualTo(changed.body());
        assertThat(administrator.post(PEOPLE, "{\"name\":\"\",\"roles\":[]}").faults())
                .containsExactly("#/name", "#/roles");
    }

    @Test
    void letsNobodyChangeTheirOwnRoles() {
        Client administrator = organisations.create().administrator();
        String path = PEOPLE + "/" + administrator.personId();
        String etag = administrator.get(path).etag();
        Answer refused = administrator.put(
                path,
                "{\"name\":\"A\",\"roles\":[\"administrator\",\"clinician\"],\"active\":false}",
                "If-Match",
                etag);
        assertThat(refused.faults()).containsExactly("#/roles", "#/active");
        assertThat(administrator
                        .put(path, "{\"name\":\"A\",\"roles\":[\"administrator\"],\"active\":true}", "If-Match", etag)
                        .status())
                .isEqualTo(200);
    }

    @Test
    void refusesTheTokensOfAnInactivePerson() {
        Organisations.Organisation rescue = organisations.create();
        Client administrator = rescue.administrator();
        Client keeper = rescue.keeper();
        String path = PEOPLE + "/" + keeper.personId();
        administrator.put(path, "{\"name\":\"K\",\"roles\":[\"keeper\"],\"active\":false}", "If-Match", "*");
        assertThat(keeper.get(TOKENS).text("/detail")).contains("not active");
    }

    @Test
    void changesTheOrganisationForItsAdministrator() {
        Organisations.Organisation rescue = organisations.create();
        String path = "/api/v1/organisation";
        Client administrator = rescue.administrator();
        Answer read = administrator.get(path);
        String body = "{\"name\":\"New name\",\"zone\":\"Asia/Jakarta\"}";
        assertThat(rescue.keeper().put(path, body, "If-Match", read.etag()).status())
                .isEqualTo(403);
        assertThat(administrator.put(path, body).status()).isEqualTo(428);
        Answer changed = administrator.put(path, body, "If-Match", read.etag());
        assertThat(changed.text("/zone")).isEqualTo("Asia/Jakarta");
        assertThat(administrator.put(path, body, "If-Match", read.etag()).status())
                .isEqualTo(412);
        assertThat(administrator
                        .put(path, "{\"name\":\"x\",\"zone\":\"Mars/North\"}", "If-Match", changed.etag())
                        .faults())
                .containsExactly("#/zone");
    }

    @Test
    void whomToCallStandsOnCardsAndOnWhatAVetReads() {
        Organisations.Organisation rescue = organisations.create();
        Client administrator = rescue.administrator();
        String path = "/api/v1/organisation";
        String body = "{\"name\":\"Reed Bank\",\"zone\":\"Asia/Jakarta\",\"phone\":\"%s\"}";
        assertThat(administrator
                        .put(path, body.formatted("ring us"), "If-Match", "*")
                        .faults())
                .containsExactly("#/phone");
        assertThat(administrator
                        .put(path, body.formatted("01632 960100 ext. 2"), "If-Match", "*")
                        .text("/phone"))
                .isEqualTo("01632 960100 ext. 2");
        String animal = "/api/v1/animals/"
                + rescue.keeper()
                        .post("/api/v1/animals", "{\"name\":\"Pebble\"}")
                        .text("/id");
        assertThat(rescue.keeper().get(animal + "/cage-card").text("/call"))
                .isEqualTo("Reed Bank, 01632 960100 ext. 2");
        assertThat(rescue.keeper().get(animal + "/summary").body()).contains("Reed Bank, 01632 960100 ext. 2");
    }
}
