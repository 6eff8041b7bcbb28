package varanid.intake.platform.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.Socket;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** Whatever is sent, the answer is a 4xx that says why, and nothing is stored. */
@ServiceTest
class HostileRequestsIT {

    private static final String ANIMALS = "/api/v1/animals";

    @Autowired
    Organisations organisations;

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{\"name\":            | 400 | end-of-input",
                "{\"name\":\"a\",\"name\":\"b\"} | 400 | Duplicate",
                "{\"name\":\"a\"} {}   | 400 | trailing",
                "{'name':'a'}          | 400 | double-quote",
                "{\"name\":NaN}        | 400 | NaN",
                "{\"name\":\"a\u0001\"} | 400 | CTRL-CHAR",
                "/* x */ {}            | 400 | JSON",
                "{\"weights\":[{\"value\":1e999999999999,\"unit\":\"g\"}]} | 400 | exponent",
                "{\"weights\":[{\"value\":11111111111111111111111111111111111111111111111111,\"unit\":\"g\"}]} | 400 | 40 digits",
            })
    void refusesABodyThatIsNotStrictJson(String body, int status, String why) {
        refuses(body, status, "malformed-request", why);
    }

    @Test
    void refusesDeepNesting() {
        refuses("[".repeat(10_000) + "]".repeat(10_000), 400, "malformed-request", "32 levels");
        refuses("{\"a\":".repeat(40) + "1" + "}".repeat(40), 400, "malformed-request", "32 levels");
    }

    @Test
    void refusesAQueryThatIsNotUtf8() {
        Client keeper = organisations.create().keeper();
        for (String query : new String[] {"asOf=%F0%9F", "%C3=1"}) {
            Answer answer = keeper.get("/api/v1/worklist?" + query);
            assertThat(answer.isProblem("malformed-request")).as(answer.body()).isTrue();
            assertThat(answer.status()).isEqualTo(400);
        }
    }

    @Test
    void refusesABodyThatIsNotUtf8() {
        Client keeper = organisations.create().keeper();
        byte[] latin1 = "{\"name\":\"K\u00F6nig\"}".getBytes(StandardCharsets.ISO_8859_1);
        Answer answer =
                keeper.send("POST", ANIMALS, BodyPublishers.ofByteArray(latin1), "Content-Type", "application/json");
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.text("/detail")).contains("UTF-8");
        assertNothingStored(keeper);
    }

    @Test
    void refusesAHugeBodyWhetherItSaysItsLengthOrNot() {
        Client keeper = organisations.create().keeper();
        byte[] huge = new byte[JsonRequestResolver.LARGEST_BODY + 1];
        for (var body : new BodyPublisher[] {
            BodyPublishers.ofByteArray(huge), BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(huge))
        }) {
            Answer answer = keeper.send("POST", ANIMALS, body, "Content-Type", "application/json");
            assertThat(answer.status()).isEqualTo(413);
            assertThat(answer.isProblem("too-large")).isTrue();
        }
        assertNothingStored(keeper);
    }

    @Test
    void asksForTheTokenBeforeItLooksAtTheBody() {
        Answer answer = organisations
                .nobody()
                .send(
                        "POST",
                        ANIMALS,
                        BodyPublishers.ofByteArray(new byte[JsonRequestResolver.LARGEST_BODY + 1]),
                        "Content-Type",
                        "text/plain");
        assertThat(answer.status()).isEqualTo(401);
        assertThat(answer.isProblem("unauthenticated")).isTrue();
        assertThat(answer.header("WWW-Authenticate")).get().asString().startsWith("Bearer");
    }

    @ParameterizedTest
    @CsvSource({
        "text/plain",
        "application/xml",
        "application/x-www-form-urlencoded",
        "multipart/form-data; boundary=x",
        "application/json; charset=iso-8859-1",
        "nonsense",
    })
    void refusesAnotherMediaType(String type) {
        Client keeper = organisations.create().keeper();
        Answer answer = keeper.send("POST", ANIMALS, BodyPublishers.ofString("{}"), "Content-Type", type);
        assertThat(answer.status()).isEqualTo(415);
        assertThat(answer.isProblem("unsupported-media-type")).isTrue();
        assertNothingStored(keeper);
    }

    @Test
    void refusesACompressedBody() {
        Client keeper = organisations.create().keeper();
        assertThat(keeper.post(ANIMALS, "{}", "Content-Encoding", "gzip").status())
                .isEqualTo(415);
    }

    @Test
    void namesEveryFaultOfAReadableRequestAtOnce() {
        Client keeper = organisations.create().keeper();
        String tomorrow = LocalDate.now(ZoneOffset.UTC).plusDays(1).toString();
        Answer answer = keeper.post(ANIMALS, """
                {"name": "a\\u0000b", "tag": "\\ud800", "sex": "x", "lifeStage": 3, "zzz": 1, "a/b~c ü": 2,
                 "arrivedOn": "%s", "declaredOrigin": "A", "transponder": "840999999999999",
                 "consignmentId": "01890a5d-ac96-774b-bcce-b302099a8057", "evidence": {"shoe-size": "yes"},
                 "species": {"name": ""}, "notes": {},
                 "papers": [{"kind": "other", "issuedOn": "2026-02-01", "validUntil": "2026-01-01"}, null],
                 "weights": [{"value": 1180000, "unit": "g"}, {"value": "36", "unit": "lb"}, {"value": 0, "unit": "g"},
                             {"value": 1, "unit": "g", "occurredAt": "2999-01-01T00:00:00Z"},
                             {"value": 1, "unit": "g", "occurredAt": "2026-01-01T00:00:00"}]}
                """.formatted(tomorrow));
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.isProblem("invalid-request")).isTrue();
        assertThat(answer.faults())
                .containsExactlyInAnyOrder(
                        "#/name",
                        "#/tag",
                        "#/sex",
                        "#/lifeStage",
                        "#/zzz",
                        "#/a~1b~0c%20%C3%BC",
                        "#/arrivedOn",
                        "#/declaredOrigin",
                        "#/transponder",
                        "#/consignmentId",
                        "#/evidence/shoe-size",
                        "#/species/name",
                        "#/notes",
                        "#/papers/0",
                        "#/papers/1",
                        "#/weights/0/value",
                        "#/weights/1/value",
                        "#/weights/1/unit",
                        "#/weights/2/value",
                        "#/weights/3/occurredAt",
                        "#/weights/4/occurredAt");
        answer.json().at("/faults").forEach(fault -> {
            assertThat(fault.get("wrong").stringValue()).isNotBlank();
            assertThat(fault.get("right").stringValue()).isNotBlank();
        });
        assertNothingStored(keeper);
    }

    @ParameterizedTest
    @CsvSource({"[]", "1", "null", "\"text\"", "true"})
    void refusesABodyThatIsNoObject(String body) {
        Client keeper = organisations.create().keeper();
        Answer answer = keeper.post(ANIMALS, body);
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.faults()).containsExactly("#");
    }

    @Test
    void saysHowManyFaultsThereAreWhenThereAreTooManyToList() {
        StringBuilder body = new StringBuilder("{\"x\":0");
        for (int i = 0; i < 2_000; i++) {
            body.append(",\"x").append(i).append("\":0");
        }
        Answer answer =
                organisations.create().keeper().post(ANIMALS, body.append('}').toString());
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.faults()).hasSize(Faults.MOST_LISTED);
        assertThat(answer.text("/detail")).startsWith("2001 things");
    }

    @Test
    void refusesWhatTheQueryShouldNotHave() {
        Client keeper = organisations.create().keeper();
        Answer answer = keeper.get(ANIMALS + "?limit=201&cursor=AAAA&consignment=1&colour=red");
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.faults()).containsExactlyInAnyOrder("limit", "cursor", "consignment", "“colour”");
        assertThat(keeper.get(ANIMALS + "?limit=1&limit=2").status()).isEqualTo(422);
        assertThat(keeper.get(ANIMALS + "?consignment=%00").status()).isEqualTo(422);
        assertThat(keeper.get("/api/v1/organisation?x=1").status()).isEqualTo(422);
    }

    @Test
    void answersWithAProblemWhereThereIsNothingOrNotThat() {
        Client keeper = organisations.create().keeper();
        assertThat(keeper.get("/api/v1/nothing").isProblem("not-found")).isTrue();
        assertThat(keeper.get("/nothing").isProblem("not-found")).isTrue();
        assertThat(keeper.get("/actuator/env").isProblem("not-found")).isTrue();
        assertThat(keeper.get(ANIMALS + "/1").isProblem("not-found")).isTrue();
        assertThat(keeper.get(ANIMALS + "/1-1-1-1-1").isProblem("not-found")).isTrue();
        Answer delete = keeper.send("DELETE", ANIMALS, BodyPublishers.noBody());
        assertThat(delete.isProblem("method-not-allowed")).isTrue();
        assertThat(delete.header("Allow")).get().asString().contains("GET").contains("POST");
        assertThat(keeper.get(ANIMALS, "Accept", "text/html").isProblem("not-acceptable"))
                .isTrue();
        assertThat(keeper.get(ANIMALS, "Accept", "application/yaml").isProblem("not-acceptable"))
                .isTrue();
    }

    @ParameterizedTest
    @CsvSource({
        "GET /api/v1/animals/%00 HTTP/1.1",
        "GET /api/v1/animals;x=%2e%2e/ HTTP/1.1",
        "GET /api/v1//animals HTTP/1.1",
        "GET /a b c HTTP/1.1",
        "GET /api/v1/a|b HTTP/1.1",
        "GET /%ff%zz HTTP/1.1",
        "N\u00D6 / HTTP/1.1",
    })
    void answersWithAProblemWhereTheRequestLineCannotBeRead(String line) throws IOException {
        Client nobody = organisations.nobody();
        try (Socket socket = new Socket("127.0.0.1", nobody.port())) {
            socket.setSoTimeout(10_000);
            socket.getOutputStream()
                    .write((line + "\r\nHost: x\r\nConnection: close\r\n\r\n").getBytes(StandardCharsets.ISO_8859_1));
            String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(answer)
                    .startsWith("HTTP/1.1 4")
                    .contains("application/problem+json")
                    .contains("\"type\":\"/pro");
        }
    }

    @Test
    void refusesAnIdempotencyKeyThatIsNone() {
        Client keeper = organisations.create().keeper();
        assertThat(keeper.post(ANIMALS, "{}", "Idempotency-Key", "").status()).isEqualTo(400);
        assertThat(keeper.post(ANIMALS, "{}", "Idempotency-Key", "a b").status())
                .isEqualTo(400);
        assertThat(keeper.post(ANIMALS, "{}", "Idempotency-Key", "x".repeat(201))
                        .status())
                .isEqualTo(400);
        assertThat(keeper.post(ANIMALS, "{}", "Idempotency-Key", "a", "Idempotency-Key", "b")
                        .status())
                .isEqualTo(400);
        assertNothingStored(keeper);
    }

    private void refuses(String body, int status, String type, String why) {
        Client keeper = organisations.create().keeper();
        Answer answer = keeper.post(ANIMALS, body);
        assertThat(answer.status()).isEqualTo(status);
        assertThat(answer.isProblem(type)).isTrue();
        assertThat(answer.text("/detail")).containsIgnoringCase(why);
        assertNothingStored(keeper);
    }

    private static void assertNothingStored(Client keeper) {
        assertThat(keeper.get(ANIMALS).json().get("items")).isEmpty();
    }
}
