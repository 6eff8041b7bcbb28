package varanid.intake.page.checklist;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Organisations;
import varanid.intake.service.Screens;
import varanid.intake.service.Screens.Screen;
import varanid.intake.service.ServiceTest;

/** The checklist to read, in a real browser. */
@ServiceTest
class ChecklistScreensIT {

    private static final String PATH = "/checklist/varanid-intake/versions/1";

    @Autowired
    Organisations organisations;

    @ParameterizedTest
    @MethodSource("varanid.intake.service.Screens#everyWay")
    void aSectionIsLookedAt(Screens screens) {
        Organisations.Organisation rescue = organisations.create();
        try (Screen screen = screens.signIn(rescue, rescue.keeper()).open()) {
            screen.go(PATH + "?section=behaviour");
            screen.shows("checklist-section");
        }
    }

    @Test
    void theWholeIsAccessibleAndFitsAPhone() {
        Organisations.Organisation rescue = organisations.create();
        try (Screen screen = Screens.phone().signIn(rescue, rescue.keeper()).open()) {
            screen.go("/checklist");
            screen.accessible();
            screen.fits();
        }
    }

    @Test
    void aPermanentLinkLeadsToItsQuestion() {
        Organisations.Organisation rescue = organisations.create();
        try (Screen screen = Screens.phone().signIn(rescue, rescue.keeper()).open()) {
            Page page = screen.page();
            screen.go(PATH + "?section=behaviour");
            String last = (String) page.evaluate(
                    "() => [...document.querySelectorAll('article.finding .link a')].pop().getAttribute('href')");
            screen.go(last);
            assertThat(page.evaluate("() => { const box = document.querySelector(':target').getBoundingClientRect();"
                            + " return box.top >= 0 && box.top < innerHeight; }"))
                    .isEqualTo(true);
        }
    }
}
