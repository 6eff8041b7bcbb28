package varanid.intake.page.look;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Page.GetByRoleOptions;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.BoundingBox;
import java.io.IOException;
import java.nio.file.Files;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;
import varanid.intake.service.Screens;
import varanid.intake.service.Screens.Screen;
import varanid.intake.service.ServiceTest;

/** The look and the decision in a real browser. */
@ServiceTest
class LookScreensIT {

    private static final Pattern DECISION = Pattern.compile(".*/looks/[0-9a-f-]{36}$");

    @Autowired
    Organisations organisations;

    private record Kept(Organisation rescue, Client keeper, String animal) {

        String look() {
            return "/animals/" + animal + "/look";
        }

        Answer looks() {
            return keeper.get("/api/v1/animals/" + animal + "/assessments");
        }

        int howMany() {
            return looks().json().at("/items").size();
        }

        Screen open(Screens screens) {
            Screen screen = screens.signIn(rescue, keeper).open();
            screen.go(look());
            return screen;
        }
    }

    private Kept newcomer() {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        String animal = keeper.post("/api/v1/animals", """
                        {"name": "Pebble", "species": {"name": "Varanus salvator"}, "lifeStage": "adult",
                         "declaredOrigin": "C"}""").text("/id");
        return new Kept(rescue, keeper, animal);
    }

    /** One finger on the screen. */
    private static final class Finger {

        private final Page page;
        private final long began = System.nanoTime();
        private int taps;

        Finger(Page page) {
            this.page = page;
        }

        void tap(Locator target) {
            taps++;
            target.tap();
        }

        void tapButton(String name) {
            tap(page.locator("button:visible")
                    .filter(new Locator.FilterOptions().setHasText(name))
                    .first());
        }

        void tapAnswer(String finding, String level) {
            tap(page.locator("#q-" + finding + " label:has([value='" + level + "'])"));
        }

        String step() {
            return String.valueOf(page.locator(".step:not(.hidden)").first().getAttribute("data-step"));
        }

        /** Moves the page so that every question of the step has been on the screen. */
        void readAll() {
            for (Locator question :
                    page.locator(".step:not(.hidden) .question legend").all()) {
                question.scrollIntoViewIfNeeded();
                page.evaluate("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame("
                        + "() => setTimeout(done))))");
            }
        }

        String measured() {
            return taps + " taps, "
                    + Duration.ofNanos(System.nanoTime() - began).toMillis() + " ms";
        }

        void report(String what) {
            System.out.println("LOOK " + what + ": " + measured());
        }
    }

    @Test
    void aHealthyAnimalTakesAtMostTwentyTaps() {
        Kept kept = newcomer();
        try (Screen screen = kept.open(Screens.phone())) {
            Finger finger = new Finger(screen.page());
            while (!DECISION.matcher(screen.page().url()).matches()) {
                String step = finger.step();
                if (step.equals("conditions")) {
                    finger.tapButton("None of these hold");
                } else if (step.equals("end")) {
                    finger.tapButton("It is too early");
                    screen.shows("look-end");
                    finger.tapButton("Keep this look");
                    screen.page().waitForURL(DECISION);
                } else if (step.startsWith("section.")) {
                    finger.readAll();
                    if (step.equals("section.body-condition")) {
                        finger.tapAnswer("body-condition", "fit");
                        screen.shows("look-section");
                    }
                    finger.tapButton("None of these signs");
                } else {
                    finger.tapAnswer(step, "absent");
                }
                assertThat(finger.taps).isLessThanOrEqualTo(20);
            }
            finger.report("healthy");
            screen.shows("decision-well");
        }
        assertThat(kept.howMany()).isEqualTo(1);
        assertThat(kept.looks().text("/items/0/urgency")).isEqualTo("routine");
    }

    @Test
    void anEmergencyIsSettledWithinFiveTaps() {
        Kept kept = newcomer();
        try (Screen screen = kept.open(Screens.phone())) {
            Finger finger = new Finger(screen.page());
            finger.tapButton("None of these hold");
            finger.tapAnswer("laboured-breathing", "marked");
            assertThat(screen.page().locator(".result")).containsText("vet now");
            screen.shows("look-emergency");
            finger.tapButton("Finish");
            screen.page().waitForURL(DECISION);
            finger.report("emergency");
            assertThat(finger.taps).isLessThanOrEqualTo(5);
            assertThat(screen.page().locator(".soon .big")).containsText("vet now");
            screen.shows("decision-emergency");
        }
        assertThat(kept.looks().text("/items/0/urgency")).isEqualTo("stat");
    }

    /** From the empty form of a new animal; the figures are for people, in the output and beside the pictures. */
    @Test
    void theWayFromANewAnimalToItsDecisionIsMeasured() throws IOException {
        List<String> journeys = new ArrayList<>();
        journeys.add(journey("healthy", "routine", Map.of()));
        journeys.add(journey("sick", "urgent", Map.of("nasal-discharge", "clear")));
        journeys.add(journey("emergency", "stat", Map.of("laboured-breathing", "marked")));
        journeys.forEach(System.out::println);
        Files.createDirectories(Screens.PICTURES);
        Files.write(Screens.PICTURES.resolve("journeys.txt"), journeys);
    }

    private String journey(String name, String urgency, Map<String, String> signs) {
        Organisation rescue = organisations.create();
        try (Screen screen = Screens.phone().signIn(rescue, rescue.keeper()).open()) {
            screen.go("/animals/new");
            Page page = screen.page();
            Finger finger = new Finger(page);
            finger.tap(page.locator("form[action='/animals/new'] button[type=submit]"));
            page.waitForURL(Pattern.compile(".*/look$"));
            assertThat(page.locator(".result")).containsText("could still become");
            while (!DECISION.matcher(page.url()).matches()) {
                String step = finger.step();
                if (step.equals("conditions")) {
                    finger.tapButton("None of these hold");
                } else if (step.equals("end")) {
                    finger.tapButton("It is too early");
                    finger.tapButton("Keep this look");
                    page.waitForURL(DECISION);
                } else if (step.startsWith("section.")) {
                    finger.readAll();
                    signs.forEach((finding, level) -> {
                        if (page.locator(".step:not(.hidden) #q-" + finding).count() > 0) {
                            finger.tapAnswer(finding, level);
                        }
                    });
                    if (step.equals("section.body-condition")) {
                        finger.tapAnswer("body-condition", "fit");
                    }
                    finger.tapButton("None of these signs");
                } else {
                    finger.tapAnswer(step, signs.getOrDefault(step, "absent"));
                    if (signs.containsKey(step)) {
                        assertThat(page.locator(".result")).containsText("Settled");
                        finger.tapButton("Finish");
                        page.waitForURL(DECISION);
                    }
                }
            }
            assertThat(page.locator(".soon." + urgency)).isVisible();
            return "JOURNEY from the new animal to the decision, " + name + ": " + finger.measured();
        }
    }

    @Test
    void everyEmergencyIsThreeTapsAway() {
        Kept kept = newcomer();
        try (Screen screen = kept.open(Screens.phone())) {
            Finger finger = new Finger(screen.page());
            finger.tap(screen.page().locator("summary"));
            screen.shows("look-emergencies");
            finger.tapButton("No reaction at all");
            assertThat(screen.page().locator(".result")).containsText("vet now");
            finger.tapButton("Finish");
            screen.page().waitForURL(DECISION);
            finger.report("another emergency");
            assertThat(finger.taps).isLessThanOrEqualTo(5);
        }
        assertThat(kept.looks().text("/items/0/urgency")).isEqualTo("stat");
    }

    @Test
    void noneOfTheseAnswersNothingThatWasNotOnTheScreen() {
        Kept kept = newcomer();
        try (Screen screen = kept.open(Screens.phone())) {
            Finger finger = new Finger(screen.page());
            while (!finger.step().equals("section.skin")) {
                finger.tapButton("Next");
            }
            finger.tapButton("None of these signs");
            assertThat(screen.page().locator(".step:not(.hidden) .none")).containsText("Look at this one too");
            assertThat(screen.page().locator("[data-step='section.skin'] :checked"))
                    .hasCount(0);
            finger.readAll();
            finger.tapButton("None of these signs");
            assertThat(screen.page().locator("[data-step='section.skin'] [type=radio]:checked"))
                    .not()
                    .hasCount(0);
        }
    }

    @Test
    void theResultIsNeverMoreReassuringThanWhatIsKnown() {
        Kept kept = newcomer();
        try (Screen screen = kept.open(Screens.phone())) {
            Locator result = screen.page().locator(".result");
            assertThat(result).containsText("could still become: vet now");
            assertThat(result).containsText("6 questions that must be seen are open");
            screen.context().setOffline(true);
            Finger finger = new Finger(screen.page());
            finger.tapButton("None of these hold");
            assertThat(result).not().containsText("This result is old");
            finger.tapAnswer("laboured-breathing", "marked");
            assertThat(result).containsText("This result is old");
            assertThat(result.locator("button")).isHidden();
            screen.context().setOffline(false);
            assertThat(result).containsText("Settled: vet now");
            assertThat(result).not().containsText("This result is old");
        }
    }

    @Test
    void aNumberThatCannotBeReadIsSaidToBeMissingInTheResult() {
        Kept kept = newcomer();
        try (Screen screen = kept.open(Screens.desk())) {
            Page page = screen.page();
            page.locator("button:visible")
                    .filter(new Locator.FilterOptions().setHasText("Whole sheet"))
                    .click();
            page.locator("[name='number.days-food-refused']").fill("some");
            page.locator("[name='number.days-food-refused']").blur();
            assertThat(page.locator(".result")).containsText("cannot be read");
            page.locator("#q-days-food-refused label:has([value='not-observed'])")
                    .click();
            assertThat(page.locator("[name='number.days-food-refused']")).hasValue("");
            assertThat(page.locator(".result")).not().containsText("cannot be read");
        }
    }

    @Test
    void aCutConnectionLosesNothingAndTheLookIsKeptOnce() {
        Kept kept = newcomer();
        try (Screen screen = kept.open(Screens.phone())) {
            Finger finger = new Finger(screen.page());
            finger.tapButton("None of these hold");
            finger.tapAnswer("laboured-breathing", "marked");
            // "Could be vet now" is said from the first; that it is enough, only once the answer is counted.
            assertThat(screen.page().locator(".result button")).isVisible();
            screen.context().setOffline(true);
            finger.tapButton("Finish");
            assertThat(screen.page().locator(".unsent")).containsText("not sent yet");
            screen.shows("look-unsent");
            assertThat(kept.howMany()).isZero();
            screen.context().setOffline(false);
            screen.page().waitForURL(DECISION);
        }
        assertThat(kept.howMany()).isEqualTo(1);
    }

    @Test
    void aReplyThatIsLostOnTheWayDoesNotMakeASecondLook() {
        Kept kept = newcomer();
        try (Screen screen = kept.open(Screens.phone())) {
            int[] sent = {0};
            screen.context().route("**/assessments", route -> {
                sent[0]++;
                if (sent[0] == 1) {
                    route.fetch();
                    route.abort();
                } else {
                    route.resume();
                }
            });
            Finger finger = new Finger(screen.page());
            finger.tapButton("None of these hold");
            finger.tapAnswer("laboured-breathing", "marked");
            finger.tapButton("Finish");
            assertThat(screen.page().locator(".unsent")).isVisible();
            assertThat(kept.howMany()).isEqualTo(1);
            screen.reopen();
            screen.go(kept.look());
            screen.page().waitForURL(DECISION);
            assertThat(sent[0]).isEqualTo(2);
            assertThat(screen.page()
                            .evaluate(
                                    "() => Object.keys(localStorage).filter(k => k.includes('" + kept.animal() + "'))"))
                    .as("nothing is left in the browser")
                    .isEqualTo(List.of());
        }
        assertThat(kept.howMany()).isEqualTo(1);
    }

    @Test
    void anUnsentLookStaysOnTheDeviceForItsPersonAndForNobodyElse() {
        Kept kept = newcomer();
        try (Screen screen = kept.open(Screens.phone())) {
            screen.context().route("**/assessments", Route::abort);
            Finger finger = new Finger(screen.page());
            finger.tapButton("None of these hold");
            finger.tapAnswer("laboured-breathing", "marked");
            finger.tapButton("Finish");
            assertThat(screen.page().locator(".unsent")).isVisible();
            screen.go("/animals");
            assertThat(screen.page().locator("#unsent")).containsText("This device holds a look of");
            screen.shows("animals-unsent");
            finger.tapButton("Sign out");
            assertThat(screen.page().locator("#unsent")).containsText("This device holds 1 look of A person");
            screen.shows("sign-in-unsent");

            screen.context().unroute("**/assessments");
            screen.signIn(kept.rescue(), kept.rescue().keeper());
            screen.go("/animals");
            assertThat(screen.page().locator("#unsent")).isHidden();
            screen.go(kept.look());
            assertThat(screen.page().locator(".result")).containsText("could still become");
            assertThat(screen.page().locator(".unsent")).isHidden();
            assertThat(screen.page().locator(".draft")).hasCount(0);
            assertThat(screen.page().locator(".question :checked")).hasCount(0);
            assertThat(kept.howMany()).isZero();

            screen.signIn(kept.rescue(), kept.keeper());
            screen.go("/animals");
            screen.page().locator("#unsent a").click();
            screen.page().waitForURL(DECISION);
            screen.go("/animals");
            assertThat(screen.page().locator("#unsent")).isHidden();
        }
        assertThat(kept.looks().text("/items/0/observerId"))
                .isEqualTo(kept.keeper().personId().toString());
        assertThat(kept.howMany()).isEqualTo(1);
    }

    @Test
    void anOldCopyIsRemovedOnlyAfterItsPersonWasTold() {
        Kept kept = newcomer();
        String own = "varanid.look." + kept.keeper().personId() + "." + kept.animal();
        String others = "varanid.look." + kept.animal() + "." + kept.animal();
        try (Screen screen = kept.open(Screens.phone())) {
            Page page = screen.page();
            page.evaluate("""
                    shelves => shelves.forEach(shelf => localStorage.setItem(shelf, JSON.stringify(
                        {key: 'k', began: new Date(Date.now() - 31 * 86400000).toISOString(), fields: []})))""", List.of(own, others));
            screen.go("/animals");
            assertThat(page.locator("#unsent")).containsText("never finished. It is older than 30 days");
            screen.go("/animals");
            assertThat(page.locator("#unsent")).containsText("older than 30 days");
            page.evaluate("""
                    shelf => localStorage.setItem(shelf, JSON.stringify(
                        {...JSON.parse(localStorage.getItem(shelf)), told: Date.now() - 2 * 86400000}))""", own);
            screen.go("/animals");
            assertThat(page.locator("#unsent")).isHidden();
            assertThat(page.evaluate("() => Object.keys(localStorage)")).isEqualTo(List.of(others));
        }
    }

    @Test
    void aCopyOfALookThatTheServiceHasIsRemovedWhenItsDecisionIsSeen() {
        Kept kept = newcomer();
        try (Screen screen = kept.open(Screens.phone())) {
            screen.context().route("**/assessments", route -> {
                route.fetch();
                route.abort();
            });
            Finger finger = new Finger(screen.page());
            finger.tapButton("None of these hold");
            finger.tapAnswer("laboured-breathing", "marked");
            finger.tapButton("Finish");
            assertThat(screen.page().locator(".unsent")).isVisible();
            screen.go("/animals/" + kept.animal() + "/looks/" + kept.looks().text("/items/0/id"));
            assertThat(screen.page().locator("#unsent")).isHidden();
            assertThat(screen.page().evaluate("() => Object.keys(localStorage)"))
                    .isEqualTo(List.of());
        }
    }

    @Test
    void aClosedTabIsOpenedAgainWhereItWas() {
        Kept kept = newcomer();
        try (Screen screen = kept.open(Screens.phone())) {
            Finger finger = new Finger(screen.page());
            finger.tapButton("None of these hold");
            finger.tapAnswer("laboured-breathing", "mild");
            finger.tapAnswer("open-mouth-breathing", "absent");
            String step = finger.step();
            screen.reopen();
            screen.go(kept.look());
            Finger again = new Finger(screen.page());
            assertThat(again.step()).isEqualTo(step);
            assertThat(screen.page().locator(".draft")).containsText("You began this look");
            assertThat(screen.page().locator("#q-laboured-breathing [value=mild]"))
                    .isChecked();
            screen.shows("look-again-there");
            again.tapButton("Throw them away");
            assertThat(screen.page().locator(".draft")).hasCount(0);
            assertThat(screen.page().locator("#q-laboured-breathing :checked")).hasCount(0);
        }
    }

    @Test
    void aFaultIsShownByTheServiceAndTheLookCanBeSentAgain() {
        Kept kept = newcomer();
        try (Screen screen = kept.open(Screens.phone())) {
            Finger finger = new Finger(screen.page());
            screen.page().locator("[name=skin]").fill("84");
            finger.tapButton("None of these hold");
            finger.tapAnswer("laboured-breathing", "marked");
            finger.tapButton("Finish");
            assertThat(screen.page().locator(".faults")).containsText("Fahrenheit");
            assertThat(screen.page().locator("#q-laboured-breathing [value=marked]"))
                    .isChecked();
            screen.shows("look-faulty");
            screen.page().locator("[name=skin-unit]").selectOption("[degF]");
            finger.tapButton("Keep this look");
            screen.page().waitForURL(DECISION);
        }
        assertThat(kept.howMany()).isEqualTo(1);
    }

    @Test
    void aLookIsCorrectedFromItsDecision() {
        Kept kept = newcomer();
        try (Screen screen = kept.open(Screens.phone())) {
            Page page = screen.page();
            Finger finger = new Finger(page);
            finger.tapButton("None of these hold");
            finger.tapAnswer("laboured-breathing", "marked");
            finger.tapButton("Finish");
            page.waitForURL(DECISION);
            String first = page.url();
            finger.tap(page.getByText("Correct this look"));
            assertThat(page.locator("#q-laboured-breathing [value=marked]")).isChecked();
            finger.tapAnswer("laboured-breathing", "absent");
            finger.tapButton("Keep the correction");
            assertThat(page.locator("#reason")).containsText("Say why it is corrected");
            screen.shows("look-correction");
            assertThat(page.locator("#reason-text")).isFocused();
            page.locator("#reason-text").fill("It only yawned.");
            finger.tapButton("Keep the correction");
            page.waitForURL(url -> DECISION.matcher(url).matches() && !url.equals(first));
            assertThat(page.locator(".decision")).containsText("This look corrects an earlier one");
            assertThat(page.locator(".decision")).containsText("It only yawned.");
            screen.shows("decision-correction");
            page.navigate(first);
            assertThat(page.locator(".faults")).containsText("This look was corrected.");
            screen.shows("decision-corrected");
            assertThat(page.evaluate("() => Object.keys(localStorage)")).isEqualTo(List.of());
        }
        assertThat(kept.howMany()).isEqualTo(2);
    }

    @Test
    void theKeyboardAloneIsEnough() {
        Kept kept = newcomer();
        try (Screen screen = kept.open(Screens.desk())) {
            Page page = screen.page();
            tabTo(page, "None of these hold");
            page.keyboard().press("Enter");
            assertThat(page.locator("#q-laboured-breathing")).isFocused();
            page.keyboard().press("Tab");
            page.keyboard().press("ArrowDown");
            assertThat(page.locator("#q-laboured-breathing")).isVisible();
            page.keyboard().press("ArrowDown");
            page.keyboard().press("ArrowUp");
            page.keyboard().press("ArrowDown");
            assertThat(page.locator("#q-laboured-breathing [value=marked]")).isChecked();
            assertThat(page.getByRole(AriaRole.BUTTON, new GetByRoleOptions().setName("Finish")))
                    .isVisible();
            tabTo(page, "Finish");
            page.keyboard().press("Enter");
            page.waitForURL(DECISION);
        }
    }

    static Stream<Screens> screens() {
        return Stream.concat(Screens.all(), Stream.of(Screens.phone().largeText()));
    }

    @ParameterizedTest
    @MethodSource("screens")
    void everyPageIsLookedAt(Screens screens) {
        Kept kept = newcomer();
        try (Screen screen = kept.open(screens)) {
            Page page = screen.page();
            assertThat(page.locator(".result")).containsText("could still become");
            screen.shows("look-conditions");
            page.locator("button:visible")
                    .filter(new Locator.FilterOptions().setHasText("None of these hold"))
                    .click();
            screen.shows("look-must-see");
            assertThat(sizeOf(page, "not-observed"))
                    .as("could not see is as easy as no")
                    .isEqualTo(sizeOf(page, "absent"));
            page.locator("button:visible")
                    .filter(new Locator.FilterOptions().setHasText("Whole sheet"))
                    .click();
            assertThat(page.locator("#q-bad-consignment")).isVisible();
            screen.shows("look-whole");
            page.locator("#q-sunken-eyes label:has([value=mild])").click();
            page.locator("button.finish").click();
            page.waitForURL(DECISION);
            screen.shows("decision");
        }
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#all")
    void aCorrectionIsLookedAt(Screens screens) {
        Kept kept = newcomer();
        try (Screen screen = kept.open(screens.withoutScripts())) {
            Page page = screen.page();
            page.locator("#q-bleeding label:has([value=running])").click();
            page.locator("button.finish").click();
            page.waitForURL(DECISION);
            page.getByText("Correct this look").click();
            assertThat(page.locator("#q-bleeding [value=running]")).isChecked();
            page.locator("#q-bleeding label:has([value=absent])").click();
            page.locator("#reason-text").fill("It was berry juice.");
            screen.shows("correction");
            page.locator("button.finish").click();
            page.waitForURL(DECISION);
            screen.shows("decision-correction");
            assertThat(page.locator(".decision")).containsText("It was berry juice.");
        }
    }

    @Test
    void withoutAScriptTheWholeSheetLeadsToTheDecision() {
        Kept kept = newcomer();
        try (Screen screen = kept.open(Screens.phone().withoutScripts())) {
            Page page = screen.page();
            page.locator("#q-bleeding label:has([value=running])").click();
            page.locator("[name='none.skin']").check();
            screen.shows("look");
            page.locator("button.finish").click();
            page.waitForURL(DECISION);
            screen.shows("decision");
            assertThat(page.locator(".soon .big")).containsText("vet now");
        }
        assertThat(kept.howMany()).isEqualTo(1);
    }

    /** Of the whole target of an answer to the question shown, in pixels: its width; no lower than a finger needs. */
    private static String sizeOf(Page page, String answer) {
        Locator label = page.locator(".step:not(.hidden) label:has([value='" + answer + "'])");
        BoundingBox box = label.boundingBox();
        assertThat(box.height).isGreaterThanOrEqualTo(44);
        return String.valueOf(Math.round(box.width));
    }

    /** Goes by Tab until the button of that name has the focus. */
    private static void tabTo(Page page, String name) {
        for (int tries = 0; tries < 60; tries++) {
            page.keyboard().press("Tab");
            if ((Boolean) page.evaluate("name => document.activeElement.innerText.trim() === name", name)) {
                return;
            }
        }
        throw new AssertionError("the Tab key does not reach " + name);
    }
}
