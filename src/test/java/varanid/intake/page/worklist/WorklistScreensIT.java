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
                reached.add(String.valueOf(page.evaluate("() => document.activeElement.textContent.trim()")));
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

    @Test
    void onPaperThereAreBoxesToTickAndNoButtons() throws Exception {
        Rescue rescue = rescues.furnished();
        try (Screen screen =
                Screens.desk().signIn(rescue.organisation(), rescue.keeper()).open()) {
            Page page = screen.page();
            page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
            screen.go("/?view=rounds");
            assertThat(page.locator(".links, .narrow, .views, .button").all())
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
