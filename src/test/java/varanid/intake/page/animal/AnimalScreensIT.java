package varanid.intake.page.animal;

import static org.assertj.core.api.Assertions.assertThat;
import static varanid.intake.service.Screens.exactly;
import static varanid.intake.service.Screens.named;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;
import varanid.intake.service.Screens;
import varanid.intake.service.Screens.Screen;
import varanid.intake.service.ServiceTest;

/** The pages of animals in a real browser. */
@ServiceTest
class AnimalScreensIT {

    private static final String HOSTILE = "<script>alert(1)</script> & \"Reed\" \u202E\u05E9\u05DC\u05D5\u05DD";

    @Autowired
    Organisations organisations;

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void anAnimalIsRegisteredKeptAndHandedOver(Screens screens) {
        Organisation rescue = organisations.create();
        try (Screen screen = screens.signIn(rescue, rescue.keeper()).open()) {
            Page page = screen.page();
            screen.go("/animals");
            screen.shows("animals-empty");
            page.getByText("Register the first animal").click();
            page.waitForURL("**/new");
            screen.go("/animals/new");
            page.getByText("Where it comes from").click();
            page.getByText("What its papers say").click();
            screen.shows("new-animal");
            page.getByLabel("Name", exactly()).fill(HOSTILE);
            page.getByLabel("Weight", exactly()).fill("2,5");
            page.getByLabel("Unit", exactly()).selectOption("kg");
            page.getByLabel("Smallest step of the scale").fill("small");
            page.getByRole(AriaRole.BUTTON, named("Register and look it over")).click();
            page.locator(".faults").waitFor();
            screen.shows("new-animal-faulty");
            page.getByLabel("Smallest step of the scale").fill("0,05");
            page.getByRole(AriaRole.BUTTON, named("Register and look it over")).click();
            page.waitForURL("**/look");
            String animal = page.url().replaceFirst(".*/animals/([^/]*)/look", "$1");

            screen.go("/animals/" + animal);
            assertThat(page.locator("main").innerText()).contains("2.5 kg").contains("look first");
            page.getByRole(AriaRole.BUTTON, named("Ate some")).click();
            page.getByText("Kept in the diary.").waitFor();
            assertThat(page.locator("main").innerText()).contains("ate some of it");
            screen.shows("animal-new");
            page.getByText("A mistake? Correct it").click();
            page.getByLabel("Ate", exactly()).selectOption("none");
            screen.shows("animal-correct");
            page.getByRole(AriaRole.BUTTON, named("Keep")).click();
            page.getByText("Kept in the diary.").waitFor();
            assertThat(page.locator("main").innerText()).contains("refused").doesNotContain("ate some of it");

            screen.go("/animals/" + animal + "/hand-over");
            page.getByLabel("For whom").fill("Millpond & Co");
            page.getByRole(AriaRole.BUTTON, named("Make the link")).click();
            page.getByRole(AriaRole.HEADING, named("The link for Millpond & Co"))
                    .waitFor();
            screen.shows("hand-over");
            String link = page.locator("code").innerText();
            try (Screen clinic = screens.at(rescue.keeper().port()).open()) {
                clinic.page().navigate(link);
                assertThat(clinic.page().locator("h1").innerText()).contains("Reed");
            }
            page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Revoke the link for Millpond & Co"))
                    .first()
                    .click();
            page.getByRole(AriaRole.STATUS).waitFor();
            screen.shows("hand-over-revoked");
            try (Screen clinic = screens.at(rescue.keeper().port()).open()) {
                assertThat(clinic.page().navigate(link).status()).isEqualTo(404);
            }
            screen.go("/animals");
            screen.shows("animals");
        }
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void whatIsKnownOfAnAnimalIsLookedAt(Screens screens) {
        Followed pebble = new Followed(organisations).furnished();
        try (Screen screen = screens.signIn(pebble.rescue, pebble.keeper).open()) {
            screen.go(pebble.page(""));
            screen.shows("animal");
            for (var summary : screen.page().locator("summary").all()) {
                summary.click();
            }
            screen.shows("animal-open");
        }
    }

    @Test
    void theKeyboardDoesItAll() {
        Followed pebble = new Followed(organisations);
        try (Screen screen = Screens.desk().signIn(pebble.rescue, pebble.keeper).open()) {
            Page page = screen.page();
            screen.go(pebble.page("/log"));
            assertThat(page.evaluate("() => document.activeElement.id")).isIn("log", "");
            page.getByRole(AriaRole.BUTTON, named("Ate nothing")).focus();
            page.keyboard().press("Tab");
            assertThat(page.evaluate("() => document.activeElement.innerText")).isEqualTo("Passed stool");
            page.keyboard().press("Enter");
            page.getByText("Kept in the diary.").waitFor();
            page.getByText("Keep a weight").focus();
            page.keyboard().press("Enter");
            page.keyboard().press("Tab");
            page.keyboard().type("405");
            page.keyboard().press("Enter");
            page.getByText("The weight is kept.").waitFor();
            assertThat(page.locator("main").innerText()).contains("405 g");
        }
    }
}
