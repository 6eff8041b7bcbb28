package varanid.intake.page.record;

import static org.assertj.core.api.Assertions.assertThat;
import static varanid.intake.service.Screens.exactly;
import static varanid.intake.service.Screens.named;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.FilePayload;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.ImageIO;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;
import varanid.intake.service.Screens;
import varanid.intake.service.Screens.Screen;
import varanid.intake.service.ServiceTest;

/** What is kept beside looks and diary, in a real browser. What is typed is invented. */
@ServiceTest
class RecordScreensIT {

    private static final String HOSTILE = "<script>alert(1)</script> & \"crickets\"";

    @Autowired
    Organisations organisations;

    private static String newAnimal(Client keeper) {
        return keeper.post("/api/v1/animals", "{\"name\": \"Pebble\", \"species\": {\"name\": \"Varanus salvator\"}}")
                .json()
                .path("id")
                .stringValue();
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void aLengthIsKeptAndAskedAboutWhereNoMonitorIsThatLong(Screens screens) {
        Organisation rescue = organisations.create();
        String animal = "/animals/" + newAnimal(rescue.keeper());
        try (Screen screen = screens.signIn(rescue, rescue.keeper()).open()) {
            Page page = screen.page();
            screen.go(animal);
            page.getByRole(AriaRole.LINK, named("Measure its length")).click();
            page.waitForURL("**/lengths");
            screen.go(animal + "/lengths");
            assertThat(page.locator("main").innerText()).contains("Nothing was measured yet.");
            page.getByLabel("What was measured", exactly()).selectOption("Tip of the snout to the vent");
            page.getByLabel("How long").fill("312");
            page.getByLabel("Smallest step of the ruler or tape").fill("1");
            page.getByLabel("What it was measured with").fill(HOSTILE);
            page.getByRole(AriaRole.BUTTON, named("Keep the length")).click();
            page.locator(".faults").waitFor();
            assertThat(page.getByLabel("How long").inputValue()).isEqualTo("312");
            screen.shows("lengths-faulty");
            page.getByLabel("Unit").selectOption("mm");
            page.getByRole(AriaRole.BUTTON, named("Keep the length")).click();
            page.getByRole(AriaRole.STATUS).waitFor();
            assertThat(page.locator("main").innerText()).contains("Tip of the snout to the vent", "312 mm");
            screen.shows("lengths");
        }
        JsonNode kept = rescue.keeper()
                .get("/api/v1" + animal + "/lengths")
                .json()
                .get("items")
                .get(0);
        assertThat(kept.get("of").asString()).isEqualTo("snout-vent");
        assertThat(kept.get("tool").asString()).isEqualTo(HOSTILE);
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void aSampleIsKeptAndItsResultToo(Screens screens) {
        Organisation rescue = organisations.create();
        String animal = "/animals/" + newAnimal(rescue.keeper());
        try (Screen screen = screens.signIn(rescue, rescue.keeper()).open()) {
            Page page = screen.page();
            screen.go(animal + "/samples");
            screen.shows("samples-empty");
            page.getByLabel("What was taken", exactly()).selectOption("stool");
            page.getByLabel("How many hours old it was when it was taken").fill("2");
            page.getByLabel("flotation", exactly()).check();
            page.getByRole(AriaRole.BUTTON, named("Keep the sample")).click();
            page.getByRole(AriaRole.STATUS).waitFor();
            assertThat(page.locator("main").innerText()).contains("Stool,").contains("no result yet");
            screen.shows("samples");

            page.getByText("Write down a result").click();
            page.getByRole(AriaRole.BUTTON, named("Sent")).click();
            page.getByRole(AriaRole.STATUS).waitFor();
            page.getByLabel("Examined by", exactly()).selectOption("flotation");
            page.getByLabel("What it came to").selectOption("positive");
            page.getByRole(AriaRole.BUTTON, named("Keep the result")).click();
            page.locator(".faults").waitFor();
            screen.shows("sample-result-faulty");
            page.getByLabel("What was found", exactly()).selectOption("coccidia");
            page.getByRole(AriaRole.BUTTON, named("Keep the result")).click();
            page.getByRole(AriaRole.STATUS).waitFor();
            screen.shows("sample-result");
            screen.go(animal + "/samples");
            assertThat(page.locator("main").innerText()).contains("something found");

            page.getByText("Write down a result").click();
            page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Correct"))
                    .click();
            page.waitForURL("**#correct");
            screen.go(page.url().replaceFirst(".*(/animals/)", "$1"));
            screen.shows("sample-result-correct");
            assertThat(page.getByLabel("What was found", exactly()).inputValue())
                    .isEqualTo("coccidia");
            page.getByLabel("What was found", exactly()).selectOption("pinworm");
            page.getByLabel("The words of the report").fill(HOSTILE);
            page.getByRole(AriaRole.BUTTON, named("Keep the result")).click();
            page.getByRole(AriaRole.STATUS).waitFor();
            assertThat(page.locator("main").innerText()).contains("pinworm").doesNotContain("coccidia,");
        }
        JsonNode kept = rescue.keeper()
                .get("/api/v1" + animal + "/samples")
                .json()
                .path("items")
                .path(0);
        assertThat(kept.path("outcome").stringValue()).isEqualTo("positive");
        assertThat(kept.path("results")).hasSize(2);
        assertThat(kept.path("results").path(1).path("supersedes").stringValue())
                .isEqualTo(kept.path("results").path(0).path("id").stringValue());
        assertThat(kept.path("results").path(1).path("report").stringValue()).isEqualTo(HOSTILE);
        assertThat(kept.path("freshHours").intValue()).isEqualTo(2);
        assertThat(kept.path("steps").path(0).path("step").stringValue()).isEqualTo("sent");
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void whatIsMeasuredIsKeptAndAnUnlikelyNumberIsAskedAbout(Screens screens) {
        Organisation rescue = organisations.create();
        String animal = "/animals/" + newAnimal(rescue.keeper());
        try (Screen screen = screens.signIn(rescue, rescue.keeper()).open()) {
            Page page = screen.page();
            screen.go(animal + "/surroundings");
            screen.shows("surroundings");
            page.getByLabel("Under the lamp", exactly()).fill("250");
            page.getByRole(AriaRole.BUTTON, named("Keep what was measured")).click();
            page.locator(".faults").waitFor();
            screen.shows("surroundings-faulty");
            assertThat(page.getByLabel("Under the lamp", exactly()).inputValue())
                    .isEqualTo("250");
            page.getByLabel("Under the lamp", exactly()).fill("48,5");
            page.getByText("How it is set up").first().click();
            page.getByLabel("What is on the ground?").selectOption("paper");
            page.getByRole(AriaRole.BUTTON, named("Keep what was measured")).click();
            page.getByRole(AriaRole.STATUS).waitFor();
            screen.shows("surroundings-kept");
        }
        JsonNode kept = rescue.keeper()
                .get("/api/v1" + animal + "/enclosure-readings")
                .json()
                .path("items");
        assertThat(kept.size()).isEqualTo(1);
        JsonNode warmth = kept.path(0).path("temperatures").path("basking-surface");
        assertThat(warmth.path("value").decimalValue()).isEqualByComparingTo("48.5");
        assertThat(warmth.path("unit").stringValue()).isEqualTo("Cel");
        assertThat(kept.path(0).path("facts").path("substrate").stringValue()).isEqualTo("paper");
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void whatPeopleTellIsKeptInTheirWords(Screens screens) {
        Organisation rescue = organisations.create();
        String animal = "/animals/" + newAnimal(rescue.keeper());
        try (Screen screen = screens.signIn(rescue, rescue.keeper()).open()) {
            Page page = screen.page();
            screen.go(animal + "/told");
            screen.shows("told");
            page.getByLabel("Who says so").fill("the previous keeper, by phone");
            page.locator("summary", new Page.LocatorOptions().setHasText("Last meal"))
                    .click();
            page.getByLabel("What it ate").fill(HOSTILE);
            page.locator("[name='lastMeal.daysAgo']").fill("3");
            page.locator("summary", new Page.LocatorOptions().setHasText("Questions to the vet"))
                    .click();
            page.getByLabel("Questions", exactly()).fill("Is it a female?\nDoes it need a mate?");
            screen.shows("told-open");
            page.getByRole(AriaRole.BUTTON, named("Keep what was told")).click();
            page.getByRole(AriaRole.STATUS).waitFor();
            assertThat(page.locator("main").innerText()).contains(HOSTILE).contains("Is it a female?");
            screen.shows("told-kept");
        }
        JsonNode kept = rescue.keeper()
                .get("/api/v1" + animal + "/reports")
                .json()
                .path("items")
                .path(0)
                .path("told");
        assertThat(kept.path("lastMeal").path("daysAgo").intValue()).isEqualTo(3);
        assertThat(kept.path("lastMeal").path("food").stringValue()).isEqualTo(HOSTILE);
        assertThat(kept.path("questions").size()).isEqualTo(2);
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void aPictureIsKeptShownAndWithdrawn(Screens screens) throws IOException {
        Organisation rescue = organisations.create();
        String animal = "/animals/" + newAnimal(rescue.keeper());
        try (Screen screen = screens.signIn(rescue, rescue.keeper()).open()) {
            Page page = screen.page();
            screen.go(animal + "/pictures");
            page.getByRole(AriaRole.BUTTON, named("Keep it")).click();
            page.locator(".faults").waitFor();
            screen.shows("pictures-faulty");
            page.getByLabel("File", exactly()).setInputFiles(new FilePayload("mites.png", "image/png", picture()));
            page.getByLabel("What it shows").fill(HOSTILE);
            page.getByRole(AriaRole.BUTTON, named("Keep it")).click();
            page.getByRole(AriaRole.STATUS).waitFor();
            page.getByRole(AriaRole.IMG, named(HOSTILE)).waitFor();
            assertThat(page.evaluate("() => document.querySelector('.pictures img').decode().then(() => 'drawn')"))
                    .isEqualTo("drawn");
            screen.shows("pictures");
            page.locator(".pictures summary").click();
            page.getByLabel("Why", exactly()).fill("another animal");
            page.getByRole(AriaRole.BUTTON, named("Withdraw it")).click();
            page.getByText("Nothing was kept yet.").waitFor();
        }
    }

    private static byte[] picture() throws IOException {
        BufferedImage image = new BufferedImage(400, 300, BufferedImage.TYPE_INT_RGB);
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        ImageIO.write(image, "png", png);
        return png.toByteArray();
    }
}
