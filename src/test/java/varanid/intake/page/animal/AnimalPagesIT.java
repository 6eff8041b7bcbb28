package varanid.intake.page.animal;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.Browser;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;
import varanid.intake.service.ServiceTest;

/** Registering an animal, what is known of it, a line in its diary, and handing it over. */
@ServiceTest
class AnimalPagesIT {

    private static final String HOSTILE = "<script>alert(1)</script> & \"Reed\" \u202E\u05E9\u05DC\u05D5\u05DD";

    @Autowired
    Organisations organisations;

    @Test
    void whatIsWrongIsNamedAndWhatWasTypedStays() {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        Browser browser = Browser.signedIn(rescue, keeper);
        Answer refused = browser.submit(
                "/animals/new",
                "/animals/new",
                Map.of("name", HOSTILE, "weight", "heavy", "unit", "kg", "arrivedOn", "tomorrow"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body())
                .contains("&lt;script&gt;alert(1)&lt;/script&gt;")
                .doesNotContain("<script>alert(1)")
                .contains("value=\"heavy\"")
                .contains("href=\"#weight\"")
                .contains("href=\"#arrivedOn\"");
        assertThat(keeper.get("/api/v1/animals").json().get("items")).isEmpty();
    }

    @Test
    void whatIsSentTwiceIsKeptOnce() {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        Browser browser = Browser.signedIn(rescue, keeper);
        Map<String, String> form = Map.of("name", "Once", "key", "a-key-of-this-form");
        String first = browser.submit("/animals/new", "/animals/new", form)
                .header("Location")
                .orElseThrow();
        assertThat(browser.submit("/animals/new", "/animals/new", form).header("Location"))
                .contains(first);
        assertThat(keeper.get("/api/v1/animals").json().get("items")).hasSize(1);
        String animal = first.replace("/look", "");
        Map<String, String> entry = Map.of("ate", "all", "key", "another");
        assertThat(browser.submit(animal, animal + "/diary", entry).status()).isEqualTo(303);
        assertThat(browser.submit(animal, animal + "/diary", entry).status()).isEqualTo(303);
        assertThat(keeper.get("/api/v1" + animal + "/diary").json().get("items"))
                .hasSize(1);
    }

    @Test
    void othersSeeAndKeepNothingOfIt() {
        Organisation rescue = organisations.create();
        String animal =
                rescue.keeper().post("/api/v1/animals", "{\"name\":\"Mine\"}").id();
        Organisation other = organisations.create();
        Browser browser = Browser.signedIn(other, other.keeper());
        assertThat(browser.get("/animals").body()).doesNotContain("Mine");
        for (String path : new String[] {"", "/hand-over"}) {
            assertThat(browser.get("/animals/" + animal + path).status()).isEqualTo(404);
        }
        assertThat(browser.submit("/animals/new", "/animals/" + animal + "/diary", Map.of("ate", "all"))
                        .status())
                .isEqualTo(404);
        assertThat(browser.submit(
                                "/animals/new",
                                "/animals/" + animal + "/hand-over",
                                Map.of("kind", "summary", "recipient", "me"))
                        .status())
                .isEqualTo(404);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            nullValues = "none",
            value = {
                "none                 | 14 Mar 2026  | Cel",
                "en-US,en;q=0.9       | Mar 14, 2026 | [degF]",
                "de                   | 14 Mar 2026  | Cel",
                "de-AT,de;q=0.9       | 14 Mar 2026  | Cel",
                "xx-ZZ;q=0.5, *;q=0.1 | 14 Mar 2026  | Cel"
            })
    void datesAndUnitsAreThoseOfTheReadersRegion(@Nullable String languages, String date, String degrees) {
        Organisation rescue = organisations.create();
        String animal = rescue.keeper()
                .post("/api/v1/animals", "{\"name\": \"Pebble\", \"arrivedOn\": \"2026-03-14\"}")
                .json()
                .path("id")
                .stringValue();
        Browser browser = Browser.signedIn(rescue, rescue.keeper());
        String[] headers = languages == null ? new String[0] : new String[] {"Accept-Language", languages};
        assertThat(browser.send("GET", "/animals", BodyPublishers.noBody(), headers)
                        .body())
                .contains(date)
                .contains("lang=\"en\"");
        String sheet = browser.send("GET", "/animals/" + animal + "/surroundings", BodyPublishers.noBody(), headers)
                .body();
        assertThat(sheet.contains("value=\"[degF]\" selected")).isEqualTo(degrees.equals("[degF]"));
    }
}
