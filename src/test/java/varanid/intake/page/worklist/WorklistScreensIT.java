package varanid.intake.page.worklist;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Media;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.page.worklist.TestRescue.Rescue;
import varanid.intake.service.Screens;
import varanid.intake.service.Screens.Screen;
import varanid.intake.service.ServiceTest;
import varanid.intake.worklist.Facts;
import varanid.intake.worklist.Urgency;
import varanid.intake.worklist.WorklistFacts.Room;

/** The first page in a real browser. */
@ServiceTest
class WorklistScreensIT {

    @Autowired
    TestRescue rescues;

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void everyListIsLookedAt(Screens screens) {
        Rescue rescue = rescues.furnished();
        try (Screen screen =
                screens.signIn(rescue.organisation(), rescue.keeper()).open()) {
            screen.go("/");
            screen.shows("worklist-act-now");
            screen.go("/?view=rounds&limit=5");
            screen.shows("worklist-rounds");
            screen.go("/?only=overdue&room=" + TestRescue.SOUTH.id());
            screen.shows("worklist-nobody-fits");
        }
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void theFirstMorningIsLookedAt(Screens screens) {
        Rescue rescue = rescues.create();
        try (Screen screen =
                screens.signIn(rescue.organisation(), rescue.keeper()).open()) {
            screen.go("/");
            screen.shows("worklist-empty");
        }
    }

    @Test
    void longNamesWithoutBlanksStayWithinAPhone() {
        Rescue rescue = rescues.create();
        String name = "N".repeat(120);
        rescue.add(
                Facts.of(name)
                        .in(new Room(rescue.organisation().id(), "R".repeat(120)))
                        .is(Urgency.STAT)
                        .with("weighing", rescue.today(), rescue.today()),
                "{\"tag\":\"" + "T".repeat(60) + "\"}");
        try (Screen screen =
                Screens.phone().signIn(rescue.organisation(), rescue.keeper()).open()) {
            screen.go("/");
            screen.shows("worklist-long");
            screen.go("/?view=rounds");
            screen.shows("worklist-rounds-long");
        }
    }

    @Test
    void theKeyboardReachesFiltersSectionsAndEveryAnimalInOrder() {
        Rescue rescue = rescues.furnished();
        try (Screen screen =
                Screens.desk().signIn(rescue.organisation(), rescue.keeper()).open()) {
            screen.go("/");
            Page page = screen.page();
            List<String> reached = new ArrayList<>();
            page.getByText("Show only some").focus();
            page.keyboard().press("Enter");
            for (int i = 0; i < 60; i++) {
                page.keyboard().press("Tab");
                reached.add(focused(page));
            }
            assertThat(reached)
                    .containsSubsequence(
                            "Overdue",
                            "North room",
                            "Skip to: Vet within 24 hours",
                            "Reed",
                            "Look at Reed",
                            "Log for Reed",
                            "Sedge",
                            "Mace");
            page.getByText("Skip to: Worse than at the look before").focus();
            page.keyboard().press("Enter");
            page.keyboard().press("Tab");
            page.keyboard().press("Tab");
            assertThat(page.evaluate("() => document.activeElement.innerText")).isEqualTo("Flag");
        }
    }

    /** WCAG 2.2, 2.1.4: a single key does something only while a part of the list has the focus. */
    @Test
    void jAndKMoveThroughTheAnimalsWhileTheFocusIsAmongThem() {
        Rescue rescue = rescues.furnished();
        try (Screen screen =
                Screens.desk().signIn(rescue.organisation(), rescue.keeper()).open()) {
            screen.go("/");
            Page page = screen.page();
            assertThat(page.getByText("j goes to the next one").isVisible()).isTrue();
            page.keyboard().press("j");
            assertThat(focused(page)).as("nothing of the list has the focus").isNotEqualTo("Reed");
            page.locator(".animal").first().focus();
            page.keyboard().press("j");
            assertThat(focused(page)).isEqualTo("Sedge");
            page.keyboard().press("Control+j");
            page.keyboard().press("Shift+J");
            assertThat(focused(page)).isEqualTo("Sedge");
            page.keyboard().press("Tab");
            page.keyboard().press("k");
            assertThat(focused(page)).as("from a button of a row").isEqualTo("Reed");
            page.keyboard().press("k");
            assertThat(focused(page)).as("there is none before the first").isEqualTo("Reed");
            page.keyboard().press("Enter");
            page.waitForURL("**/animals/*");
        }
    }

    @Test
    void withoutScriptsNoKeysArePromised() {
        Rescue rescue = rescues.furnished();
        try (Screen screen = Screens.desk()
                .withoutScripts()
                .signIn(rescue.organisation(), rescue.keeper())
                .open()) {
            screen.go("/");
            assertThat(screen.page().locator("#keys").isVisible()).isFalse();
        }
    }

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void whatGotWorseIsOneStepAway(Screens screens) {
        Rescue rescue = rescues.ofRecords();
        rescue.addWorse("Reed");
        try (Screen screen =
                screens.signIn(rescue.organisation(), rescue.keeper()).open()) {
            screen.go("/");
            screen.shows("worklist-worse");
            screen.page().locator(".got-worse a").click();
            screen.page().waitForURL("**/looks/*#changed");
            screen.shows("decision-changed");
        }
    }

    private static String focused(Page page) {
        return String.valueOf(page.evaluate("() => document.activeElement.textContent.trim()"));
    }

    @Test
    void onPaperThereAreBoxesToTickAndNoButtons() throws Exception {
        Rescue rescue = rescues.furnished();
        try (Screen screen =
                Screens.desk().signIn(rescue.organisation(), rescue.keeper()).open()) {
            Page page = screen.page();
            page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
            screen.go("/?view=rounds");
            assertThat(page.locator(".links, .narrow, .views, .button, .keys").all())
                    .isNotEmpty()
                    .allSatisfy(each -> assertThat(each.isVisible()).isFalse());
            assertThat(page.evaluate("() => [...document.querySelectorAll('.who, .tasks li')].every("
                            + "each => getComputedStyle(each, '::before').borderTopStyle === 'solid')"))
                    .isEqualTo(true);
            Files.createDirectories(Screens.PICTURES);
            Files.write(
                    Screens.PICTURES.resolve("worklist-rounds.pdf"),
                    page.pdf(new Page.PdfOptions().setPreferCSSPageSize(true)));
            screen.go("/");
            Files.write(
                    Screens.PICTURES.resolve("worklist-act-now.pdf"),
                    page.pdf(new Page.PdfOptions().setPreferCSSPageSize(true)));
        }
    }
}
