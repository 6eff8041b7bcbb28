package varanid.intake.page.calendar;

import static org.assertj.core.api.Assertions.assertThat;
import static varanid.intake.service.Screens.named;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.net.URI;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;
import varanid.intake.service.Screens;
import varanid.intake.service.Screens.Screen;
import varanid.intake.service.ServiceTest;

/** What is due in one's own calendar, made and closed in a real browser. */
@ServiceTest
class CalendarScreensIT {

    private static final String HOSTILE = "<b>Cages</b> & \"ticks\"";

    @Autowired
    Organisations organisations;

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void aCalendarIsMadeReadAndClosed(Screens screens) {
        Organisation rescue = organisations.create();
        String animal = rescue.keeper()
                .post("/api/v1/animals", "{\"name\": \"Pebble\"}")
                .json()
                .path("id")
                .stringValue();
        try (Screen screen = screens.signIn(rescue, rescue.keeper()).open()) {
            Page page = screen.page();
            screen.go("/animals/" + animal + "/calendar");
            screen.shows("calendar");
            page.getByRole(AriaRole.BUTTON, named("Make the address")).click();
            page.locator(".faults").waitFor();
            screen.shows("calendar-faulty");
            page.getByLabel("What it is called").fill(HOSTILE);
            page.getByRole(AriaRole.BUTTON, named("Make the address")).click();
            page.getByRole(AriaRole.STATUS).waitFor();
            screen.shows("calendar-made");
            String address = URI.create(page.locator("code").innerText()).getPath();
            assertThat(page.getByRole(AriaRole.LINK, named("Open in the calendar program"))
                            .getAttribute("href"))
                    .startsWith("webcal://")
                    .endsWith(address);
            assertThat(rescue.keeper().get(address).body()).startsWith("BEGIN:VCALENDAR");

            screen.go("/calendars");
            assertThat(page.locator("main").innerText()).contains(HOSTILE).doesNotContain(address);
            screen.shows("calendars");
            page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Close it for good " + HOSTILE))
                    .click();
            page.getByText("Closed for good.").waitFor();
            assertThat(rescue.keeper().get(address).status()).isEqualTo(404);
        }
    }
}
