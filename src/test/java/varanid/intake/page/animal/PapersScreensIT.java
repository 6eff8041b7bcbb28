package varanid.intake.page.animal;

import static org.assertj.core.api.Assertions.assertThat;
import static varanid.intake.service.Screens.named;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.Organisations;
import varanid.intake.service.Screens;
import varanid.intake.service.Screens.Screen;
import varanid.intake.service.ServiceTest;

/** What goes from hand to hand, opened in a real browser: by a link without an account, and the card of a cage. */
@ServiceTest
class PapersScreensIT {

    private static final String HOSTILE = "<script>alert(1)</script> & keep it \"warm\".";

    @Autowired
    Organisations organisations;

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void aVetReadsTheSummaryAndAnswersByLinksAndTheCageHasItsCard(Screens screens) {
        Followed pebble = new Followed(organisations).furnished();
        try (Screen vet = screens.at(pebble.keeper.port()).open()) {
            vet.go(link(pebble, "summary"));
            assertThat(vet.page().locator("h1").innerText()).isEqualTo("Pebble");
            vet.shows("summary");
            vet.go("/summary/vs1.nothing");
            vet.shows("link-refused");
            vet.go(link(pebble, "reply"));
            vet.shows("reply");
            answer(vet);
        }
        assertThat(pebble.keeper
                        .get("/api/v1/animals/" + pebble.animal + "/vet-decisions")
                        .body())
                .contains(HOSTILE.replace("\"", "\\\""));
        try (Screen keeper = screens.signIn(pebble.rescue, pebble.keeper).open()) {
            keeper.go("/api/v1/animals/" + pebble.animal + "/cage-card");
            assertThat(keeper.page().locator("body").innerText()).contains("Pebble");
            keeper.shows("cage-card");
        }
    }

    private static void answer(Screen vet) {
        Page page = vet.page();
        page.locator("button[type=submit]").click();
        page.locator("#faults").waitFor();
        vet.shows("reply-faulty");
        page.locator("#instructions").fill(HOSTILE);
        page.locator("input[name=sawAnimal]").first().check();
        page.locator("input[name=urgency]").nth(1).check();
        page.locator("#name").fill("Ines Okafor");
        page.locator("#practice").fill("Harbour Reptile Practice");
        page.locator("#licence").fill("Register of Vets 4711");
        page.locator("button[type=submit]").click();
        page.getByRole(AriaRole.HEADING, named("Your answer is kept")).waitFor();
        assertThat(page.locator("main").innerText()).contains(HOSTILE);
        vet.shows("reply-kept");
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void aLinkSignsInByOneButton(Screens screens) {
        Organisations.Organisation rescue = organisations.create();
        String address = rescue.administrator()
                .post("/api/v1/people/" + rescue.keeper().personId() + "/sign-in-links", "{}")
                .text("/link");
        try (Screen screen = screens.at(rescue.keeper().port()).open()) {
            screen.go(path(address));
            screen.shows("sign-in-link");
            screen.page().getByRole(AriaRole.BUTTON, named("Sign in")).click();
            screen.page().getByRole(AriaRole.LINK, named("Account")).waitFor();
        }
    }

    private static String link(Followed pebble, String kind) {
        Answer given = pebble.keeper.post(
                "/api/v1/animals/" + pebble.animal + "/links",
                "{\"kind\": \"" + kind + "\", \"recipient\": \"Harbour Practice\"}");
        assertThat(given.status()).as(given.body()).isEqualTo(201);
        return path(given.text("/address"));
    }

    /** The service may be called otherwise than the browser calls it. */
    private static String path(String address) {
        return address.replaceFirst("https?://[^/]*", "");
    }
}
