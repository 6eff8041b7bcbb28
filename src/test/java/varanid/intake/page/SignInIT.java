package varanid.intake.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import varanid.intake.service.Answer;
import varanid.intake.service.Browser;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** Signing in and out with a browser, and what a session opens. */
@ServiceTest
class SignInIT {

    private static final String ANIMALS = "/api/v1/animals";

    @Autowired
    Organisations organisations;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MovableClock clock;

    @Test
    void aLinkSignsInByAButtonAndOnlyOnce() {
        Client keeper = organisations.create().keeper();
        String link = linkFor(keeper);
        Browser browser = new Browser(keeper.port());

        Answer opened = browser.get(link);
        assertThat(opened.status()).isEqualTo(200);
        assertThat(browser.get(link).status()).as("looking burns nothing").isEqualTo(200);
        Answer signedIn = use(browser, link);
        assertThat(signedIn.status()).isEqualTo(303);
        assertThat(signedIn.header("Location")).contains("/");
        assertThat(browser.get("/").body()).contains("You are signed in as A person.");

        Browser second = new Browser(keeper.port());
        assertThat(second.get(link).status()).isEqualTo(404);
        assertThat(second.submit("/sign-in", "/sign-in/link", Map.of("secret", secretOf(link)))
                        .status())
                .isEqualTo(404);
        assertThat(second.get("/").status()).isEqualTo(303);
    }

    @Test
    void ofTwoWhoUseALinkAtTheSameMomentOneGetsIn() throws Exception {
        Client keeper = organisations.create().keeper();
        String link = linkFor(keeper);
        List<Browser> browsers =
                Stream.generate(() -> new Browser(keeper.port())).limit(8).toList();
        browsers.forEach(browser -> browser.get("/sign-in"));
        ExecutorService threads = Executors.newFixedThreadPool(browsers.size());
        try {
            List<Callable<Integer>> tries = browsers.stream()
                    .<Callable<Integer>>map(browser ->
                            () -> browser.submit("/sign-in", "/sign-in/link", Map.of("secret", secretOf(link)))
                                    .status())
                    .toList();
            int in = 0;
            for (Future<Integer> status : threads.invokeAll(tries)) {
                in += status.get() == 303 ? 1 : 0;
            }
            assertThat(in).isEqualTo(1);
        } finally {
            threads.shutdownNow();
        }
    }

    private static String secretOf(String link) {
        return link.substring("/sign-in/".length());
    }

    private Answer use(Browser browser, String link) {
        return browser.submit(link, "/sign-in/link", Map.of("secret", secretOf(link)));
    }

    /** The path of a new link for that person, by an administrator of theirs. */
    private String linkFor(Client person) {
        return jdbc.sql("SELECT organisation_id FROM person WHERE id = ?")
                .param(person.personId())
                .query(java.util.UUID.class)
                .optional()
                .map(organisation -> URI.create(organisations
                                .get(organisation)
                                .administrator()
                                .post("/api/v1/people/" + person.personId() + "/sign-in-links", "{}")
                                .text("/link"))
                        .getPath())
                .orElseThrow();
    }
}
