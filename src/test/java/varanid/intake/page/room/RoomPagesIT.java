package varanid.intake.page.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.Browser;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;
import varanid.intake.service.ServiceTest;

/** The rooms of an organisation, adding and renaming them, and how their clocks stand. */
@ServiceTest
class RoomPagesIT {

    private static final String HOSTILE = "<script>alert(1)</script> & \"Reed\"";

    @Autowired
    Organisations organisations;

    @Test
    void withoutAnyRoomThePageStartsTheWork() {
        Organisation rescue = organisations.create();
        Browser browser = Browser.signedIn(rescue, rescue.keeper());
        assertThat(browser.get("/rooms").body())
                .contains("No room is recorded yet. Begin with the one")
                .contains("Add the room");
        Browser vet = Browser.signedIn(rescue, rescue.clinician());
        assertThat(vet.get("/rooms").body())
                .contains("A keeper of your organisation adds rooms.")
                .doesNotContain("Add the room");
    }

    @Test
    void aRoomIsAddedOnceAndRenamed() {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        Browser browser = Browser.signedIn(rescue, keeper);
        Map<String, String> form = Map.of("name", HOSTILE, "roomKind", "quarantine", "key", "a-key-of-this-form");
        String first =
                browser.submit("/rooms", "/rooms", form).header("Location").orElseThrow();
        assertThat(browser.submit("/rooms", "/rooms", form).header("Location")).contains(first);
        assertThat(keeper.get("/api/v1/rooms").json().get("items")).hasSize(1);
        String room = first.replaceFirst("\\?.*", "");
        Answer page = browser.get(room);
        assertThat(page.body())
                .contains("&lt;script&gt;alert(1)&lt;/script&gt;")
                .doesNotContain("<script>alert(1)")
                .contains("Nobody stands here.");
        Map<String, String> change =
                Map.of("name", "Boiler room", "notes", "Two racks.", "version", version(page), "key", "another");
        assertThat(browser.submit(room, room, change).header("Location")).contains(room + "?kept=changed");
        assertThat(browser.get(room).body()).contains("Boiler room").contains("Two racks.");
        Map<String, String> late = Map.of("name", "Attic", "version", version(page), "key", "a third");
        assertThat(browser.submit(room, room, late).status()).isEqualTo(412);
        assertThat(browser.get(room).body()).contains("Boiler room").doesNotContain("Attic");
    }

    @Test
    void whatIsWrongIsNamedAndWhatWasTypedStays() {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        Browser browser = Browser.signedIn(rescue, keeper);
        keeper.post("/api/v1/rooms", "{\"name\": \"Boiler room\"}");
        Answer refused = browser.submit("/rooms", "/rooms", Map.of("name", "boiler ROOM", "roomKind", "hospital"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains("value=\"boiler ROOM\"").contains("href=\"#roomKind\"");
        Answer taken = browser.submit("/rooms", "/rooms", Map.of("name", "boiler ROOM"));
        assertThat(taken.status()).isEqualTo(422);
        assertThat(taken.body()).contains("is the name of another room").contains("href=\"#name\"");
        Answer nameless = browser.submit("/rooms", "/rooms", Map.of());
        assertThat(nameless.status()).isEqualTo(422);
        assertThat(keeper.get("/api/v1/rooms").json().get("items")).hasSize(1);
    }

    @Test
    void moreRoomsThanOnePageShowsAreOnTheNext() {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        IntStream.rangeClosed(1, RoomsPage.MOST + 1)
                .forEach(number -> keeper.post("/api/v1/rooms", "{\"name\": \"Shed %03d\"}".formatted(number)));
        Browser browser = Browser.signedIn(rescue, keeper);
        Answer first = browser.get("/rooms");
        assertThat(first.body()).contains("Shed 001").contains("Shed 050").doesNotContain("Shed 051");
        String next = first.body().replaceFirst("(?s).*href=\"(/rooms\\?after=[^\"]*)\".*", "$1");
        assertThat(browser.get(next).body())
                .contains("Shed 051")
                .doesNotContain("Shed 050")
                .contains("From the first");
    }

    @Test
    void theClockSaysWhyAndWhoStandsThere() {
        Housed pebble = new Housed(organisations);
        Browser browser = Browser.signedIn(pebble.rescue, pebble.keeper);
        assertThat(browser.get("/rooms").body())
                .contains("Boiler room")
                .contains("Not released before")
                .contains(">Pebble</a>");
        assertThat(browser.get("/rooms/" + pebble.room).body())
                .contains("Its days count from")
                .contains("The days began")
                .contains("/api/v1/rooms/" + pebble.room + "/cage-cards");
        pebble.mites();
        assertThat(browser.get("/rooms/" + pebble.room).body())
                .contains("There is no date: the days wait.")
                .contains("Treatments that have not ended")
                .contains("Until then no day counts.");
    }

    @Test
    void whatHappenedInTheWorkIsWrittenDownOnceAndWithdrawnWhereItWasAMistake() {
        Housed pebble = new Housed(organisations);
        String room = "/rooms/" + pebble.room;
        Browser keeper = Browser.signedIn(pebble.rescue, pebble.keeper);
        Answer refused = keeper.submit(room, room + "/events", Map.of("happenedNote", HOSTILE, "key", "event one"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body())
                .contains("href=\"#cause\"")
                .contains("&lt;script&gt;alert(1)&lt;/script&gt;")
                .doesNotContain("<script>alert(1)");
        Map<String, String> shared = Map.of(
                "cause",
                "breach-with-contact",
                "happenedTo",
                pebble.animal,
                "happenedOn",
                Housed.day(2).toString(),
                "happenedNote",
                HOSTILE,
                "key",
                "event one");
        assertThat(keeper.submit(room, room + "/events", shared).header("Location"))
                .contains(room + "?kept=happened");
        keeper.submit(room, room + "/events", shared);
        Answer page = keeper.get(room + "?kept=happened");
        assertThat(page.body())
                .contains("How the clock stands now is below.")
                .contains("shared tools, air or hands with suspect or sick animals")
                .contains("The days began again")
                .containsOnlyOnce("&lt;script&gt;alert(1)&lt;/script&gt;")
                .doesNotContain("<script>alert(1)");
        assertThat(occurrences(pebble)).isEqualTo(1);

        String mistake = page.body().replaceFirst("(?s).*\\?mistake=([^#]*)#mistake.*", "$1");
        Answer asked = keeper.get(room + "?mistake=" + mistake);
        assertThat(asked.body()).contains("A record that was a mistake").contains("Withdraw it");
        Answer unsaid = keeper.submit(room, room + "/mistakes", Map.of("mistake", mistake));
        assertThat(unsaid.status()).isEqualTo(422);
        assertThat(unsaid.body()).contains("href=\"#mistakeBecause\"").contains("Withdraw it");
        Map<String, String> withdrawn = Map.of("mistake", mistake, "mistakeBecause", "Another room.");
        assertThat(keeper.submit(room, room + "/mistakes", withdrawn).header("Location"))
                .contains(room + "?kept=withdrawn");
        assertThat(keeper.get(room).body())
                .contains("What was withdrawn, and counts for nothing: 1")
                .contains("Another room.")
                .doesNotContain("The days began again");
        assertThat(keeper.get(room + "?mistake=" + mistake).body()).doesNotContain("A record that was a mistake");
    }

    @Test
    void theDaysAreMadeLongerByWhoeverSaysWhy() {
        Housed pebble = new Housed(organisations);
        String room = "/rooms/" + pebble.room;
        Browser keeper = Browser.signedIn(pebble.rescue, pebble.keeper);
        Answer refused = keeper.submit(room, room + "/longer", Map.of("days", "many"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body())
                .contains("href=\"#days\"")
                .contains("href=\"#longerBecause\"")
                .contains("value=\"many\"");
        Map<String, String> longer = Map.of("days", "200", "longerBecause", "Two of its shipment died elsewhere.");
        assertThat(keeper.submit(room, room + "/longer", longer).header("Location"))
                .contains(room + "?kept=longer");
        assertThat(keeper.get(room).body())
                .contains("The days became more")
                .containsOnlyOnce("The days became more: <span dir=\"auto\">Two of its shipment died elsewhere.</span>")
                .contains("It takes 200 days: Two of its shipment died elsewhere.</li>");
    }

    @Test
    void whatAVetSaysIsNoMistakeThatAKeeperWithdraws() {
        Housed pebble = new Housed(organisations);
        String room = "/rooms/" + pebble.room;
        Browser keeper = Browser.signedIn(pebble.rescue, pebble.keeper);
        String mistakes = "\\?mistake=";
        assertThat(keeper.get(room).body().split(mistakes, -1)).hasSize(1);
        Housed.created(pebble.rescue
                .clinician()
                .post(
                        "/api/v1/rooms/" + pebble.room + "/events",
                        "{\"kind\": \"vet-decided\", \"days\": 100, \"reason\": \"As I see it.\"}"));
        assertThat(keeper.get(room).body()).contains("As I see it.");
        assertThat(keeper.get(room).body().split(mistakes, -1)).hasSize(1);
        assertThat(Browser.signedIn(pebble.rescue, pebble.rescue.clinician())
                        .get(room)
                        .body()
                        .split(mistakes, -1))
                .hasSize(2);
    }

    private static long occurrences(Housed pebble) {
        return pebble.keeper
                .get("/api/v1/rooms/" + pebble.room + "/events")
                .json()
                .get("items")
                .valueStream()
                .filter(event -> event.get("kind").asString().equals("occurred"))
                .count();
    }

    @Test
    void whatItWaitedForIsWrittenDown() {
        Housed pebble = new Housed(organisations);
        pebble.mites();
        String room = "/rooms/" + pebble.room;
        Browser keeper = Browser.signedIn(pebble.rescue, pebble.keeper);
        String mites = keeper.get(room).body().replaceFirst("(?s).*<option value=\"([^\"]*)\">mites, .*", "$1");
        Answer refused = keeper.submit(room, room + "/answers", Map.of("answerNote", "By phone", "key", "answer one"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body())
                .contains("href=\"#word\"")
                .contains(">By phone</textarea>")
                .contains("value=\"answer one\"");
        assertThat(keeper.submit(room, room + "/answers", Map.of("about", mites, "word", "goes-on"))
                        .status())
                .isEqualTo(403);
        Map<String, String> ended = Map.of(
                "about",
                mites,
                "word",
                "treatment-ended",
                "answeredOn",
                Housed.day(1).toString());
        assertThat(keeper.submit(room, room + "/answers", ended).header("Location"))
                .contains(room + "?kept=answered");
        assertThat(keeper.get(room).body())
                .contains("Treatment ended")
                .contains("Not released before")
                .doesNotContain("Until then no day counts.");
    }

    @Test
    void aVetRulesOnWhatIsAsked() {
        Housed pebble = new Housed(organisations);
        Housed.created(pebble.keeper.post(
                "/api/v1/rooms/" + pebble.room + "/events",
                "{\"kind\": \"occurred\", \"cause\": \"ticks\", \"animalId\": \"%s\"}".formatted(pebble.animal)));
        String room = "/rooms/" + pebble.room;
        Browser keeper = Browser.signedIn(pebble.rescue, pebble.keeper);
        assertThat(keeper.get(room).body())
                .contains("To ask a vet")
                .contains("Until then no day counts.")
                .doesNotContain("Write down what was waited for");
        Browser vet = Browser.signedIn(pebble.rescue, pebble.rescue.clinician());
        String ticks = vet.get(room).body().replaceFirst("(?s).*<option value=\"([^\"]*)\">ticks, .*", "$1");
        Answer refused = vet.submit(room, room + "/answers", Map.of("about", ticks));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains("href=\"#word\"");
        assertThat(vet.submit(room, room + "/answers", Map.of("about", ticks, "word", "goes-on"))
                        .status())
                .isEqualTo(303);
        assertThat(vet.get(room).body()).contains("A vet spoke").doesNotContain("To ask a vet");
    }

    @Test
    void othersSeeAndChangeNothingOfIt() {
        Housed pebble = new Housed(organisations);
        Organisation other = organisations.create();
        Browser browser = Browser.signedIn(other, other.keeper());
        assertThat(browser.get("/rooms").body()).doesNotContain("Boiler room");
        assertThat(browser.get("/rooms/" + pebble.room).status()).isEqualTo(404);
        assertThat(browser.submit("/rooms", "/rooms/" + pebble.room, Map.of("name", "Mine", "version", "0"))
                        .status())
                .isEqualTo(404);
        Browser vet = Browser.signedIn(pebble.rescue, pebble.rescue.clinician());
        assertThat(vet.submit("/rooms", "/rooms", Map.of("name", "Ward")).status())
                .isEqualTo(403);
    }

    private static String version(Answer page) {
        return page.body().replaceFirst("(?s).*name=\"version\" value=\"(\\d+)\".*", "$1");
    }
}
