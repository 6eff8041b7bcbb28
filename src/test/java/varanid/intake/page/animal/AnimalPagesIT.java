package varanid.intake.page.animal;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.Browser;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;
import varanid.intake.service.Screens;
import varanid.intake.service.Screens.Screen;
import varanid.intake.service.ServiceTest;

/** Registering an animal, what is known of it, a line in its diary, and handing it over. */
@ServiceTest
class AnimalPagesIT {

    private static final String HOSTILE = "<script>alert(1)</script> & \"Reed\" \u202E\u05E9\u05DC\u05D5\u05DD";

    @Autowired
    Organisations organisations;

    private static Page.GetByRoleOptions named(String name) {
        return new Page.GetByRoleOptions().setName(name).setExact(true);
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void anAnimalIsRegisteredKeptAndHandedOver(Screens screens) {
        Organisation rescue = organisations.create();
        try (Screen screen = screens.signIn(rescue, rescue.keeper()).open()) {
            Page page = screen.page();
            screen.go("/animals");
            screen.shows("animals-empty");
            screen.go("/animals/new");
            screen.shows("new-animal");
            page.getByLabel("Name", new Page.GetByLabelOptions().setExact(true)).fill(HOSTILE);
            page.getByLabel("Weight", new Page.GetByLabelOptions().setExact(true))
                    .fill("2,5");
            page.getByLabel("Unit", new Page.GetByLabelOptions().setExact(true)).selectOption("kg");
            page.getByLabel("Smallest step of the scale").fill("0,05");
            page.getByRole(AriaRole.BUTTON, named("Register and look it over")).click();
            page.waitForURL("**/look");
            String animal = page.url().replaceFirst(".*/animals/([^/]*)/look", "$1");

            screen.go("/animals/" + animal);
            assertThat(page.locator("main").innerText()).contains("2.5 kg").contains("look first");
            page.getByRole(AriaRole.BUTTON, named("Ate some")).click();
            page.getByText("Kept.").waitFor();
            assertThat(page.locator("main").innerText()).contains("ate some of it");
            screen.shows("animal");

            screen.go("/animals/" + animal + "/hand-over");
            page.getByLabel("For whom").fill("Millpond & Co");
            page.getByRole(AriaRole.BUTTON, named("Make the link")).click();
            page.getByText("The link for Millpond & Co").waitFor();
            screen.shows("hand-over");
            String link = page.locator("code").innerText();
            try (Screen clinic = screens.at(rescue.keeper().port()).open()) {
                clinic.page().navigate(link);
                assertThat(clinic.page().locator("h1").innerText()).contains("Reed");
            }
            screen.go("/animals");
            screen.shows("animals");
        }
    }

    @Test
    void whatIsWrongIsNamedAndWhatWasTypedStays() {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        Browser browser = Browser.signedIn(rescue, keeper);
        Answer refused = browser.submit(
                "/animals/new",
                "/animals/new",
                Map.of(
                        "name",
                        HOSTILE,
                        "weight",
                        "heavy",
                        "unit",
                        "kg",
                        "arrivedOn",
                        "tomorrow",
                        "sex",
                        "female",
                        "evidence.ticks",
                        "yes"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body())
                .contains("&lt;script&gt;alert(1)&lt;/script&gt;")
                .doesNotContain("<script>alert(1)")
                .contains("value=\"heavy\"")
                .containsPattern("name=\"sex\" value=\"female\" checked")
                .containsPattern("name=\"evidence.ticks\" value=\"yes\" checked")
                .contains("href=\"#weight\"")
                .contains("href=\"#arrivedOn\"");
        assertThat(keeper.get("/api/v1/animals").json().get("items")).isEmpty();
    }

    @Test
    void whatIsSentTwiceIsKeptOnce() {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        Browser browser = Browser.signedIn(rescue, keeper);
        Map<String, String> form = Map.of("name", "Once", "key", "a-key-of-this-form");
        String first = browser.submit("/animals/new", "/animals/new", form)
                .header("Location")
                .orElseThrow();
        assertThat(browser.submit("/animals/new", "/animals/new", form).header("Location"))
                .contains(first);
        assertThat(keeper.get("/api/v1/animals").json().get("items")).hasSize(1);
        String animal = first.replace("/look", "");
        Map<String, String> entry = Map.of("ate", "all", "key", "another");
        assertThat(browser.submit(animal, animal + "/diary", entry).status()).isEqualTo(303);
        assertThat(browser.submit(animal, animal + "/diary", entry).status()).isEqualTo(303);
        assertThat(keeper.get("/api/v1" + animal + "/diary").json().get("items"))
                .hasSize(1);
    }

    @Test
    void onlyAKeeperKeepsALine() {
        Organisation rescue = organisations.create();
        String animal = rescue.keeper().post("/api/v1/animals", "{}").id();
        Browser clinician = Browser.signedIn(rescue, rescue.clinician());
        for (String path : new String[] {"/diary", "/weighings"}) {
            assertThat(clinician
                            .submit("/account", "/animals/" + animal + path, Map.of("ate", "all", "weight", "3"))
                            .status())
                    .isEqualTo(403);
        }
    }

    @Test
    void othersSeeAndKeepNothingOfIt() {
        Organisation rescue = organisations.create();
        String animal =
                rescue.keeper().post("/api/v1/animals", "{\"name\":\"Mine\"}").id();
        Organisation other = organisations.create();
        Browser browser = Browser.signedIn(other, other.keeper());
        assertThat(browser.get("/animals").body()).doesNotContain("Mine");
        for (String path : new String[] {"", "/hand-over"}) {
            assertThat(browser.get("/animals/" + animal + path).status()).isEqualTo(404);
        }
        assertThat(browser.submit("/animals/new", "/animals/" + animal + "/diary", Map.of("ate", "all"))
                        .status())
                .isEqualTo(404);
        assertThat(browser.submit(
                                "/animals/new",
                                "/animals/" + animal + "/hand-over",
                                Map.of("kind", "summary", "recipient", "me"))
                        .status())
                .isEqualTo(404);
    }
}
