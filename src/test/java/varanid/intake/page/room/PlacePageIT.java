package varanid.intake.page.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.Browser;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;
import varanid.intake.service.ServiceTest;

/** Where an animal stands: moving it after seeing what that changes, its leaving, and a mistake in either. */
@ServiceTest
class PlacePageIT {

    @Autowired
    Organisations organisations;

    private Housed pebble;
    private Browser browser;

    @BeforeEach
    void someoneStandsThere() {
        pebble = new Housed(organisations);
        browser = Browser.signedIn(pebble.rescue, pebble.keeper);
    }

    @Test
    void whomItWouldDelayIsShownBeforeAnythingIsRecorded() {
        String millet = pebble.newcomer("Millet");
        Answer preview = browser.get(path(millet) + "?roomId=" + pebble.room + "&on=");
        assertThat(preview.status()).isEqualTo(200);
        assertThat(preview.body())
                .contains("It delays one other animal:")
                .contains(">Pebble</a>: <b>" + Housed.DAYS + " days longer</b>")
                .contains("It is kept apart for at least 90 days.")
                .contains("Put it there");
        assertThat(where(millet)).isEqualTo("not-placed");
        String day = Housed.day(0).toString();
        assertThat(preview.body()).contains("name=\"on\" value=\"" + day + "\"");
        assertThat(put(millet, Map.of("roomId", pebble.room, "on", day, "reason", "No other space."))
                        .header("Location"))
                .contains(path(millet) + "?kept=placed");
        assertThat(where(millet)).isEqualTo("in-quarantine");
        assertThat(browser.get(path(millet)).body())
                .contains("It is in quarantine in Boiler room.")
                .contains("Move it");
        assertThat(browser.get("/animals/" + millet).body())
                .contains(path(millet))
                .contains("Move it");
    }

    @Test
    void aRoomIsAddedOnTheWay() {
        String millet = pebble.newcomer("Millet");
        String next = browser.submit(
                        path(millet),
                        path(millet) + "/rooms",
                        Map.of("name", "Attic", "roomKind", "quarantine", "key", "room one"))
                .header("Location")
                .orElseThrow();
        assertThat(next).startsWith(path(millet) + "?kept=room&roomId=");
        assertThat(browser.get(next).body()).contains("it delays nobody else.").contains("What it changes: Attic");
        Answer refused =
                browser.submit(path(millet), path(millet) + "/rooms", Map.of("name", "attic", "key", "room two"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains("is the name of another room").contains("value=\"room two\"");
    }

    @Test
    void aDayAheadIsPreviewedAndNotRecorded() {
        String millet = pebble.newcomer("Millet");
        Answer ahead = browser.get(path(millet) + "?roomId=" + pebble.room + "&on=" + Housed.day(-5));
        assertThat(ahead.body()).contains("That day lies ahead.").doesNotContain("Put it there");
        assertThat(put(
                                millet,
                                Map.of(
                                        "roomId",
                                        pebble.room,
                                        "on",
                                        Housed.day(-5).toString()))
                        .status())
                .isEqualTo(422);
        assertThat(where(millet)).isEqualTo("not-placed");
    }

    @Test
    void whatIsWrongWithTheChoiceIsNamed() {
        for (String query : List.of("roomId=&on=", "roomId=nonsense&on=", "roomId=" + pebble.room + "&on=")) {
            Answer page = browser.get(path(pebble.animal) + "?" + query);
            assertThat(page.status()).isEqualTo(200);
            assertThat(page.body()).contains("href=\"#roomId\"").doesNotContain("Put it there");
        }
        String attic = pebble.room("Attic", "quarantine");
        Answer early = browser.get(path(pebble.animal) + "?roomId=" + attic + "&on=" + Housed.day(Housed.DAYS + 1));
        assertThat(early.body()).contains("href=\"#on\"").contains("when it was last moved");
        assertThat(browser.get(path(pebble.animal) + "?roomId=" + attic + "&on=soon")
                        .body())
                .contains("href=\"#on\"");
        assertThat(browser.get(path(pebble.animal) + "?roomId=" + pebble.rescue.id() + "&on=")
                        .status())
                .isEqualTo(404);
    }

    @Test
    void nobodyBecomesAResidentByBeingMoved() {
        String garden = pebble.room("Garden house", "residents");
        assertThat(browser.get(path(pebble.animal) + "?roomId=" + garden + "&on=")
                        .body())
                .contains("Nobody becomes a resident by being moved")
                .doesNotContain("Put it there");
        assertThat(put(pebble.animal, Map.of("roomId", garden)).status()).isEqualTo(422);
        String old = pebble.newcomer("Old One");
        assertThat(browser.get(path(old) + "?roomId=" + garden + "&on=").body())
                .contains("It lived here among the residents before anything was recorded");
        assertThat(put(old, Map.of("roomId", garden)).status()).isEqualTo(422);
        assertThat(put(old, Map.of("roomId", garden, "residentAlready", "true", "reason", "Here since long."))
                        .status())
                .isEqualTo(303);
        assertThat(where(old)).isEqualTo("resident");
    }

    @Test
    void itLeavesAndComesBack() {
        assertThat(leave(Map.of("because", "escaped", "leftOn", Housed.day(2).toString(), "leftReason", "Lid."))
                        .header("Location"))
                .contains(path(pebble.animal) + "?kept=left");
        assertThat(where(pebble.animal)).isEqualTo("gone");
        Answer preview = browser.get(path(pebble.animal) + "?roomId=" + pebble.room + "&on=");
        assertThat(preview.body()).contains("It had left, and is here again");
        Answer refused = put(pebble.animal, Map.of("roomId", pebble.room));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains("href=\"#returned\"").contains("Put it there");
        assertThat(put(
                                pebble.animal,
                                Map.of("roomId", pebble.room, "returned", "true", "reason", "Found in the cellar."))
                        .status())
                .isEqualTo(303);
        assertThat(where(pebble.animal)).isEqualTo("in-quarantine");
    }

    @Test
    void aDeathActsOnTheRoomAndIsWithdrawnWhereItWasAMistake() {
        String millet = pebble.newcomer("Millet");
        pebble.place(millet, pebble.room, 6);
        assertThat(leave(Map.of("because", "died-unexplained")).status()).isEqualTo(303);
        assertThat(browser.get("/rooms/" + pebble.room).body()).contains("a death nobody can explain");
        Answer dead = browser.get(path(pebble.animal));
        assertThat(dead.body())
                .contains("Its death is recorded")
                .contains("keep the body cool and not frozen")
                .doesNotContain("Show what it changes");
        String about = dead.body().replaceFirst("(?s).*name=\"about\" value=\"([^\"]*)\".*", "$1");
        String mistakes = path(pebble.animal) + "/mistakes";
        Answer refused = browser.submit("/rooms", mistakes, Map.of("about", about));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains("href=\"#mistake\"");
        assertThat(browser.submit("/rooms", mistakes, Map.of("about", about, "mistake", "The wrong animal."))
                        .header("Location"))
                .contains(path(pebble.animal) + "?kept=withdrawn");
        assertThat(where(pebble.animal)).isEqualTo("in-quarantine");
        assertThat(browser.get("/rooms/" + pebble.room).body()).contains("What was withdrawn");
    }

    @Test
    void whatIsWrongWithALeavingIsNamedAndWhatWasTypedStays() {
        Answer refused =
                leave(Map.of("leftOn", Housed.day(-1).toString(), "leftReason", "Nobody knows", "key", "left one"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body())
                .contains("href=\"#because\"")
                .contains("href=\"#leftOn\"")
                .contains(">Nobody knows</textarea>")
                .contains("value=\"left one\"");
        assertThat(where(pebble.animal)).isEqualTo("in-quarantine");
    }

    @Test
    void onlyKeepersOfItsOrganisationMoveIt() {
        Browser vet = Browser.signedIn(pebble.rescue, pebble.rescue.clinician());
        assertThat(vet.get(path(pebble.animal)).status()).isEqualTo(403);
        assertThat(vet.get("/animals/" + pebble.animal).body()).doesNotContain(path(pebble.animal));
        Organisation other = organisations.create();
        Browser stranger = Browser.signedIn(other, other.keeper());
        assertThat(stranger.get(path(pebble.animal)).status()).isEqualTo(404);
        for (String form : List.of("", "/departures", "/mistakes")) {
            assertThat(stranger.submit(
                                    "/rooms",
                                    path(pebble.animal) + form,
                                    Map.of(
                                            "roomId",
                                            pebble.room,
                                            "because",
                                            "escaped",
                                            "mistake",
                                            "x",
                                            "about",
                                            pebble.room))
                            .status())
                    .as(form)
                    .isEqualTo(404);
        }
        assertThat(where(pebble.animal)).isEqualTo("in-quarantine");
    }

    private Answer put(String animal, Map<String, String> form) {
        return browser.submit("/rooms", path(animal), form);
    }

    private Answer leave(Map<String, String> form) {
        return browser.submit("/rooms", path(pebble.animal) + "/departures", form);
    }

    private String where(String animal) {
        return pebble.keeper.get("/api/v1/animals/" + animal + "/quarantine").text("/where");
    }

    private static String path(String animal) {
        return "/animals/" + animal + "/place";
    }
}
