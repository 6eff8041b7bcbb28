package varanid.intake.page.animal;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.web.util.HtmlUtils;
import tools.jackson.databind.JsonNode;
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
    void aMistypedWeightIsCorrectedWithItsTimeAndWhatElseWasKnownOfIt() {
        Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        Browser browser = Browser.signedIn(rescue, keeper);
        String animal = "/animals/"
                + keeper.post(
                                "/api/v1/animals",
                                "{\"weights\": [{\"value\": 38, \"unit\": \"g\", \"occurredAt\": \"2026-03-01T08:00:00Z\"}]}")
                        .id();
        String mistyped = keeper.post(
                        "/api/v1" + animal + "/weighings",
                        "{\"value\": 40, \"unit\": \"g\", \"scale\": \"kitchen\", \"resolution\": 1, \"wet\": true, \"note\": \"<i>calm</i>\","
                                + " \"occurredAt\": \"2026-03-08T08:00:00Z\", \"lastMealAt\": \"2026-03-05T08:00:00Z\"}")
                .id();
        String form = weighingForm(browser.get(animal + "?weighing=" + mistyped));
        assertThat(form)
                .contains("Correct a weight")
                .contains("value=\"kitchen\"")
                .contains("checked");
        Map<String, String> sent = new HashMap<>(fields(form));
        sent.put("weight", "400");
        sent.putAll(Map.of("unit", "g", "wet", "true"));
        String next = browser.submit(animal, animal + "/weighings", sent)
                .header("Location")
                .orElseThrow();
        assertThat(next).startsWith(animal + "?kept=weighing&weighed=");
        JsonNode corrected = weighing(keeper, animal, 1);
        assertThat(corrected.get("supersedes").asString()).isEqualTo(mistyped);
        assertThat(corrected.get("value").intValue()).isEqualTo(400);
        assertThat(corrected.get("occurredAt").asString()).isEqualTo("2026-03-08T08:00:00Z");
        assertThat(corrected.get("lastMealAt").asString()).isEqualTo("2026-03-05T08:00:00Z");
        assertThat(corrected.get("note").asString()).isEqualTo("<i>calm</i>");
        assertThat(corrected.get("wet").booleanValue()).isTrue();
        assertThat(browser.get(next).body()).contains("400 g").doesNotContain("40 g<");
        assertThat(browser.get(animal + "?weighing=" + mistyped).status()).isEqualTo(404);

        // The one of the registration has no id of its own; the page knows it by its place.
        String first = browser.get(animal).body().replaceFirst("(?s).*\\?weighing=([^#]*)#weigh.*", "$1");
        Map<String, String> again = new HashMap<>(fields(weighingForm(browser.get(animal + "?weighing=" + first))));
        again.putAll(Map.of("unit", "g", "weight", "380"));
        assertThat(browser.submit(animal, animal + "/weighings", again).status())
                .isEqualTo(303);
        assertThat(weighing(keeper, animal, 2).get("supersedesFirst").intValue())
                .isZero();
        assertThat(browser.get(animal).body()).contains("380 g").doesNotContain("38 g");
    }

    private static JsonNode weighing(Client keeper, String animal, int place) {
        return keeper.get("/api/v1" + animal + "/weighings").json().get("items").get(place);
    }

    private static String weighingForm(Answer page) {
        return page.body().replaceFirst("(?s).*<details id=\"weigh\"(.*?)</form>.*", "$1");
    }

    /** What a browser would send back of it, its boxes and its choices left out. */
    private static Map<String, String> fields(String form) {
        return Pattern.compile("<input [^>]*>")
                .matcher(form)
                .results()
                .map(MatchResult::group)
                .filter(input -> !input.contains("checkbox") && !input.contains("_csrf"))
                .filter(input -> input.contains(" value=\""))
                .collect(Collectors.toMap(
                        input -> input.replaceFirst("(?s).* name=\"([^\"]*)\".*", "$1"),
                        input -> HtmlUtils.htmlUnescape(input.replaceFirst("(?s).* value=\"([^\"]*)\".*", "$1"))));
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
