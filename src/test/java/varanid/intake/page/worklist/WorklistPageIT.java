package varanid.intake.page.worklist;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;
import varanid.intake.service.Answer;
import varanid.intake.service.Browser;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;
import varanid.intake.service.Screens;
import varanid.intake.service.Screens.Screen;
import varanid.intake.service.ServiceTest;

/** The morning page, as HTML and in a real browser. */
@ServiceTest
class WorklistPageIT {

    private static final String HOSTILE = "<script>alert(1)</script> & \"Reed\" \u202E\u05E9\u05DC\u05D5\u05DD";

    @Autowired
    Organisations organisations;

    static Stream<Screens> screens() {
        return Stream.concat(
                Screens.all(),
                Stream.of(Screens.phone().largeText(), Screens.phone().withoutScripts()));
    }

    private static String animal(Client keeper, String name, String answers) {
        Answer made = keeper.post(
                "/api/v1/animals",
                tools.jackson.databind.node.JsonNodeFactory.instance
                        .objectNode()
                        .put("name", name)
                        .toString());
        assertThat(made.status()).isEqualTo(201);
        if (!answers.isEmpty()) {
            assertThat(keeper.post(
                                    "/api/v1/animals/" + made.id() + "/assessments",
                                    "{\"checklist\":\"varanid-intake\",\"answers\":" + answers + "}")
                            .status())
                    .isEqualTo(201);
        }
        return made.id();
    }

    private static void threeAnimals(Client keeper) {
        animal(keeper, "Calm", "{\"laboured-breathing\":\"absent\",\"mites\":\"few\"}");
        animal(keeper, "Gasping", "{\"open-mouth-breathing\":\"constant\"}");
        animal(keeper, HOSTILE, "");
    }

    @Test
    void hasTheOrderOfTheInterfaceAndItsFilters() {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        threeAnimals(keeper);
        Browser browser = Browser.signedIn(rescue, keeper);
        for (String query : List.of("", "?only=urgent", "?only=worse", "?only=due", "?limit=1")) {
            String body = browser.get("/" + query).body();
            int from = 0;
            for (JsonNode item :
                    keeper.get("/api/v1/worklist/act-now" + query).json().get("items")) {
                int at = body.indexOf("/animals/" + item.at("/animal/id").stringValue() + "\"", from);
                assertThat(at).as(query + item).isPositive();
                from = at;
            }
        }
        assertThat(browser.get("/?limit=1").body()).contains("cursor=");
        assertThat(browser.get("/?only=nothing").status()).isEqualTo(422);
        assertThat(browser.get("/").body())
                .contains("&lt;script&gt;alert(1)&lt;/script&gt;")
                .doesNotContain("<script>alert(1)");
    }

    @Test
    void showsNothingOfOthersAndStartsTheWorkWhereThereIsNone() {
        threeAnimals(organisations.create().keeper());
        Organisation empty = organisations.create();
        Browser browser = Browser.signedIn(empty, empty.keeper());
        assertThat(browser.get("/").body())
                .doesNotContain("Gasping")
                .contains("/animals/new")
                .contains("Register the animal");
        assertThat(browser.get("/rounds").body()).doesNotContain("Gasping").contains("Nobody is in care");
    }

    @ParameterizedTest
    @MethodSource("screens")
    void everyScreenIsLookedAt(Screens screens) {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        try (Screen screen = screens.signIn(rescue, keeper).open()) {
            screen.go("/");
            screen.shows("worklist-empty");
            threeAnimals(keeper);
            screen.go("/");
            Locator first = screen.page().locator(".entries > li").first();
            assertThat(first.innerText()).contains("Gasping").contains("needs a vet now");
            screen.shows("worklist");
            screen.go("/rounds");
            screen.shows("rounds");
        }
    }
}
