package varanid.intake.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.core.env.Environment;
import org.springframework.jdbc.core.simple.JdbcClient;
import varanid.intake.VaranidIntake;
import varanid.intake.platform.web.Role;
import varanid.intake.service.Answer;
import varanid.intake.service.Browser;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;
import varanid.intake.service.ServiceTest;

/** Signing in and out with a browser, and what a session opens. */
@ServiceTest
class SignInIT {

    private static final String ANIMALS = "/api/v1/animals";
    private static final String PASSWORD = "kelp under the boathouse";

    @Autowired
    Organisations organisations;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MovableClock clock;

    @Autowired
    Environment environment;

    private record Signed(Organisation organisation, Client client, Browser browser) {}

    @Test
    void aLinkSignsInByAButtonAndOnlyOnce() {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        String link = linkFor(rescue, keeper);
        Browser browser = new Browser(keeper.port());

        assertThat(browser.get(link).status()).isEqualTo(200);
        assertThat(browser.get(link).status()).as("looking burns nothing").isEqualTo(200);
        Answer signedIn = use(browser, link);
        assertThat(signedIn.status()).isEqualTo(303);
        assertThat(signedIn.header("Location")).contains("/");
        assertThat(browser.get("/").body()).contains("A person");

        Browser second = new Browser(keeper.port());
        assertThat(second.get(link).status()).isEqualTo(404);
        assertThat(second.submit("/sign-in", "/sign-in/link", Map.of("secret", secretOf(link)))
                        .status())
                .isEqualTo(404);
        assertThat(second.get("/").status()).isEqualTo(303);
    }

    @Test
    void ofManyWhoUseALinkAtTheSameMomentOneGetsIn() throws Exception {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        String link = linkFor(rescue, keeper);
        List<Callable<Integer>> tries = Stream.generate(() -> new Browser(keeper.port()))
                .limit(8)
                .<Callable<Integer>>map(browser ->
                        () -> browser.submit("/sign-in", "/sign-in/link", Map.of("secret", secretOf(link)))
                                .status())
                .toList();
        ExecutorService threads = Executors.newFixedThreadPool(tries.size());
        try {
            int in = 0;
            for (Future<Integer> status : threads.invokeAll(tries)) {
                in += status.get() == 303 ? 1 : 0;
            }
            assertThat(in).isEqualTo(1);
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void aLinkEndsByItself() {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        String link = linkFor(rescue, keeper);
        Browser browser = new Browser(keeper.port());
        String proof = browser.proof("/sign-in");
        clock.later(Duration.ofHours(25), () -> {
            assertThat(browser.get(link).status()).isEqualTo(404);
            assertThat(browser.post("/sign-in/link", Map.of("secret", secretOf(link), "_csrf", proof))
                            .status())
                    .isEqualTo(404);
        });
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "x", "vs1.AAAAAAAAAAAAAAAAAAAAAA.AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA"})
    void aWrongSecretSignsNobodyIn(String secret) {
        Browser browser = new Browser(organisations.nobody().port());
        assertThat(browser.submit("/sign-in", "/sign-in/link", Map.of("secret", secret))
                        .status())
                .isIn(404, 429);
        assertThat(browser.get("/").status()).isEqualTo(303);
    }

    @Test
    void onlyAnAdministratorMakesLinksAndOnlyForTheirOwn() {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        Client stranger = organisations.create().administrator();
        String path = "/api/v1/people/" + keeper.personId() + "/sign-in-links";
        assertThat(keeper.post(path, "{}").isProblem("forbidden")).isTrue();
        assertThat(stranger.post(path, "{}").isProblem("not-found")).isTrue();
        Client administrator = rescue.administrator();
        assertThat(administrator
                        .post(path, "{\"expiresAt\":\"" + Instant.now().plus(Duration.ofDays(8)) + "\"}")
                        .faults())
                .containsExactly("#/expiresAt");
        Answer made = administrator.post(path, "{}");
        assertThat(made.status()).isEqualTo(201);
        String stored = jdbc.sql("SELECT l::text FROM sign_in_link l WHERE person_id = ?")
                .param(keeper.personId())
                .query(String.class)
                .single();
        assertThat(stored).doesNotContain(secretOf(pathOf(made)));
    }

    @Test
    void aPersonSetsAPasswordAndSignsInWithIt() {
        Signed keeper = signIn(Role.KEEPER);
        String email = email();
        Answer kept = keeper.browser().submit("/account", "/account", Map.of("email", email, "password", PASSWORD));
        assertThat(kept.status()).isEqualTo(303);

        Browser other = new Browser(keeper.client().port());
        assertThat(other.submit("/sign-in", "/sign-in", Map.of("email", email, "password", PASSWORD + "."))
                        .status())
                .isEqualTo(422);
        Answer signedIn = other.submit(
                "/sign-in", "/sign-in", Map.of("email", " " + email.toUpperCase(Locale.ROOT), "password", PASSWORD));
        assertThat(signedIn.status()).isEqualTo(303);
        assertThat(other.get("/").status()).isEqualTo(200);
        assertThat(jdbc.sql("SELECT password_hash FROM sign_in_password WHERE email = ?")
                        .param(email)
                        .query(String.class)
                        .single())
                .startsWith("{bcrypt}$2a$12$");
    }

    @Test
    void everyByteOfALongPasswordCounts() {
        Signed keeper = signIn(Role.KEEPER);
        String email = email();
        String password = "ö".repeat(20) + " seven herons stand in the shallow water and wait for the tide to turn";
        keeper.browser().submit("/account", "/account", Map.of("email", email, "password", password));
        Browser other = new Browser(keeper.client().port());
        assertThat(other.submit("/sign-in", "/sign-in", Map.of("email", email, "password", password + "s"))
                        .status())
                .isEqualTo(422);
        assertThat(other.submit("/sign-in", "/sign-in", Map.of("email", email, "password", password))
                        .status())
                .isEqualTo(303);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "short enough",
                "aaaaaaaaaaaaaaaaaaaa",
                "passwordPassword2026",
                "Monitor-Lizard-12345",
                "kimkimkimkimkimkim"
            })
    void refusesAPasswordThatIsShortOrTriedFirst(String password) {
        Signed keeper = signIn(Role.KEEPER);
        Answer answer = keeper.browser()
                .submit("/account", "/account", Map.of("email", "kim@reed-bank.example", "password", password));
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.body()).contains("href=\"#password\"").doesNotContain(password);
        assertThat(keeper.browser().get("/account").body()).contains("Set a password");
    }

    @Test
    void whoSignedInByPasswordNeedsItToChangeIt() {
        Signed keeper = signIn(Role.KEEPER);
        String email = email();
        keeper.browser().submit("/account", "/account", Map.of("email", email, "password", PASSWORD));
        Browser other = new Browser(keeper.client().port());
        other.submit("/sign-in", "/sign-in", Map.of("email", email, "password", PASSWORD));
        Map<String, String> change = Map.of("email", email, "password", "another lantern by the slipway");
        assertThat(other.submit("/account", "/account", change).status()).isEqualTo(422);
        Answer changed = other.submit(
                "/account",
                "/account",
                Map.of("email", email, "password", "another lantern by the slipway", "current", PASSWORD));
        assertThat(changed.status()).isEqualTo(303);
        assertThat(keeper.browser().get("/").status())
                .as("signed out everywhere else")
                .isEqualTo(303);
        assertThat(other.get("/").status()).isEqualTo(200);
    }

    @Test
    void anEmailIsOnlyOnePersons() {
        String email = email();
        assertThat(signIn(Role.KEEPER)
                        .browser()
                        .submit("/account", "/account", Map.of("email", email, "password", PASSWORD))
                        .status())
                .isEqualTo(303);
        Answer second = signIn(Role.KEEPER)
                .browser()
                .submit("/account", "/account", Map.of("email", email, "password", PASSWORD));
        assertThat(second.status()).isEqualTo(422);
        assertThat(second.body()).contains("This e-mail cannot be used here.");
    }

    @Test
    void tooManyTriesAreSlowedDownWhetherTheEmailIsKnownOrNot() {
        Signed keeper = signIn(Role.KEEPER);
        String known = email();
        keeper.browser().submit("/account", "/account", Map.of("email", known, "password", PASSWORD));
        for (String email : List.of(known, email())) {
            Browser guesser = new Browser(keeper.client().port());
            String proof = guesser.proof("/sign-in");
            Map<String, String> guess = Map.of("email", email, "password", "not the right one", "_csrf", proof);
            // Hours apart, so that other tests from the same address do not count here.
            clock.later(Duration.ofHours(email.equals(known) ? 50 : 100), () -> {
                for (int i = 0; i < 8; i++) {
                    assertThat(guesser.post("/sign-in", guess).status()).isEqualTo(422);
                }
                Answer late = guesser.post("/sign-in", guess);
                assertThat(late.status()).isEqualTo(429);
                assertThat(late.header("Retry-After")).isPresent();
                assertThat(late.body()).contains("Wait 1 minute,");
            });
        }
    }

    @Test
    void afterAHundredWrongPasswordsTheRightOneIsNotRightAnyMore() {
        Signed keeper = signIn(Role.KEEPER);
        String email = email();
        Map<String, String> account = Map.of("email", email, "password", PASSWORD);
        keeper.browser().submit("/account", "/account", account);
        jdbc.sql("UPDATE sign_in_password SET failures = 100 WHERE email = ?")
                .param(email)
                .update();
        Browser other = new Browser(keeper.client().port());
        assertThat(other.submit("/sign-in", "/sign-in", account).status()).isEqualTo(422);
        keeper.browser().submit("/account", "/account", account);
        assertThat(other.submit("/sign-in", "/sign-in", account).status()).isEqualTo(303);
    }

    @Test
    void whoIsNotSignedInIsSentToSignInAndBackAgain() {
        Browser browser = new Browser(organisations.nobody().port());
        Answer sent = browser.get("/account?x=1&y=2");
        assertThat(sent.status()).isEqualTo(303);
        assertThat(sent.header("Location")).contains("/sign-in?next=%2Faccount%3Fx%3D1%26y%3D2");
        assertThat(browser.get("/sign-in?next=%2Faccount%3Fx%3D1%26y%3D2").body())
                .contains("name=\"next\" value=\"/account?x=1&amp;y=2\"");
        assertThat(organisations.nobody().get("/account").isProblem("unauthenticated"))
                .as("a program")
                .isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "https://elsewhere.example/",
                "//elsewhere.example/",
                "/\\elsewhere.example/",
                "/\t/elsewhere.example/",
                "\\\\elsewhere.example",
                "javascript:alert(1)",
                "///elsewhere.example",
                "/%0d%0aSet-Cookie:x",
                "/ /elsewhere.example",
                "elsewhere",
                "/sign-in?next=/x"
            })
    void signingInLeadsNowhereElse(String next) {
        Signed keeper = signIn(Role.KEEPER);
        String email = email();
        keeper.browser().submit("/account", "/account", Map.of("email", email, "password", PASSWORD));
        Answer signedIn = new Browser(keeper.client().port())
                .submit("/sign-in", "/sign-in", Map.of("email", email, "password", PASSWORD, "next", next));
        assertThat(signedIn.status()).isEqualTo(303);
        assertThat(signedIn.header("Location")).get().isIn("/", "/%0d%0aSet-Cookie:x");
        assertThat(signedIn.headers().getOrEmpty("Set-Cookie")).noneMatch(cookie -> cookie.startsWith("x"));
    }

    @Test
    void refusesAFormThatDoesNotShowThatItIsOurs() {
        Signed keeper = signIn(Role.KEEPER);
        Answer refused = keeper.browser().post("/sign-out", Map.of());
        assertThat(refused.status()).isEqualTo(403);
        assertThat(refused.body()).contains("This form is out of date");
        assertThat(keeper.browser().post("/sign-out", Map.of("_csrf", "x")).status())
                .isEqualTo(403);
        assertThat(keeper.browser().get("/").status()).isEqualTo(200);
        assertThat(new Browser(keeper.client().port())
                        .post("/sign-in", Map.of("email", "a@b", "password", "x"))
                        .status())
                .as("nobody is signed in as somebody else by another site either")
                .isEqualTo(403);
    }

    @Test
    void theApiTakesASessionAndForAChangeTheProofToo() {
        Signed keeper = signIn(Role.KEEPER);
        Browser browser = keeper.browser();
        assertThat(browser.get("/api/v1/organisation").status()).isEqualTo(200);
        Answer without = post(browser, ANIMALS);
        assertThat(without.isProblem("not-from-our-page")).as(without.body()).isTrue();
        Answer with = post(browser, ANIMALS, "X-CSRF-TOKEN", browser.proof("/"));
        assertThat(with.status()).as(with.body()).isEqualTo(201);
        assertThat(keeper.client().get(ANIMALS).body()).contains(with.id());
    }

    @Test
    void aTokenNeedsNoProofAndCountsAloneWhereThereIsASessionToo() {
        Signed keeper = signIn(Role.KEEPER);
        Client other = organisations.create().keeper();
        Answer made = post(keeper.browser(), ANIMALS, "Authorization", "Bearer " + other.token());
        assertThat(made.status()).isEqualTo(201);
        assertThat(other.get(ANIMALS).body()).contains(made.id());
        assertThat(keeper.client().get(ANIMALS).body()).doesNotContain(made.id());
        assertThat(post(keeper.browser(), ANIMALS, "Authorization", "Bearer x").status())
                .isEqualTo(401);
    }

    @Test
    void aReplyIsRepeatedToTheSameSession() {
        Signed keeper = signIn(Role.KEEPER);
        String proof = keeper.browser().proof("/");
        String key = UUID.randomUUID().toString();
        Answer first = post(keeper.browser(), ANIMALS, "X-CSRF-TOKEN", proof, "Idempotency-Key", key);
        Answer again = post(keeper.browser(), ANIMALS, "X-CSRF-TOKEN", proof, "Idempotency-Key", key);
        assertThat(first.status()).isEqualTo(201);
        assertThat(again.body()).isEqualTo(first.body());
    }

    @Test
    void whoeverIsMadeInactiveIsOutAtOnceAndARoleChangesAtOnce() {
        Signed keeper = signIn(Role.KEEPER);
        Client administrator = keeper.organisation().administrator();
        String path = "/api/v1/people/" + keeper.client().personId();
        administrator.put(path, "{\"name\":\"Kim\",\"roles\":[\"clinician\"],\"active\":true}", "If-Match", "*");
        assertThat(keeper.browser().get("/account").body())
                .contains("Kim", "Clinician:")
                .doesNotContain("Keeper:");
        administrator.put(path, "{\"name\":\"Kim\",\"roles\":[\"clinician\"],\"active\":false}", "If-Match", "*");
        assertThat(keeper.browser().get("/").status()).isEqualTo(303);
        assertThat(keeper.browser().get("/api/v1/organisation").status()).isEqualTo(401);
    }

    @Test
    void signingOutEndsTheSessionAndNotOnlyTheCookie() {
        Signed keeper = signIn(Role.KEEPER);
        Browser copy = keeper.browser().at(keeper.client().port());
        assertThat(copy.get("/").status()).isEqualTo(200);
        assertThat(keeper.browser().submit("/", "/sign-out", Map.of()).status()).isEqualTo(303);
        assertThat(keeper.browser().get("/").status()).isEqualTo(303);
        assertThat(copy.get("/").status()).isEqualTo(303);
    }

    @Test
    void aSessionEndsAfterSevenDaysHoweverBusy() {
        Signed keeper = signIn(Role.KEEPER);
        clock.later(
                Duration.ofDays(7).minusMinutes(1),
                () -> assertThat(keeper.browser().get("/").status()).isEqualTo(200));
        clock.later(
                Duration.ofDays(7).plusMinutes(1),
                () -> assertThat(keeper.browser().get("/").status()).isEqualTo(303));
    }

    @Test
    void severalRequestsAtTheSameMomentLeaveTheSessionAsItIs() throws Exception {
        Signed keeper = signIn(Role.KEEPER);
        Map<String, String> before = keeper.browser().cookies();
        ExecutorService threads = Executors.newFixedThreadPool(6);
        try {
            List<Callable<Integer>> requests = Stream.generate(() ->
                            (Callable<Integer>) () -> keeper.browser().get("/").status())
                    .limit(12)
                    .toList();
            for (Future<Integer> status : threads.invokeAll(requests)) {
                assertThat(status.get()).isEqualTo(200);
            }
        } finally {
            threads.shutdownNow();
        }
        assertThat(keeper.browser().cookies()).containsAllEntriesOf(before);
    }

    @Test
    void signingInAgainMakesANewSession() {
        Signed keeper = signIn(Role.KEEPER);
        Map<String, String> before = keeper.browser().cookies();
        Client other = keeper.organisation().keeper();
        use(keeper.browser(), linkFor(keeper.organisation(), other));
        Map<String, String> after = keeper.browser().cookies();
        assertThat(after.get("varanid-session")).isNotNull().isNotEqualTo(before.get("varanid-session"));
        assertThat(after.get("varanid-key")).isNotNull().isNotEqualTo(before.get("varanid-key"));
    }

    @Test
    void whatTheDatabaseHoldsOpensNoSession() {
        Signed keeper = signIn(Role.KEEPER);
        List<String> stored = jdbc.sql("""
                        SELECT convert_from(a.attribute_bytes, 'UTF8') FROM spring_session_attributes a
                        JOIN spring_session s ON s.primary_id = a.session_primary_id WHERE s.principal_name = ?""")
                .param(keeper.client().personId().toString())
                .query(String.class)
                .list();
        String key = keeper.browser().cookies().get("varanid-key");
        assertThat(stored)
                .hasSize(2)
                .allSatisfy(text -> assertThat(text).doesNotContain(key).hasSizeLessThan(300));
        Answer withSessionOnly = new Browser(keeper.client().port())
                .send(
                        "GET",
                        "/",
                        BodyPublishers.noBody(),
                        "Accept",
                        "text/html",
                        "Cookie",
                        "varanid-session=" + keeper.browser().cookies().get("varanid-session") + "; varanid-key=x");
        assertThat(withSessionOnly.status()).isEqualTo(303);
    }

    @Test
    void anotherServiceOnTheSameDatabaseKnowsTheSession(@TempDir Path home) {
        Signed keeper = signIn(Role.KEEPER);
        try (ConfigurableApplicationContext second = second(home, "")) {
            int port = second.getEnvironment().getRequiredProperty("local.server.port", Integer.class);
            Browser there = keeper.browser().at(port);
            assertThat(there.get("/").body()).contains("A person");
            there.submit("/", "/sign-out", Map.of());
        }
        assertThat(keeper.browser().get("/").status()).isEqualTo(303);
    }

    @Test
    void whereTheAddressIsHttpsNoCookieGoesAnywhereElse(@TempDir Path home) {
        try (ConfigurableApplicationContext second = second(home, "https://intake.example.org")) {
            int port = second.getEnvironment().getRequiredProperty("local.server.port", Integer.class);
            Answer page = new Browser(port).get("/sign-in");
            assertThat(page.headers().getOrEmpty("Set-Cookie"))
                    .isNotEmpty()
                    .allSatisfy(cookie -> assertThat(cookie)
                            .startsWith("__Host-varanid-")
                            .contains("; Secure", "; HttpOnly", "; SameSite=Lax", "; Path=/")
                            .doesNotContain("Domain"));
        }
    }

    @Test
    void noCookieCanBeReadByAScriptOrComesFromAnotherSite() {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        Browser browser = new Browser(keeper.port());
        String link = linkFor(rescue, keeper);
        for (Answer answer : List.of(browser.get(link), use(browser, link))) {
            assertThat(answer.headers().getOrEmpty("Set-Cookie"))
                    .isNotEmpty()
                    .allSatisfy(cookie -> assertThat(cookie)
                            .startsWith("varanid-")
                            .contains("; HttpOnly", "; SameSite=Lax", "; Path=/")
                            .doesNotContain("Domain"));
        }
    }

    @Test
    void aPageTakesNothingFromElsewhereAndIsNotKept() {
        Signed keeper = signIn(Role.KEEPER);
        for (String path : List.of("/", "/account", "/nothing-here")) {
            Answer page = keeper.browser().get(path);
            assertThat(page.header("Content-Security-Policy"))
                    .get()
                    .asString()
                    .startsWith("default-src 'none'; script-src 'self'; style-src 'self';")
                    .contains("form-action 'self'", "frame-ancestors 'none'", "base-uri 'none'")
                    .doesNotContain("unsafe");
            assertThat(page.header("X-Content-Type-Options")).contains("nosniff");
            assertThat(page.header("Referrer-Policy")).contains("same-origin");
            assertThat(page.header("Cache-Control")).get().asString().contains("no-store");
            assertThat(page.body())
                    .doesNotContain("http://", "https://", "<script>", "<style", " style=", " onclick=", "th:");
        }
        Browser anybody = new Browser(keeper.client().port());
        assertThat(anybody.get("/sign-in/x").header("Referrer-Policy")).contains("no-referrer");
        Answer style = anybody.get("/page/page.css");
        assertThat(style.status()).isEqualTo(200);
        assertThat(style.body()).doesNotContain("url(", "@import");
    }

    @Test
    void anErrorIsAPageForABrowserAndAProblemForAProgram() {
        Signed keeper = signIn(Role.KEEPER);
        Answer page = keeper.browser().get("/nothing-here");
        assertThat(page.status()).isEqualTo(404);
        assertThat(page.header("Content-Type")).contains("text/html;charset=UTF-8");
        assertThat(page.body()).contains("There is nothing here", "Check the address", "Code 404");
        assertThat(keeper.browser().submit("/", "/", Map.of()).body()).contains("This cannot be done here");
        assertThat(keeper.browser().get("/api/v1/nothing").isProblem("not-found"))
                .isTrue();
        assertThat(keeper.client().get("/nothing-here").isProblem("not-found")).isTrue();
    }

    @Test
    void aFormThatIsFarTooLargeIsRefusedAsThat() {
        Browser browser = new Browser(organisations.nobody().port());
        Answer answer = browser.submit("/sign-in", "/sign-in", Map.of("email", "a@b", "password", "x".repeat(100_000)));
        assertThat(answer.status()).isEqualTo(413);
        assertThat(answer.body()).contains("This is too large");
    }

    private ConfigurableApplicationContext second(Path home, String publicAddress) {
        Stream<String> database = Stream.of(
                        "spring.datasource.url",
                        "spring.datasource.username",
                        "spring.datasource.password",
                        "spring.flyway.user",
                        "spring.flyway.password")
                .map(name -> "--" + name + "=" + environment.getRequiredProperty(name));
        Stream<String> own = Stream.of(
                "--server.port=0", "--varanid.intake.home=" + home, "--varanid.intake.public-address=" + publicAddress);
        return new SpringApplicationBuilder(VaranidIntake.class)
                .run(Stream.concat(database, own).toArray(String[]::new));
    }

    private Signed signIn(Role role) {
        Organisation rescue = organisations.create();
        Client person = rescue.person(role);
        return new Signed(rescue, person, Browser.signedIn(rescue, person));
    }

    private static Answer post(Browser browser, String path, String... headers) {
        String[] all = Stream.concat(Stream.of(headers), Stream.of("Content-Type", "application/json"))
                .toArray(String[]::new);
        return browser.send("POST", path, BodyPublishers.ofString("{}"), all);
    }

    private static Answer use(Browser browser, String link) {
        return browser.submit(link, "/sign-in/link", Map.of("secret", secretOf(link)));
    }

    private static String linkFor(Organisation organisation, Client person) {
        return pathOf(
                organisation.administrator().post("/api/v1/people/" + person.personId() + "/sign-in-links", "{}"));
    }

    private static String pathOf(Answer made) {
        return URI.create(made.text("/link")).getPath();
    }

    private static String secretOf(String link) {
        return link.substring("/sign-in/".length());
    }

    private static String email() {
        return UUID.randomUUID() + "@reed-bank.example";
    }
}
