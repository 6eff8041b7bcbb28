package varanid.intake.page.room;

import static org.assertj.core.api.Assertions.assertThat;
import static varanid.intake.service.Screens.exactly;
import static varanid.intake.service.Screens.named;

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
            screen.page().getByText("Write down what was waited for").click();
            screen.page().getByText("Write down what happened here").click();
            screen.page().getByText("Make the days longer").click();
            screen.shows("room");
            Page page = screen.page();
            page.getByLabel("What happened", exactly())
                    .selectOption("Shared tools, air or hands with suspect or sick animals");
            page.getByLabel("Which animal").selectOption("Pebble");
            page.getByLabel("What is known of it").fill("One pair of tongs in two rooms.");
            page.locator("form[action$='/events'] button").click();
            page.waitForURL("**?kept=happened");
            page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("A mistake? Recorded: shared tools"))
                    .click();
            page.waitForURL("**#mistake");
            screen.go(page.url().replaceFirst(".*(/rooms/)", "$1"));
            screen.shows("room-mistake");
        }
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void anAnimalIsPutWhereItDelaysOthers(Screens screens) {
        Housed pebble = new Housed(organisations);
        String millet = pebble.newcomer("Millet");
        try (Screen screen = screens.signIn(pebble.rescue, pebble.keeper).open()) {
            Page page = screen.page();
            screen.go("/animals/" + millet);
            page.getByRole(AriaRole.LINK, named("Put it into a room")).click();
            page.waitForURL("**/place");
            screen.go("/animals/" + millet + "/place");
            screen.shows("place");
            page.getByLabel("Room", exactly()).selectOption("Boiler room");
            page.getByRole(AriaRole.BUTTON, named("Show what it changes")).click();
            page.getByRole(AriaRole.BUTTON, named("Put it there")).waitFor();
            // Again by its address, so that it is looked at with large text too.
            screen.go("/animals/" + millet + "/place?roomId=" + pebble.room + "&on=");
            screen.shows("place-preview");
            page.getByLabel("Why it is put there").fill("No other space.");
            page.getByRole(AriaRole.BUTTON, named("Put it there")).click();
            page.getByRole(AriaRole.STATUS).waitFor();
            screen.go("/animals/" + millet + "/place");
            page.getByText("It is not kept here any more").click();
            page.getByText("The last move was a mistake").click();
            screen.shows("place-open");
            page.getByLabel("What happened", exactly()).selectOption("It died, and nobody can explain why");
            page.getByRole(AriaRole.BUTTON, named("Record that it left")).click();
            page.getByRole(AriaRole.HEADING, named("Its death is recorded")).waitFor();
            screen.shows("place-died");
        }
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void aQuarantineIsEndedByAPersonAfterAVetHasApproved(Screens screens) {
        Housed pebble = new Housed(organisations);
        String sorrel = pebble.ready();
        pebble.room("Garden house", "residents");
        try (Screen screen = screens.signIn(pebble.rescue, pebble.keeper).open()) {
            Page page = screen.page();
            screen.go("/animals/" + pebble.animal);
            page.getByRole(AriaRole.LINK, named("What speaks for and against its release"))
                    .click();
            page.waitForURL("**/release");
            screen.go("/animals/" + pebble.animal + "/release");
            page.getByText("State how it is").click();
            screen.shows("release-open");
        }
        try (Screen screen =
                screens.signIn(pebble.rescue, pebble.rescue.clinician()).open()) {
            Page page = screen.page();
            screen.go("/animals/" + sorrel + "/release");
            screen.shows("release-vet");
            page.getByLabel("Note", exactly()).fill("Seen on the table.");
            page.getByRole(AriaRole.BUTTON, named("I approve the release")).click();
            page.getByRole(AriaRole.STATUS).waitFor();
        }
        try (Screen screen = screens.signIn(pebble.rescue, pebble.keeper).open()) {
            Page page = screen.page();
            screen.go("/animals/" + sorrel + "/release");
            page.getByLabel("Room of residents that it goes to").selectOption("Garden house");
            screen.shows("release-met");
            page.getByRole(AriaRole.BUTTON, named("I decide: its quarantine ends"))
                    .click();
            page.getByRole(AriaRole.STATUS).waitFor();
            screen.shows("release-ended");
            assertThat(page.locator("main").innerText()).contains("It lives with the residents in Garden house.");
        }
    }
}
