package varanid.intake.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Browser;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;
import varanid.intake.service.Screens;
import varanid.intake.service.Screens.Screen;
import varanid.intake.service.ServiceTest;

/** What the organisation is called and whom to call, changed by its administrator. */
@ServiceTest
class OrganisationScreensIT {

    @Autowired
    Organisations organisations;

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void anAdministratorSaysWhomToCall(Screens screens) {
        Organisation rescue = organisations.create();
        try (Screen screen = screens.signIn(rescue, rescue.administrator()).open()) {
            Page page = screen.page();
            screen.go("/account");
            page.getByText("The organisation").click();
            page.waitForURL("**/organisation");
            screen.go("/organisation");
            page.getByLabel("Whom to call").fill("ring us");
            page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Keep it"))
                    .click();
            page.locator(".faults").waitFor();
            screen.shows("organisation-faulty");
            page.getByLabel("Whom to call").fill("01632 960100");
            page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Keep it"))
                    .click();
            page.getByRole(AriaRole.STATUS).waitFor();
            screen.shows("organisation");
            assertThat(rescue.keeper().get("/api/v1/organisation").text("/phone"))
                    .isEqualTo("01632 960100");
        }
    }

    @Test
    void nobodyElseChangesItAndAnOldFormDoesNot() {
        Organisation rescue = organisations.create();
        assertThat(Browser.signedIn(rescue, rescue.keeper())
                        .get("/organisation")
                        .status())
                .isEqualTo(403);
        Browser administrator = Browser.signedIn(rescue, rescue.administrator());
        Map<String, String> form = Map.of("name", "Reed Bank", "zone", "Europe/Lisbon", "version", "0");
        assertThat(administrator.submit("/organisation", "/organisation", form).status())
                .isEqualTo(303);
        assertThat(administrator.submit("/organisation", "/organisation", form).status())
                .isEqualTo(412);
    }
}
