package varanid.intake.page.worklist;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.web.util.HtmlUtils;
import varanid.intake.page.worklist.TestRescue.Rescue;
import varanid.intake.quarantine.Isolation;
import varanid.intake.quarantine.Stage;
import varanid.intake.quarantine.WorkPlace;
import varanid.intake.service.Answer;
import varanid.intake.service.Browser;
import varanid.intake.service.Client;
import varanid.intake.service.ServiceTest;
import varanid.intake.worklist.Facts;
import varanid.intake.worklist.Urgency;
import varanid.intake.worklist.WorklistFacts.Room;

/** The first page, without scripts. */
@ServiceTest
class WorklistPageIT {

    private static final Pattern ANIMAL = Pattern.compile("class=\"animal\"[^>]* href=\"/animals/([0-9a-f-]{36})\"");
    private static final Pattern CHANGED = Pattern.compile("href=\"(/animals/[^\"/]*/looks/[^\"#]*)#changed\"");
    private static final Pattern NEXT = Pattern.compile("rel=\"next\" href=\"([^\"]+)\"");

    @Autowired
    TestRescue rescues;

    @ParameterizedTest
    @CsvSource({
        "/, /act-now",
        "/?only=due, /act-now?only=due",
        "/?only=overdue, /act-now?only=overdue",
        "/?only=worse, /act-now?only=worse",
        "/?only=urgent, /act-now?only=urgent",
        "/?room=00000000-0000-0001-0000-000000000001, /act-now?room=00000000-0000-0001-0000-000000000001",
        "/?view=rounds, /rounds",
        "/?view=rounds&due=true, /rounds?due=true",
        "/?view=rounds&room=00000000-0000-0002-0000-000000000002, /rounds?room=00000000-0000-0002-0000-000000000002"
    })
    void listsWhatTheApiListsInTheSameOrder(String page, String list) {
        Rescue rescue = rescues.furnished();
        List<String> expected = rescue.listed("/api/v1/worklist" + list);
        assertThat(expected).isNotEmpty();
        assertThat(animals(open(rescue, page))).containsExactlyElementsOf(expected);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"/?limit=3", "/?view=rounds&limit=3", "/?only=due&limit=1", "/?view=rounds&due=true&limit=1"})
    void itsPagesGiveEveryAnimalOnceAndInOrder(String first) {
        Rescue rescue = rescues.furnished();
        Browser browser = Browser.signedIn(rescue.organisation(), rescue.keeper());
        List<String> all = animals(open(browser, first.replaceAll("limit=\\d", "limit=200")));
        List<String> seen = new ArrayList<>();
        int pages = 0;
        Optional<String> path = Optional.of(first);
        while (path.isPresent()) {
            Answer page = open(browser, path.orElseThrow());
            seen.addAll(animals(page));
            path = next(page);
            pages++;
        }
        assertThat(seen).containsExactlyElementsOf(all);
        assertThat(pages).isGreaterThan(1);
    }

    @Test
    void saysOfEachAnimalHowSoonWhyAndWhatIsDue() {
        Rescue rescue = rescues.furnished();
        String reed = row(open(rescue, "/"), "Reed");
        assertThat(reed)
                .contains("headline of Reed")
                .contains("Worse than at the look before")
                .contains("Slow, eyes half shut in the day")
                .contains("Do the weighing")
                .contains("3 days overdue")
                .contains("North room")
                .contains("/look\"")
                .contains("#log\"");
        String mace = row(open(rescue, "/"), "Mace");
        assertThat(mace).contains("1 day overdue").contains("Due, and today is the last good day");
        assertThat(row(open(rescue, "/"), "Nobody looked")).contains("Nobody has looked it over yet");
        assertThat(row(open(rescue, "/?view=rounds"), "Quiet")).contains("Nothing due", "Next: Do the weighing, from");
    }

    @Test
    void theRoundsHavePlacesAndRoomsAsHeadingsAndWhatToRememberThere() {
        String page = open(rescues.furnished(), "/?view=rounds").body();
        assertThat(page)
                .containsSubsequence(
                        "id=\"residents-standard\"",
                        "Residents first",
                        ">South room</h3>",
                        "Quiet",
                        "id=\"newcomers-without-signs-standard\"",
                        ">In no room yet</h3>",
                        ">North room</h3>",
                        ">South room</h3>",
                        "id=\"suspect-standard\"",
                        "id=\"sick-strict\"",
                        "then shower and change");
    }

    @Test
    void theRoomsToChooseFromAreThoseWithAnimals() {
        Rescue rescue = rescues.furnished();
        String page = open(rescue, "/").body();
        assertThat(page).containsSubsequence("All rooms", ">North room</a>", ">South room</a>");
        String chosen = open(rescue, "/?room=" + TestRescue.NORTH.id()).body();
        assertThat(chosen).containsPattern("aria-current=\"true\"[^>]*>North room</a>");
        assertThat(open(rescues.create(), "/").body()).doesNotContain("North room");
    }

    @Test
    void aNameATagAndARoomThatAreMarkupAreShownAsTheyAre() {
        Rescue rescue = rescues.create();
        String hostile = "\"><script>alert(1)</script>' ${7*7} \u202Etxt.exe";
        Room room = new Room(new UUID(3, 3), "<img src=x onerror=alert(2)>");
        rescue.add(
                Facts.of(hostile).in(room).is(Urgency.STAT).with("<b>weighing</b>", rescue.today(), rescue.today()),
                "{\"tag\":\"</span><script>alert(3)</script>\"}");
        for (String path : List.of("/", "/?view=rounds", "/?room=" + room.id())) {
            String page = open(rescue, path).body();
            assertThat(page)
                    .contains(HtmlUtils.htmlEscape("<img src=x onerror=alert(2)>"))
                    .contains(
                            "&lt;script&gt;alert(1)&lt;/script&gt;", "${7*7}", "&lt;script&gt;alert(3)&lt;/script&gt;")
                    .contains("&lt;b&gt;weighing&lt;/b&gt;")
                    .doesNotContain("<script>alert", "<img src=x", "<b>weighing");
        }
    }

    @Test
    void showsNothingOfAnotherOrganisation() {
        Rescue ours = rescues.furnished();
        Rescue others = rescues.create();
        others.add(Facts.of("Theirs").in(TestRescue.NORTH).is(Urgency.STAT));
        for (String path : List.of("/", "/?view=rounds", "/?room=" + TestRescue.NORTH.id())) {
            assertThat(open(ours, path).body()).contains("Reed").doesNotContain("Theirs");
            assertThat(open(others, path).body()).contains("Theirs").doesNotContain("Reed", "South room");
        }
        assertThat(new Browser(ours.keeper().port()).get("/").header("Location"))
                .hasValueSatisfying(location -> assertThat(location).contains("/sign-in"));
    }

    @Test
    void anEmptyPageStartsTheWork() {
        Rescue rescue = rescues.create();
        assertThat(open(rescue, "/").body())
                .contains("No animal is here yet", "href=\"/animals/new\"", "Register the first animal", "--load-demo");
        Client clinician = rescue.organisation().clinician();
        assertThat(open(Browser.signedIn(rescue.organisation(), clinician), "/").body())
                .contains("No animal is here yet")
                .doesNotContain("/animals/new");
    }

    @Test
    void saysWhyNobodyIsListed() {
        Rescue rescue = rescues.create();
        rescue.add(Facts.of("Calm"));
        assertThat(open(rescue, "/").body())
                .contains("Nothing calls for you right now")
                .doesNotContain("--load-demo");
        assertThat(open(rescue, "/?only=worse").body()).contains("Nobody fits");
        assertThat(open(rescue, "/?view=rounds").body()).contains("Calm");
        Rescue left = rescues.create();
        left.keeper().post("/api/v1/animals", "{}");
        assertThat(open(left, "/").body()).contains("No animal is in care").doesNotContain("--load-demo");
    }

    @Test
    void anAnimalWithNeitherNameNorTagCanBeOpenedAndToldApart() {
        Rescue rescue = rescues.ofRecords();
        String id = rescue.keeper().post("/api/v1/animals", "{}").id();
        assertThat(open(rescue, "/").body())
                .contains("href=\"/animals/" + id + "\"")
                .contains("No name, no tag (" + id.substring(28) + ")");
    }

    @Test
    void showsTheTagBesideTheName() {
        Rescue rescue = rescues.create();
        rescue.add(Facts.of("Reed"), "{\"name\":\"Reed\",\"tag\":\"RB-7\"}");
        rescue.add(Facts.of("RB-8"), "{\"tag\":\"RB-8\"}");
        String page = open(rescue, "/?view=rounds").body();
        assertThat(page).contains("Tag RB-7").doesNotContain("Tag RB-8");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/?only=nobody",
                "/?room=here",
                "/?view=list",
                "/?due=true",
                "/?cursor=x",
                "/?onyl=due",
                "/?room="
            })
    void anAddressThatMeansNothingIsRefusedAsAPage(String path) {
        Rescue rescue = rescues.create();
        Answer answer = Browser.signedIn(rescue.organisation(), rescue.keeper()).get(path);
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.body()).contains("This cannot be taken as it is");
    }

    /** What the page says of the animal of that name. */
    @ParameterizedTest
    @ValueSource(strings = {"/", "/?view=rounds"})
    void whatGotWorseLeadsToWhatChanged(String list) {
        Rescue rescue = rescues.ofRecords();
        rescue.addWorse("Reed");
        Browser browser = Browser.signedIn(rescue.organisation(), rescue.keeper());
        Matcher link = CHANGED.matcher(open(browser, list).body());
        assertThat(link.find()).isTrue();
        String page =
                open(browser, link.group(1)).body().replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
        assertThat(page)
                .containsSubsequence(
                        "What changed",
                        "New",
                        "Mites: ",
                        "Before: ",
                        "Worse",
                        "Dull: ",
                        "Seen for the first time. It may have been there before",
                        "Open mouth breathing: open for more than a minute",
                        "Nobody could tell this time. It may still be there",
                        "Laboured breathing: sides move",
                        "No longer there when looked for",
                        "Sunken eyes: ",
                        "What is not known");
        assertThat(page.substring(page.indexOf("What changed"), page.indexOf("What is not known")))
                .as("what is the same did not change")
                .doesNotContain("Stuck shed");
    }

    @Test
    void theRoundsEnterNoRoomTwiceForOnePlace() {
        Rescue rescue = rescues.create();
        for (Room room : List.of(TestRescue.SOUTH, TestRescue.NORTH)) {
            for (Stage stage : List.of(Stage.ADULT, Stage.HATCHLING, Stage.JUVENILE)) {
                rescue.add(Facts.of(stage + " of " + room.name())
                        .in(room)
                        .at(WorkPlace.RESIDENTS, Isolation.STANDARD, stage));
            }
        }
        for (String path : List.of("/?view=rounds", "/?view=rounds&limit=4")) {
            String page = open(rescue, path).body();
            assertThat(page).containsOnlyOnce(">North room</h3>").containsOnlyOnce(">South room</h3>");
            assertThat(page)
                    .containsSubsequence(
                            ">North room</h3>",
                            "hatchling of North",
                            "juvenile of North",
                            "adult of North",
                            ">South room</h3>",
                            "hatchling of South");
        }
    }

    @Test
    void whatIsDueSeveralTimesIsToldOnceAndHowOften() {
        Rescue rescue = rescues.create();
        LocalDate today = rescue.today();
        Facts due = Facts.of("Reed");
        for (int daysAgo : List.of(9, 5, 1)) {
            due = due.with("look", today.minusDays(daysAgo), today.minusDays(daysAgo - 1));
        }
        rescue.add(due.with("weighing", today, today));
        String row = row(open(rescue, "/"), "Reed");
        assertThat(row).containsOnlyOnce("Do the look").contains("8 days overdue", "(due 3 times)");
        assertThat(row.substring(row.indexOf("Do the weighing"))).doesNotContain("times)");
    }

    @Test
    void aFirstLookHasNothingToCompareWith() {
        Rescue rescue = rescues.ofRecords();
        String animal = rescue.keeper().post("/api/v1/animals", "{}").id();
        String look = rescue.keeper()
                .post(
                        "/api/v1/animals/" + animal + "/assessments",
                        "{\"checklist\":\"varanid-intake\",\"answers\":{\"dull\":\"mild\"}}")
                .id();
        assertThat(open(rescue, "/animals/" + animal + "/looks/" + look).body()).doesNotContain("What changed");
    }

    private static String row(Answer page, String name) {
        return Stream.of(page.body().split("<li class=\"row\""))
                .skip(1)
                .filter(row -> row.contains(">" + name + "</a>"))
                .findFirst()
                .orElseThrow();
    }

    private static Answer open(Rescue rescue, String path) {
        return open(Browser.signedIn(rescue.organisation(), rescue.keeper()), path);
    }

    private static Answer open(Browser browser, String path) {
        Answer answer = browser.get(path);
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return answer;
    }

    private static List<String> animals(Answer page) {
        List<String> ids = new ArrayList<>();
        Matcher matcher = ANIMAL.matcher(page.body());
        while (matcher.find()) {
            ids.add(matcher.group(1));
        }
        return ids;
    }

    private static Optional<String> next(Answer page) {
        Matcher matcher = NEXT.matcher(page.body());
        return matcher.find() ? Optional.of(HtmlUtils.htmlUnescape(matcher.group(1))) : Optional.empty();
    }
}
