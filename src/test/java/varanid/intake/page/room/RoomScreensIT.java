package varanid.intake.page.room;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;
import varanid.intake.service.Screens;
import varanid.intake.service.Screens.Screen;
import varanid.intake.service.ServiceTest;

/** The pages of rooms in a real browser. */
@ServiceTest
class RoomScreensIT {

    @Autowired
    Organisations organisations;

    private static Page.GetByRoleOptions named(String name) {
        return new Page.GetByRoleOptions().setName(name).setExact(true);
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void theFirstRoomIsAddedAndRenamed(Screens screens) {
        Organisation rescue = organisations.create();
        try (Screen screen = screens.signIn(rescue, rescue.administrator()).open()) {
            Page page = screen.page();
            screen.go("/rooms");
            screen.shows("rooms-empty");
            page.getByRole(AriaRole.BUTTON, named("Add the room")).click();
            page.locator(".faults").waitFor();
            screen.shows("rooms-faulty");
            page.getByLabel("Name of the room")
                    .fill("Boilerroomwithanamethatisnearlytoolongforanything " + "\u05E9\u05DC");
            page.getByRole(AriaRole.BUTTON, named("Add the room")).click();
            page.waitForURL("**/rooms/*");
            screen.shows("room-empty");
            page.getByText("Rename it, or change its notes").click();
            page.getByLabel("Name of the room").fill("Boiler room");
            page.getByRole(AriaRole.BUTTON, named("Keep")).click();
            page.waitForURL("**?kept=changed");
            assertThat(page.locator("h1").innerText()).isEqualTo("Boiler room");
        }
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void theClockOfARoomIsLookedAt(Screens screens) {
        Housed pebble = new Housed(organisations);
        pebble.place(pebble.newcomer("Millet"), pebble.room, 6);
        pebble.place(pebble.newcomer("Sedge"), pebble.room("Attic", "quarantine"), 10);
        pebble.room("Garden house", "residents");
        pebble.mites();
        try (Screen screen = screens.signIn(pebble.rescue, pebble.keeper).open()) {
            screen.go("/rooms");
            screen.shows("rooms");
            screen.go("/rooms/" + pebble.room);
            screen.shows("room");
        }
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void anAnimalIsPutWhereItDelaysOthers(Screens screens) {
        Housed pebble = new Housed(organisations);
        String millet = pebble.newcomer("Millet");
        pebble.mites();
        try (Screen screen = screens.signIn(pebble.rescue, pebble.keeper).open()) {
            Page page = screen.page();
            screen.go("/animals/" + millet);
            page.getByRole(AriaRole.LINK, named("Put it into a room")).click();
            page.waitForURL("**/place");
            screen.go("/animals/" + millet + "/place");
            screen.shows("place");
            page.getByLabel("Room", new Page.GetByLabelOptions().setExact(true)).selectOption("Boiler room");
            page.getByRole(AriaRole.BUTTON, named("Show what it changes")).click();
            page.getByRole(AriaRole.BUTTON, named("Put it there")).waitFor();
            screen.shows("place-preview");
            page.getByLabel("Why it is put there").fill("No other space.");
            page.getByRole(AriaRole.BUTTON, named("Put it there")).click();
            page.getByRole(AriaRole.STATUS).waitFor();
            page.getByText("It is not kept here any more").click();
            page.getByText("The last move was a mistake").click();
            screen.shows("place-open");
            page.getByLabel("What happened", new Page.GetByLabelOptions().setExact(true))
                    .selectOption("It died, and nobody can explain why");
            page.getByRole(AriaRole.BUTTON, named("Record that it left")).click();
            page.getByRole(AriaRole.HEADING, named("Its death is recorded")).waitFor();
            screen.shows("place-died");
        }
    }
}
