package varanid.intake.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.Screens;
import varanid.intake.service.Screens.Screen;
import varanid.intake.service.ServiceTest;

/** Signing in, one's account and pages of errors, in a real browser. */
@ServiceTest
class SignInPagesIT {

    @Autowired
    Organisations organisations;

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void everyPageIsLookedAt(Screens screens) {
        Organisations.Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        try (Screen stranger = screens.at(keeper.port()).open()) {
            stranger.go("/animals");
            assertThat(stranger.page().url()).contains("/sign-in");
            stranger.shows("sign-in");
            stranger.go("/sign-in/wrong");
            stranger.shows("sign-in-useless");
        }
        try (Screen screen = screens.signIn(rescue, keeper).open()) {
            screen.go("/account");
            screen.shows("account");
            screen.go("/nowhere");
            assertThat(screen.page().getByRole(AriaRole.HEADING).first().innerText())
                    .isNotBlank();
            screen.shows("error-404");
        }
    }

    @Test
    void aPersonSetsAPasswordAndSignsInByItWithTheKeyboardAlone() {
        Organisations.Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        String email = "keeper-" + keeper.personId() + "@reed-bank.example";
        String password = "kelp under the boathouse";
        try (Screen screen = Screens.phone().signIn(rescue, keeper).open()) {
            screen.go("/account");
            type(screen.page(), "E-mail", email);
            type(screen.page(), "New password", password);
            screen.page().keyboard().press("Enter");
            screen.page().waitForURL("**/account?kept");
            screen.shows("account-kept");
        }
        try (Screen screen = Screens.phone().at(keeper.port()).open()) {
            screen.go("/sign-in");
            type(screen.page(), "E-mail", email);
            type(screen.page(), "Password", password);
            screen.page().keyboard().press("Enter");
            screen.page().waitForURL(url -> !url.contains("sign-in"));
            assertThat(screen.page().locator("footer").innerText()).contains("A person");
            List<String> others = (List<String>) screen.page()
                    .evaluate("() => performance.getEntriesByType('resource').map(e => e.name)"
                            + ".filter(name => !name.startsWith(location.origin))");
            assertThat(others).as("asked of others").isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void anAdministratorAddsAPersonAndLetsThemIn(Screens screens) {
        Organisations.Organisation rescue = organisations.create();
        Client office = rescue.administrator();
        try (Screen screen = screens.signIn(rescue, office).open()) {
            screen.go("/people");
            screen.page().getByLabel("Name").fill("");
            screen.page()
                    .getByRole(
                            AriaRole.BUTTON,
                            new Page.GetByRoleOptions().setName("Add").setExact(true))
                    .click();
            screen.page().getByText("A name is missing").waitFor();
            screen.shows("people-faulty");
            screen.page().getByLabel("Name").fill("<b>Vet & Co</b>");
            screen.page()
                    .getByRole(
                            AriaRole.BUTTON,
                            new Page.GetByRoleOptions().setName("Add").setExact(true))
                    .click();
            screen.page().waitForURL("**/people");
            screen.shows("people");
            screen.page()
                    .getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Sign-in link <b>Vet & Co</b>"))
                    .click();
            screen.page().getByText("signs in <b>Vet & Co</b>").waitFor();
            screen.shows("person-link");
            String link = screen.page().locator("code").innerText();
            try (Screen other = screens.at(office.port()).open()) {
                other.page().navigate(link);
                other.page()
                        .getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Sign in"))
                        .click();
                other.page().getByText("<b>Vet & Co</b>").first().waitFor();
            }
        }
    }

    @Test
    void nobodyElseSeesThePeople() {
        Organisations.Organisation rescue = organisations.create();
        assertThat(varanid.intake.service.Browser.signedIn(rescue, rescue.keeper())
                        .get("/people")
                        .status())
                .isEqualTo(403);
    }

    /** Goes by Tab until the field of that label has the focus. */
    private static void type(Page page, String label, String text) {
        for (int tries = 0; tries < 40; tries++) {
            page.keyboard().press("Tab");
            if ((Boolean) page.evaluate(
                    "label => [...(document.activeElement.labels || [])].some(l => l.innerText.trim() === label)",
                    label)) {
                page.keyboard().type(text);
                return;
            }
        }
        throw new AssertionError("the Tab key does not reach " + label);
    }
}
