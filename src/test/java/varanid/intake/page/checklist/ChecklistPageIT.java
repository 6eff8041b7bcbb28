package varanid.intake.page.checklist;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.web.util.HtmlUtils;
import tools.jackson.databind.JsonNode;
import varanid.intake.service.Answer;
import varanid.intake.service.Browser;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** The checklist to read, without scripts, against the file as the API gives it. */
@ServiceTest
class ChecklistPageIT {

    private static final String PATH = "/checklist/varanid-intake/versions/1";

    @Autowired
    Organisations organisations;

    private Browser browser;
    private JsonNode file;

    @BeforeEach
    void signIn() {
        Organisations.Organisation rescue = organisations.create();
        browser = Browser.signedIn(rescue, rescue.keeper());
        file = rescue.keeper()
                .get("/api/v1/checklists/varanid-intake/versions/1")
                .json();
    }

    @Test
    void theNewestVersionIsShownFirst() {
        assertThat(withoutProof(open("/checklist"))).isEqualTo(withoutProof(open(PATH)));
    }

    @Test
    void everyTextOfTheFileIsOnThePage() {
        String page = HtmlUtils.htmlUnescape(open(PATH));
        Set<String> missing = new TreeSet<>();
        texts("", file, page, missing);
        assertThat(missing).isEmpty();
    }

    /** All that the file says in words, whatever it is about. */
    private static void texts(String at, JsonNode node, String page, Set<String> missing) {
        if (node.isObject()) {
            node.properties().forEach(each -> texts(each.getKey(), each.getValue(), page, missing));
        } else if (node.isArray()) {
            node.forEach(each -> texts(at, each, page, missing));
        } else if (node.isString()
                // The code systems of outcomes, and how soon, which is said in words.
                && !Set.of("system", "status", "within", "lookAgainAfter", "atLatest", "after", "direction", "kind")
                        .contains(at)
                && !page.contains(node.stringValue())) {
            missing.add(at + ": " + node.stringValue());
        }
    }

    @Test
    void everyAnswerHasItsPointsItsLeastUrgencyItsReasonAndItsSources() {
        String page = HtmlUtils.htmlUnescape(open(PATH));
        int levels = 0;
        for (JsonNode finding : file.get("findings")) {
            String shown = between(page, "id=\"finding-" + finding.at("/id").asString() + "\"", "</article>");
            assertThat(shown).contains(finding.at("/question").asString());
            assertThat(shown.contains("<b>Must be seen</b>"))
                    .as(finding.at("/id").asString())
                    .isEqualTo(finding.at("/mustSee").asBoolean(false));
            sources(finding.path("source"), shown);
            sources(finding.path("pointsSource"), shown);
            for (JsonNode level : finding.get("levels")) {
                levels++;
                String own = between(
                        shown,
                        "id=\"finding-" + finding.at("/id").asString() + "-"
                                + level.at("/code").asString() + "\"",
                        "</li>");
                BigDecimal points = level.get("points").decimalValue();
                assertThat(own)
                        .contains(level.at("/label").asString())
                        .contains(">"
                                + (points.signum() == 0
                                        ? "0"
                                        : points.stripTrailingZeros().toPlainString()) + " point");
                if (level.has("floor")) {
                    assertThat(own)
                            .contains(
                                    outcome(level.at("/floor").asString()),
                                    level.at("/floorReason").asString());
                    sources(level.get("floorSource"), own);
                } else {
                    assertThat(own).doesNotContain("At least");
                }
                assertThat(own.contains("Keep strictly apart")).isEqualTo(level.has("isolate"));
            }
        }
        assertThat(levels).isGreaterThan(file.get("findings").size());
    }

    @Test
    void everyLimitIsThere() {
        String page = HtmlUtils.htmlUnescape(open(PATH));
        limits(between(page, "id=\"total\"", "</section>"), file.at("/total/bands"));
        for (JsonNode section : file.get("sections")) {
            limits(
                    between(page, "<h2 id=\"section-" + section.at("/id").asString() + "\"", "<article"),
                    section.get("bands"));
        }
        for (JsonNode finding : file.get("findings")) {
            String shown = between(page, "id=\"finding-" + finding.at("/id").asString() + "\"", "</article>");
            for (JsonNode band : finding.path("bands")) {
                for (JsonNode start : band.get("from")) {
                    assertThat(shown)
                            .contains("from " + start.get("at").decimalValue().toPlainString() + ": ");
                }
            }
        }
    }

    private void limits(String shown, JsonNode bands) {
        for (JsonNode band : bands) {
            assertThat(shown)
                    .contains("From " + band.get("from").asString() + " points on: "
                            + outcome(band.at("/outcome").asString()));
        }
        if (bands.isEmpty()) {
            assertThat(shown).contains("no limits of its own");
        }
    }

    @Test
    void everyConditionRuleAndSourceHasAnAnchor() {
        String page = open(PATH);
        for (String kind :
                List.of("findings", "conditions", "combinations", "advice", "sources", "families", "sections")) {
            for (JsonNode each : file.get(kind)) {
                String one = kind.equals("families")
                        ? "family"
                        : kind.equals("advice") ? kind : kind.substring(0, kind.length() - 1);
                assertThat(page)
                        .containsOnlyOnce("id=\"" + one + "-" + each.at("/id").asString() + "\"");
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"''", "?section=respiratory", "?section=exposure"})
    void noLinkWithinThePageLeadsNowhere(String query) {
        String page = open(PATH + query);
        Matcher links = Pattern.compile("href=\"#([^\"]+)\"").matcher(page);
        Set<String> dead = new TreeSet<>();
        int seen = 0;
        while (links.find()) {
            seen++;
            if (!page.contains("id=\"" + links.group(1) + "\"")) {
                dead.add(links.group(1));
            }
        }
        assertThat(dead).isEmpty();
        assertThat(seen).isGreaterThan(10);
        String whole = open(PATH);
        links = Pattern.compile("href=\"" + PATH + "#([^\"]+)\"").matcher(page);
        while (links.find()) {
            assertThat(whole).contains("id=\"" + links.group(1) + "\"");
        }
    }

    @Test
    void oneSectionCanBeReadAlone() {
        String page = open(PATH + "?section=skin");
        for (JsonNode finding : file.get("findings")) {
            assertThat(page.contains("id=\"finding-" + finding.at("/id").asString() + "\""))
                    .isEqualTo(finding.at("/section").asString().equals("skin"));
        }
        assertThat(page).contains("Show the whole checklist", "id=\"source-X\"").doesNotContain("id=\"conditions\"");
    }

    @Test
    void whatMasksAndExcusesAFindingStandsWithIt() {
        String page = HtmlUtils.htmlUnescape(open(PATH));
        String dull = between(page, "id=\"finding-dull\"", "</article>");
        // From the file: cold excuses mild dullness for an hour, photographs mask it, a journey excuses it meanwhile as
        // urgent.
        assertThat(dull)
                .contains("Too cold to judge", "look again after 1 hour")
                .contains("Judged from pictures only")
                .contains("until then at least: vet within 7 days");
        String heat = between(page, "id=\"finding-heat-collapse\"", "</article>");
        assertThat(heat).contains("Must be seen when: Too hot");
        assertThat(between(page, "id=\"combination-young-two-signs\"", "</article>"))
                .contains("Only for Life stage: Hatchling, Juvenile", "2 of these:", "vet within 24 hours");
    }

    @Test
    void whatIsNotThereIsNotFound() {
        assertThat(browser.get("/checklist/varanid-intake/versions/99").status())
                .isEqualTo(404);
        assertThat(browser.get("/checklist/nothing/versions/1").status()).isEqualTo(404);
        assertThat(browser.get(PATH + "?section=nothing").status()).isEqualTo(422);
        assertThat(new Browser(organisations.nobody().port()).get(PATH).header("Location"))
                .hasValueSatisfying(location -> assertThat(location).contains("/sign-in"));
    }

    private static void sources(JsonNode ids, String shown) {
        ids.forEach(id -> assertThat(shown).contains("href=\"#source-" + id.stringValue() + "\""));
    }

    private String outcome(String code) {
        for (JsonNode outcome : file.get("outcomes")) {
            if (outcome.at("/code").asString().equals(code)) {
                return outcome.at("/label").asString();
            }
        }
        throw new AssertionError("no outcome " + code);
    }

    private static String between(String page, String from, String to) {
        int start = page.indexOf(from);
        assertThat(start).as(from).isNotNegative();
        return page.substring(start, page.indexOf(to, start));
    }

    /** The proof that a form is ours is another in each reply. */
    private static String withoutProof(String page) {
        return page.replaceAll("name=\"(_csrf|csrf)\" (value|content)=\"[^\"]+\"", "");
    }

    private String open(String path) {
        Answer answer = browser.get(path);
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return answer.body();
    }
}
