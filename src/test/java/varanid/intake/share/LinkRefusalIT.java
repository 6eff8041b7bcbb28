package varanid.intake.share;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.SecretText;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** Links that open nothing, and what may not be told by them. */
@ServiceTest
@ExtendWith(OutputCaptureExtension.class)
class LinkRefusalIT {

    private static final String BROWSER =
            "text/html,application/xhtml+xml,application/xml;q=0.9,image/avif,image/webp,*/*;q=0.8";

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    @Autowired
    Links links;

    @Autowired
    LinkLocks locks;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    PlatformTransactionManager transactions;

    Shelter shelter;
    Client anybody;

    @BeforeEach
    void someAnimal() {
        shelter = new Shelter(organisations);
        anybody = shelter.anybody;
    }

    /** All tests come from one address: a clock that is put back gives it its whole allowance again. */
    @BeforeEach
    @AfterEach
    void forgetWrongOnes() {
        clock.later(Duration.ofDays(1000), () -> organisations.nobody().get("/summary/x"));
    }

    /**
     * Addresses that open nothing, by the reason. So late that a link of one day has expired.
     *
     * @param path what every address begins with
     */
    private Map<String, String> dead(String kind, String path) {
        Map<String, String> dead = new LinkedHashMap<>();
        String prefix = kind.equals("summary") ? "vs1" : "vr1";
        dead.put(
                "never existed",
                path + SecretText.random(prefix, shelter.organisation.id()).text());
        dead.put(
                "of no organisation",
                path + SecretText.random(prefix, UUID.randomUUID()).text());
        dead.put("no secret at all", path + "x");
        dead.put("looks like a page", path + "index.html");
        dead.put("looks like a program", path + "setup.bat");
        dead.put("hostile", path + "%27%20OR%201=1%20--%3Cscript%3E");
        dead.put("long", path + "x".repeat(4000));
        dead.put("a token", path + shelter.keeper.token());
        dead.put("expired", path + shelter.give(shelter.keeper, kind, 1).secret());
        Shelter.Given revoked = shelter.give(kind);
        shelter.revoke(revoked);
        dead.put("revoked", path + revoked.secret());
        dead.put(
                "of the other kind",
                path
                        + shelter.give(kind.equals("summary") ? "reply" : "summary")
                                .secret());
        Client gone = shelter.organisation.keeper();
        dead.put("of somebody who left", path + shelter.give(gone, kind, 30).secret());
        shelter.setActive(gone, false);
        return dead;
    }

    @Test
    void whateverTheReasonItIsTheSameToTheByte() {
        int hours = 0;
        for (String kind : List.of("summary", "reply")) {
            String path = "/" + kind + "/";
            Map<String, String> dead = dead(kind, path);
            Shelter.Given alive = shelter.give(kind);
            for (String accept :
                    List.of("Accept: " + BROWSER, "Accept: application/json", "Accept: */*", "X-None: x")) {
                for (String method : kind.equals("reply") ? List.of("GET", "HEAD", "POST") : List.of("GET", "HEAD")) {
                    // Each time later than the allowance of wrong ones needs to be full again.
                    clock.later(Duration.ofDays(2).plusHours(++hours), () -> {
                        Map<String, String> said = new LinkedHashMap<>();
                        dead.forEach((why, address) -> said.put(why, ask(method, address, accept)));
                        String first = said.values().iterator().next();
                        assertThat(first).startsWith("HTTP/1.1 404 ");
                        assertThat(said)
                                .allSatisfy((why, answer) -> assertThat(answer)
                                        .as("%s %s %s", method, why, accept)
                                        .isEqualTo(first));
                        assertThat(ask(method, alive.path(), accept))
                                .as("%s %s", method, accept)
                                .matches("(?s)HTTP/1.1 (200|422) .*");
                    });
                }
            }
        }
    }

    /** All of the answer but its date. */
    private String ask(String method, String address, String accept) {
        String answer = method.equals("POST")
                ? shelter.raw(
                        "POST " + address + " HTTP/1.1",
                        "Host: x",
                        accept,
                        "Content-Type: application/x-www-form-urlencoded",
                        "Content-Length: 7",
                        "Connection: close\r\n\r\nwords=w")
                : shelter.raw(method + " " + address + " HTTP/1.1", "Host: x", accept);
        return answer.replaceFirst("\r\nDate: [^\r]*", "");
    }

    @Test
    void aBrowserIsShownAPageThatHelps() {
        Answer page = anybody.get("/summary/x", "Accept", BROWSER);
        assertThat(page.status()).isEqualTo(404);
        assertThat(page.header("Content-Type")).contains("text/html;charset=UTF-8");
        assertThat(page.body())
                .contains(
                        "lang=\"en\"",
                        "href=\"/paper/reply.css\"",
                        "<h1>This link does not open anything</h1>",
                        "Ask whoever sent it to you for a new one.",
                        "Call a vet now.")
                .doesNotContain("<script", "src=", "href=\"http", " style=", "was kept");
        assertThat(page.header("Content-Security-Policy").orElseThrow())
                .contains("default-src 'none'", "frame-ancestors 'none'")
                .doesNotContain("unsafe");
        assertThat(page.headers().containsHeader("Set-Cookie")).isFalse();
        Answer sent = anybody.send(
                "POST",
                "/reply/x",
                BodyPublishers.ofString("words=w"),
                "Content-Type",
                "application/x-www-form-urlencoded",
                "Accept",
                BROWSER);
        assertThat(sent.status()).isEqualTo(404);
        assertThat(sent.body()).contains("Nothing of what you sent was kept.");
    }

    @Test
    void aProgramIsToldAProblem() {
        for (String accept : List.of(
                "application/json",
                "*/*",
                "application/problem+json",
                "application/json, text/html;q=0.5",
                "application/fhir+json",
                "image/png, */*",
                "no type at all")) {
            Answer problem = anybody.get("/reply/x", "Accept", accept);
            assertThat(problem.isProblem("not-found")).as(accept).isTrue();
            assertThat(problem.text("/instance")).isEqualTo("/reply/*");
        }
    }

    @Test
    void acceptingMoreThanAnybodyReadsBreaksNothing() {
        String many = String.join(",", Collections.nCopies(60, "text/plain"));
        for (String address : List.of(
                "/reply/x",
                shelter.give("reply").path(),
                shelter.give("summary").path())) {
            assertThat(anybody.get(address, "Accept", many).status())
                    .as(address)
                    .isIn(200, 404, 406);
        }
    }

    @Test
    void nothingIsKeptByCachesPassedOnOrIndexed() {
        Shelter.Given link = shelter.give("summary");
        Shelter.Given reply = shelter.give("reply");
        List<String> addresses = new ArrayList<>(List.of("/summary/x", "/reply/x", reply.path()));
        for (String form : List.of("html", "pdf", "json", "fhir")) {
            addresses.add(link.path() + "?form=" + form);
        }
        List<Answer> answers = new ArrayList<>();
        for (String address : addresses) {
            answers.add(anybody.get(address));
            answers.add(anybody.get(address, "Accept", BROWSER));
        }
        clock.later(Duration.ofDays(2), () -> answers.add(askUntilRefused("/summary/x", BROWSER)));
        clock.later(Duration.ofDays(3), () -> answers.add(askUntilRefused(link.path() + "?form=json", "*/*")));
        assertThat(answers).extracting(Answer::status).contains(200, 404, 429);
        assertThat(answers).allSatisfy(answer -> {
            assertThat(answer.headers().get("Cache-Control")).isEqualTo(List.of("no-store"));
            assertThat(answer.headers().get("Referrer-Policy")).isEqualTo(List.of("no-referrer"));
            assertThat(answer.header("X-Robots-Tag").orElseThrow()).contains("noindex");
            assertThat(answer.headers().get("X-Content-Type-Options")).isEqualTo(List.of("nosniff"));
        });
    }

    @Test
    void whatIsAskedForTooOftenIsToldToWaitAndShutsOutNothingElse() {
        Shelter.Given link = shelter.give("summary");
        Shelter.Given other = shelter.give("summary");
        clock.later(Duration.ofDays(2), () -> {
            int opened = 0;
            Answer answer = anybody.get(link.path() + "?form=json");
            while (answer.status() == 200 && opened < 100) {
                opened++;
                answer = anybody.get(link.path() + "?form=json");
            }
            assertThat(opened).isBetween(40, 99);
            assertThat(answer.isProblem("too-many-requests")).isTrue();
            assertThat(Integer.parseInt(answer.header("Retry-After").orElseThrow()))
                    .isBetween(1, 20);
            assertThat(shelter.link(link).json().get("openings").intValue())
                    .as("what is refused is no opening")
                    .isEqualTo(opened);
            assertThat(anybody.get(other.path() + "?form=json").status()).isEqualTo(200);
            assertThat(anybody.get("/summary/x").status()).isEqualTo(404);
        });
        clock.later(
                Duration.ofDays(2).plusMinutes(1),
                () -> assertThat(anybody.get(link.path() + "?form=json").status())
                        .isEqualTo(200));
    }

    @Test
    void wrongOnesAreAnsweredOnlySoOftenToOneAddressAndShutNobodyOut() {
        Shelter.Given link = shelter.give("summary");
        clock.later(Duration.ofDays(2), () -> {
            Answer refused = askUntilRefused("/summary/x", "*/*");
            assertThat(refused.isProblem("too-many-requests")).isTrue();
            assertThat(Integer.parseInt(refused.header("Retry-After").orElseThrow()))
                    .isBetween(1, 10);
            assertThat(askUntilRefused("/summary/x", BROWSER).body()).contains("Call a vet now.");
            assertThat(anybody.get(link.path()).status()).isEqualTo(200);
            assertThat(refusal(() -> links.open(LinkKind.SUMMARY, "x", "html", "192.0.2.7")))
                    .as("from another address")
                    .isEqualTo(404);
        });
    }

    private static int refusal(Runnable open) {
        try {
            open.run();
            return 200;
        } catch (ProblemException e) {
            return e.type().status();
        }
    }

    private Answer askUntilRefused(String address, String accept) {
        Answer answer = anybody.get(address, "Accept", accept);
        for (int i = 0; i < 60 && answer.status() != 429; i++) {
            answer = anybody.get(address, "Accept", accept);
        }
        assertThat(answer.status()).isEqualTo(429);
        return answer;
    }

    @Test
    void opensNothingOnceItIsRevoked() {
        Shelter.Given link = shelter.give("summary");
        Shelter.Given other = shelter.give("summary");
        assertThat(anybody.get(link.path()).status()).isEqualTo(200);
        Answer revoked = shelter.revoke(link);
        assertThat(revoked.text("/state")).isEqualTo("revoked");
        for (String form : List.of("", "?form=html", "?form=pdf", "?form=json", "?form=fhir")) {
            assertThat(anybody.get(link.path() + form).status()).as(form).isEqualTo(404);
        }
        assertThat(anybody.get(other.path()).status()).isEqualTo(200);
        Answer again = shelter.revoke(link);
        assertThat(again.json()).isEqualTo(revoked.json());
        assertThat(shelter.link(link).json().get("openings").intValue()).isEqualTo(1);
    }

    @Test
    void theStatementForWhoRunsTheServiceRevokesEveryLinkOfAnOrganisation() throws IOException {
        Shelter.Given summary = shelter.give("summary");
        Shelter.Given reply = shelter.give("reply");
        shelter.revoke(reply);
        Shelter neighbour = new Shelter(organisations);
        Shelter.Given ofNeighbour = neighbour.give("summary");
        Matcher statement = Pattern.compile("(?s)```sql\n(INSERT INTO share_link_revocation.*?;)\n```")
                .matcher(Files.readString(Path.of("docs", "operations.md")));
        assertThat(statement.find()).isTrue();
        int revoked = jdbc.sql(statement
                        .group(1)
                        .replace("ORGANISATION", shelter.organisation.id().toString())
                        .replace("PERSON", shelter.keeper.personId().toString()))
                .update();
        assertThat(revoked).isEqualTo(1);
        assertThat(anybody.get(summary.path()).status()).isEqualTo(404);
        assertThat(shelter.link(summary).text("/state")).isEqualTo("revoked");
        assertThat(anybody.get(ofNeighbour.path()).status()).isEqualTo(200);
    }

    @Test
    void opensNothingWhileWhoGaveItOutIsNoActivePerson() {
        Client gone = shelter.organisation.keeper();
        Shelter.Given summary = shelter.give(gone, "summary", 7);
        Shelter.Given reply = shelter.give(gone, "reply", 7);
        assertThat(anybody.get(summary.path()).status()).isEqualTo(200);
        shelter.setActive(gone, false);
        assertThat(anybody.get(summary.path()).status()).isEqualTo(404);
        assertThat(anybody.get(reply.path()).status()).isEqualTo(404);
        assertThat(anybody.post(reply.path(), "{}").status()).isEqualTo(404);
        String animal = "/api/v1/animals/" + shelter.animal;
        assertThat(shelter.keeper
                        .get(animal + "/summary", "Summary-Link", summary.secret())
                        .status())
                .isEqualTo(400);
        assertThat(shelter.link(summary).text("/state")).isEqualTo("issuer-left");
        shelter.setActive(gone, true);
        assertThat(anybody.get(summary.path()).status()).isEqualTo(200);
        assertThat(shelter.link(summary).text("/state")).isEqualTo("open");
    }

    @Test
    void anOpeningThatARevocationOvertakesShowsNothing() throws Exception {
        Shelter.Given link = shelter.give("summary");
        ExecutorService opener = Executors.newSingleThreadExecutor();
        try {
            Future<Answer> opening = new TransactionTemplate(transactions).execute(status -> {
                locks.holdToRevoke(UUID.fromString(link.id()));
                Future<Answer> asked = opener.submit(() -> anybody.get(link.path()));
                waitForALockThatIsWaitedFor(asked);
                jdbc.sql("INSERT INTO share_link_revocation (organisation_id, link_id, recorded_by, recorded_at)"
                                + " VALUES (?, ?, ?, now())")
                        .params(shelter.organisation.id(), UUID.fromString(link.id()), shelter.keeper.personId())
                        .update();
                return asked;
            });
            assertThat(opening.get().status()).isEqualTo(404);
            assertThat(shelter.link(link).json().get("openings").intValue()).isZero();
        } finally {
            opener.shutdownNow();
        }
    }

    @Test
    void aRevocationWaitsForAnOpeningThatHasBegunAndCountsIt() throws Exception {
        Shelter.Given link = shelter.give("summary");
        ExecutorService owner = Executors.newSingleThreadExecutor();
        try {
            Future<Answer> revocation = new TransactionTemplate(transactions).execute(status -> {
                locks.holdToOpen(UUID.fromString(link.id()));
                Future<Answer> asked = owner.submit(() -> shelter.revoke(link));
                waitForALockThatIsWaitedFor(asked);
                jdbc.sql("INSERT INTO share_link_opening (organisation_id, id, link_id, opened_at, what, place)"
                                + " VALUES (?, gen_random_uuid(), ?, now(), 'html', '00000000')")
                        .params(shelter.organisation.id(), UUID.fromString(link.id()))
                        .update();
                return asked;
            });
            assertThat(revocation.get().json().get("openings").intValue()).isEqualTo(1);
        } finally {
            owner.shutdownNow();
        }
    }

    /** Until somebody waits for an advisory lock; fails where what is asked ends without having waited. */
    private void waitForALockThatIsWaitedFor(Future<?> asked) {
        while (waiting().isEmpty()) {
            assertThat(asked.isDone()).as("it ended without waiting").isFalse();
            Thread.onSpinWait();
        }
    }

    /** The processes of the database that wait for an advisory lock. */
    private List<Integer> waiting() {
        return jdbc.sql("SELECT pid FROM pg_locks WHERE locktype = 'advisory' AND NOT granted"
                        + " AND database = (SELECT oid FROM pg_database WHERE datname = current_database())")
                .query(Integer.class)
                .list();
    }

    @Test
    void opensNothingAfterItsRevocationWasAnsweredHoweverManyAskAtTheSameTime() throws Exception {
        ExecutorService readers = Executors.newFixedThreadPool(3);
        try {
            for (int round = 0; round < 8; round++) {
                Shelter.Given link = shelter.give("summary");
                CountDownLatch begun = new CountDownLatch(3);
                CompletableFuture<Answer> revoked = new CompletableFuture<>();
                List<Future<Integer>> opened = new ArrayList<>();
                for (int reader = 0; reader < 3; reader++) {
                    opened.add(readers.submit(() -> openUntilRefused(link, begun, revoked)));
                }
                assertThat(begun.await(1, TimeUnit.MINUTES)).isTrue();
                revoked.complete(shelter.revoke(link));
                int all = 0;
                for (Future<Integer> each : opened) {
                    all += each.get();
                }
                assertThat(revoked.get().json().get("openings").intValue())
                        .as("openings that the revocation knew of")
                        .isEqualTo(all);
                assertThat(shelter.link(link).json()).isEqualTo(revoked.get().json());
            }
        } finally {
            readers.shutdownNow();
        }
    }

    /** How often it opened. */
    private int openUntilRefused(Shelter.Given link, CountDownLatch begun, CompletableFuture<Answer> revoked) {
        int opened = 0;
        while (true) {
            boolean afterwards = revoked.isDone();
            int status = anybody.get(link.path() + "?form=json").status();
            if (status == 200) {
                assertThat(afterwards)
                        .as("opened after the revocation was answered")
                        .isFalse();
                opened++;
            } else if (afterwards) {
                return opened;
            }
            begun.countDown();
        }
    }

    @Test
    void theListOfLinksAsksTheDatabaseAsOftenForManyAsForOne() {
        Shelter.Given link = shelter.give("summary");
        long one = statementsOf(shelter.links());
        for (int i = 0; i < 7; i++) {
            anybody.get(shelter.give("summary").path() + "?form=json");
        }
        shelter.revoke(link);
        assertThat(one).isPositive();
        assertThat(statementsOf(shelter.links())).isEqualTo(one);
    }

    /** How many statements of plain SQL about links it takes; what Hibernate asks is one query for a page. */
    private long statementsOf(String list) {
        Logger logger = (Logger) LoggerFactory.getLogger(JdbcTemplate.class);
        ListAppender<ILoggingEvent> said = new ListAppender<>();
        said.start();
        logger.addAppender(said);
        logger.setAdditive(false);
        logger.setLevel(Level.DEBUG);
        try {
            assertThat(shelter.keeper.get(list).status()).isEqualTo(200);
        } finally {
            logger.setLevel(null);
            logger.setAdditive(true);
            logger.detachAppender(said);
        }
        return said.list.stream()
                .map(ILoggingEvent::getFormattedMessage)
                .filter(message -> message.startsWith("Executing prepared SQL statement"))
                .filter(message -> message.contains("share_link"))
                .count();
    }

    @Test
    void theLogNamesNoSecretEvenWhereSomethingFails(CapturedOutput output) throws Exception {
        Shelter.Given link = shelter.give("summary");
        assertThat(anybody.get(link.path()).status()).isEqualTo(200);
        assertThat(anybody.get("/reply/" + link.secret()).status()).isEqualTo(404);
        ExecutorService opener = Executors.newSingleThreadExecutor();
        try {
            Future<Answer> opening = new TransactionTemplate(transactions).execute(status -> {
                locks.holdToRevoke(UUID.fromString(link.id()));
                Future<Answer> asked = opener.submit(() -> anybody.get(link.path()));
                waitForALockThatIsWaitedFor(asked);
                waiting()
                        .forEach(process -> jdbc.sql("SELECT pg_terminate_backend(?)")
                                .param(process)
                                .query(Boolean.class)
                                .single());
                return asked;
            });
            assertThat(opening.get().status()).isEqualTo(503);
            assertThat(opening.get().body()).contains("/summary/*").doesNotContain(link.secret());
        } finally {
            opener.shutdownNow();
        }
        shelter.revoke(link);
        assertThat(anybody.get(link.path()).status()).isEqualTo(404);
        String random = link.secret().substring(link.secret().lastIndexOf('.') + 1);
        assertThat(output.getAll())
                .contains("GET /summary/*: the database failed")
                .doesNotContain(random);
    }
}
