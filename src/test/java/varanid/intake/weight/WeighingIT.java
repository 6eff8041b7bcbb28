package varanid.intake.weight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class WeighingIT {

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    @Autowired
    Weighings weighings;

    @Autowired
    WeightTrends trends;

    @Autowired
    JdbcClient jdbc;

    private Organisations.Organisation organisation;
    private Client keeper;
    private String animal;
    private Instant noon;

    @BeforeEach
    void someAnimal() {
        organisation = organisations.create();
        keeper = organisation.keeper();
        animal = newAnimal("{\"lifeStage\":\"juvenile\"}");
        noon = clock.instant().truncatedTo(ChronoUnit.DAYS).minus(Duration.ofHours(12));
    }

    // ---- keeping

    @ParameterizedTest
    @CsvSource({
        "412, g, 412",
        "3.12, kg, 3120",
        // 1 oz = 28.349523125 g and 1 lb = 453.59237 g, exactly (international yard and pound agreement, 1959)
        "1.3, [oz_av], 36.8543800625",
        "12.4, [lb_av], 5624.545388",
    })
    void keepsAWeighingAsGivenAndInGrams(String value, String unit, String grams) {
        Answer kept =
                weigh("\"value\":" + value + ",\"unit\":\"" + unit + "\",\"resolution\":0.01,\"scale\":\"kitchen\"");
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        assertThat(kept.header("Location")).contains(animal + "/weighings/" + kept.id());
        Answer again = keeper.get(kept.header("Location").orElseThrow());
        assertThat(again.json()).isEqualTo(kept.json());
        assertThat(again.json().at("/value").decimalValue()).isEqualByComparingTo(value);
        assertThat(again.text("/unit")).isEqualTo(unit);
        assertThat(again.json().at("/grams").decimalValue()).isEqualByComparingTo(grams);
        assertThat(again.text("/recordedBy")).isEqualTo(keeper.personId().toString());
        assertThat(again.json().at("/remarks")).isEmpty();
    }

    @Test
    void keepsWhatIsKnownAboutFoodAndWater() {
        Answer kept =
                weigh(on(3) + "\"value\":36,\"unit\":\"g\",\"wet\":true,\"note\":\"swam\\nbefore\",\"lastMealAt\":\""
                        + noon.minus(Duration.ofDays(5)) + '"');
        assertThat(kept.json().at("/wet").booleanValue()).isTrue();
        assertThat(kept.text("/note")).isEqualTo("swam\nbefore");
        assertThat(Instant.parse(kept.text("/lastMealAt"))).isEqualTo(noon.minus(Duration.ofDays(5)));
        assertThat(kept.text("/localDate"))
                .isEqualTo(LocalDate.ofInstant(noon.minus(Duration.ofDays(3)), ZoneOffset.UTC)
                        .toString());
        assertThat(texts(kept.json().at("/remarks"), "pointer")).containsExactly("#/resolution", "#/scale");
        assertThat(weigh("\"value\":36,\"unit\":\"g\"").json().at("/wet").booleanValue())
                .isFalse();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"value\":36 | #/unit",
                "\"unit\":\"g\" | #/value",
                "\"value\":36,\"unit\":\"stone\" | #/unit",
                "\"value\":36,\"unit\":\"oz\" | #/unit",
                "\"value\":0,\"unit\":\"g\" | #/value",
                "\"value\":0,\"unit\":\"g\",\"confirmed\":true | #/value",
                "\"value\":-3,\"unit\":\"g\" | #/value",
                "\"value\":0.4,\"unit\":\"g\" | #/value",
                "\"value\":412,\"unit\":\"kg\" | #/value",
                "\"value\":1e30,\"unit\":\"g\" | #/value",
                "\"value\":\"36\",\"unit\":\"g\" | #/value",
                "\"value\":36,\"unit\":\"g\",\"resolution\":0 | #/resolution",
                "\"value\":36,\"unit\":\"g\",\"occurredAt\":\"2999-01-01T00:00:00Z\" | #/occurredAt",
                "\"value\":36,\"unit\":\"g\",\"occurredAt\":\"yesterday\" | #/occurredAt",
                "\"value\":36,\"unit\":\"g\",\"lastMealAt\":\"2999-01-01T00:00:00Z\" | #/lastMealAt",
                "\"value\":36,\"unit\":\"g\",\"occurredAt\":\"2026-03-01T12:00:00Z\",\"lastMealAt\":\"2026-03-01T12:00:01Z\""
                        + " | #/lastMealAt",
                "\"value\":36,\"unit\":\"g\",\"wet\":\"a bit\" | #/wet",
                "\"value\":36,\"unit\":\"g\",\"scale\":\"a\\u0000b\" | #/scale",
                "\"value\":36,\"unit\":\"g\",\"note\":\"\\ud800\" | #/note",
                "\"value\":36,\"unit\":\"g\",\"weight\":3 | #/weight",
                "\"value\":36,\"unit\":\"g\",\"supersedes\":\"the last one\" | #/supersedes",
                "\"value\":36,\"unit\":\"g\",\"supersedesFirst\":0 | #/supersedesFirst",
            })
    void refusesWhatIsFaultyAndKeepsNothing(String fields, String pointer) {
        Answer refused = weigh(fields);
        assertThat(refused.status()).as(refused.body()).isEqualTo(422);
        assertThat(refused.faults()).containsExactly(pointer);
        assertThat(count("weighing")).isZero();
    }

    @Test
    void namesAllFaultsAtOnce() {
        assertThat(weigh("\"value\":0,\"unit\":\"stone\",\"wet\":1,\"lastMealAt\":\"2999-01-01T00:00:00Z\",\"mood\":2")
                        .faults())
                .containsExactlyInAnyOrder("#/value", "#/unit", "#/wet", "#/lastMealAt", "#/mood");
    }

    @Test
    void keepsAnImplausibleValueThatIsConfirmedAndAsksAboutIt() {
        Answer kept = weigh("\"value\":0.8,\"unit\":\"g\",\"resolution\":0.1,\"scale\":\"letter\",\"confirmed\":true");
        assertThat(kept.status()).isEqualTo(201);
        assertThat(texts(kept.json().at("/remarks"), "pointer")).containsExactly("#/value");
    }

    @Test
    void asksAboutAWeighingThatDiffersMuchFromTheOneBefore() {
        weigh(on(4) + kitchen("412"));
        Answer slipped = weigh(on(1) + kitchen("41"));
        assertThat(slipped.status()).isEqualTo(201);
        assertThat(slipped.text("/remarks/0/remark")).contains("41 g", "412 g", "decimal point");
        assertThat(weigh(on(0) + kitchen("410") + ",\"supersedes\":\"" + slipped.id() + '"')
                        .json()
                        .at("/remarks"))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<script>alert(1)</script> & \"quotes\" \\backslashes\\",
                "'; DROP TABLE weighing; -- ${jndi:x} {{7*7}} %s %n =1+1",
                "\u202Eright to left\u202C, \uD83E\uDD8E, \u4E2D\u6587",
            })
    void keepsHostileTextAsItIs(String text) {
        String json = JsonMapper.shared().writeValueAsString(text);
        Answer kept =
                weigh(on(0) + "\"value\":36,\"unit\":\"g\",\"resolution\":1,\"note\":" + json + ",\"scale\":" + json);
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        Answer again = keeper.get(kept.header("Location").orElseThrow());
        assertThat(again.text("/note")).isEqualTo(text);
        assertThat(again.text("/scale")).isEqualTo(text);
        assertThat(trend().text("/latest/scale")).isEqualTo(text);
    }

    @Test
    void keepsAWeighingOncePerKey() {
        String body = "{" + on(0) + kitchen("36") + "}";
        Answer first = keeper.post(animal + "/weighings", body, "Idempotency-Key", "w1");
        Answer again = keeper.post(animal + "/weighings", body, "Idempotency-Key", "w1");
        assertThat(again.id()).isEqualTo(first.id());
        assertThat(again.header("Idempotency-Replayed")).contains("true");
        assertThat(count("weighing")).isEqualTo(1);
    }

    @Test
    void listsThemInOrderOfRecordingPageByPage() {
        List<String> ids = new ArrayList<>();
        for (int day : new int[] {1, 9, 5}) {
            ids.add(weigh(on(day) + kitchen("4" + day)).id());
        }
        Answer page = keeper.get(animal + "/weighings?limit=2");
        assertThat(texts(page.json().at("/items"), "id")).containsExactly(ids.get(0), ids.get(1));
        Answer next = keeper.get(page.link("next").orElseThrow());
        assertThat(texts(next.json().at("/items"), "id")).containsExactly(ids.get(2));
        assertThat(next.link("next")).isEmpty();
    }

    // ---- correcting

    @Test
    void supersedesAWeighingWhichStaysReadableAndCountsForNothing() {
        Answer wrong = weigh(on(7) + kitchen("63"));
        Answer right = weigh(on(7) + kitchen("36") + ",\"supersedes\":\"" + wrong.id() + '"');
        assertThat(right.text("/supersedes")).isEqualTo(wrong.id());
        assertThat(keeper.get(wrong.header("Location").orElseThrow()).text("/supersededBy"))
                .isEqualTo(right.id());
        weigh(on(0) + kitchen("36"));
        JsonNode changes = trend().json().at("/changes");
        assertThat(changes).hasSize(1);
        assertThat(changes.at("/0/from/weighingId").stringValue()).isEqualTo(right.id());
        assertThat(changes.at("/0/percent").decimalValue()).isZero();

        Answer twice = weigh(kitchen("37") + ",\"supersedes\":\"" + wrong.id() + '"');
        assertThat(twice.status()).isEqualTo(409);
        assertThat(twice.isProblem("conflict")).isTrue();
        assertThat(twice.text("/detail")).contains(right.id());
    }

    @Test
    void refusesToSupersedeWhatIsNotAWeighingOfThisAnimal() {
        String other = newAnimal("{}");
        String ofAnother =
                keeper.post(other + "/weighings", "{" + kitchen("36") + "}").id();
        for (String id : List.of(ofAnother, UUID.randomUUID().toString())) {
            Answer refused = weigh(kitchen("36") + ",\"supersedes\":\"" + id + '"');
            assertThat(refused.status()).isEqualTo(422);
            assertThat(refused.faults()).containsExactly("#/supersedes");
        }
    }

    @Test
    void correctsAWeightOfTheRegistrationByItsPlace() {
        animal = newAnimal(
                "{\"weights\":[{\"value\":4120,\"unit\":\"g\",\"resolution\":1,\"scale\":\"kitchen\",\"occurredAt\":\""
                        + at(7) + "\"}]}");
        weigh(on(0) + kitchen("410"));
        assertThat(stateOf("loss-20")).isEqualTo("past");
        Answer corrected = weigh(on(7) + kitchen("412") + ",\"supersedesFirst\":0");
        assertThat(corrected.status()).as(corrected.body()).isEqualTo(201);
        assertThat(stateOf("loss-20")).isEqualTo("not-past");
        assertThat(keeper.get(animal).json().at("/weights/0/value").intValue())
                .as("the registration stays as it was")
                .isEqualTo(4120);
        assertThat(weigh(kitchen("412") + ",\"supersedesFirst\":0").status()).isEqualTo(409);
        assertThat(weigh(kitchen("412") + ",\"supersedesFirst\":1").faults()).containsExactly("#/supersedesFirst");
        assertThat(weigh(kitchen("412") + ",\"supersedesFirst\":0,\"supersedes\":\"" + corrected.id() + '"')
                        .faults())
                .containsExactly("#/supersedesFirst");
    }

    @Test
    void canNeverBeChangedOrRemoved() {
        weigh(kitchen("36"));
        for (String change :
                List.of("UPDATE weighing SET value = 1", "DELETE FROM weighing", "DELETE FROM length_measurement")) {
            assertThatExceptionOfType(DataAccessException.class)
                    .isThrownBy(() -> jdbc.sql(change).update());
        }
    }

    // ---- who may

    @Test
    void findsNothingOfAnotherOrganisation() {
        Answer kept = weigh(kitchen("36"));
        Client stranger = organisations.create().keeper();
        for (String path : List.of("/weighings", "/weighings/" + kept.id(), "/weight-trend", "/lengths")) {
            assertThat(stranger.get(animal + path).status()).as(path).isEqualTo(404);
        }
        assertThat(stranger.post(animal + "/weighings", "{" + kitchen("36") + "}")
                        .status())
                .isEqualTo(404);
        assertThat(keeper.get(newAnimal("{}") + "/weighings/" + kept.id()).status())
                .as("of another animal")
                .isEqualTo(404);
        assertThat(count("weighing")).isEqualTo(1);
    }

    @Test
    void letsAClinicianReadButNotWeigh() {
        weigh(kitchen("36"));
        Client clinician = organisation.clinician();
        assertThat(clinician
                        .post(animal + "/weighings", "{" + kitchen("36") + "}")
                        .status())
                .isEqualTo(403);
        assertThat(clinician.get(animal + "/weight-trend").status()).isEqualTo(200);
        assertThat(clinician.get(animal + "/weighings").json().at("/items")).hasSize(1);
    }

    // ---- the trend

    @Test
    void saysWhatToDoFirstForAnAnimalThatWasNeverWeighed() {
        Answer trend = trend();
        assertThat(trend.status()).isEqualTo(200);
        assertThat(trend.json().has("latest")).isFalse();
        assertThat(trend.json().at("/thresholds")).isEmpty();
        assertThat(trend.text("/whatToDo/0")).contains("Weigh it", "smallest step");
        assertThat(keeper.get("/api/v1/animals/" + UUID.randomUUID() + "/weight-trend")
                        .status())
                .isEqualTo(404);
    }

    /** 36 to 33 g on a scale of 1 g: -10.96 to -5.63 %, and of 5 g: -20.78 to +5.97 %; recomputed apart in Python. */
    @Test
    void assertsALossOnAFineScaleAndCannotTellOnACoarseOne() {
        weigh(on(14) + fed("96") + "\"value\":36,\"unit\":\"g\",\"resolution\":1,\"scale\":\"fine\"");
        weigh(on(7) + fed("96") + "\"value\":33,\"unit\":\"g\",\"resolution\":1,\"scale\":\"fine\"");
        JsonNode change = keeper.get(trendPath(7)).json().at("/changes/0");
        assertThat(change.at("/lowestPercent").doubleValue()).isCloseTo(-10.96, within(0.005));
        assertThat(change.at("/percent").doubleValue()).isCloseTo(-8.33, within(0.005));
        assertThat(change.at("/highestPercent").doubleValue()).isCloseTo(-5.63, within(0.005));
        assertThat(change.at("/text").stringValue()).contains("a loss of 8.3 %", "a loss of 11 %", "a loss of 5.6 %");
        JsonNode past = threshold(keeper.get(trendPath(7)), "loss-5-in-7-days");
        assertThat(past.at("/state").stringValue()).isEqualTo("past");
        assertThat(past.at("/urgency").stringValue()).isEqualTo("urgent");
        assertThat(past.at("/evidence/readings")).hasSize(2);

        animal = newAnimal("{\"lifeStage\":\"juvenile\"}");
        weigh(on(7) + fed("96") + "\"value\":36,\"unit\":\"g\",\"resolution\":5,\"scale\":\"coarse\"");
        weigh(on(0) + fed("96") + "\"value\":33,\"unit\":\"g\",\"resolution\":5,\"scale\":\"coarse\"");
        Answer coarse = trend();
        assertThat(coarse.json().at("/changes/0/lowestPercent").doubleValue()).isCloseTo(-20.78, within(0.005));
        assertThat(coarse.json().at("/changes/0/highestPercent").doubleValue()).isCloseTo(5.97, within(0.005));
        JsonNode open = threshold(coarse, "loss-5-in-7-days");
        assertThat(open.at("/state").stringValue()).isEqualTo("cannot-tell");
        assertThat(texts(open.at("/why"), "caveat")).containsExactly("finer-scale");
        assertThat(open.at("/why/0/text").stringValue()).contains("finer");
        assertThat(coarse.json().at("/whatToDo").toString()).contains("finer");
    }

    /**
     * Days 0, 7, … 42: 412 408 405 431 (fed) 396 393 388 g. On ln mass -.142157 % a day, -.182918 to -.105430, coverage
     * .970; recomputed in Python, ranks as scipy has them.
     */
    @Test
    void followsALosingAnimalPastOneMeal() {
        String[] grams = {"412", "408", "405", "431", "396", "393", "388"};
        for (int i = 0; i < grams.length; i++) {
            weigh(on(42 - 7 * i) + fed(i == 3 ? "20" : "96") + kitchen(grams[i]));
        }
        Answer trend = trend();
        JsonNode slope = trend.json().at("/slope");
        assertThat(slope.at("/weighingDays").intValue()).isEqualTo(7);
        assertThat(slope.at("/heavyDays").intValue()).isEqualTo(1);
        assertThat(slope.at("/percentPerDay").doubleValue()).isCloseTo(-0.142157, within(1e-6));
        assertThat(slope.at("/interval/lowestPercentPerDay").doubleValue()).isCloseTo(-0.182918, within(1e-6));
        assertThat(slope.at("/interval/highestPercentPerDay").doubleValue()).isCloseTo(-0.105430, within(1e-6));
        assertThat(slope.at("/interval/coverage").doubleValue()).isCloseTo(0.970, within(0.0005));
        assertThat(slope.at("/method").stringValue()).contains("Theil-Sen", "Kendall");
        assertThat(slope.at("/text").stringValue()).contains("a loss of 0.14 % a day", "g in a week", "3.0 of 100");
        assertThat(texts(trend.json().at("/caveats"), "caveat")).contains("slope-holds-heavy", "reference-fed");
        assertThat(texts(trend.json().at("/caveats"), "text"))
                .allSatisfy(text -> assertThat(text).isNotBlank());
        assertThat(stateOf("no-gain-in-28-days")).isEqualTo("past");
    }

    @Test
    void comparesOverAChangeOfScaleOnlyThroughADayWithBoth() {
        weigh(on(10) + fed("96") + kitchen("100"));
        weigh(on(0) + fed("96") + "\"value\":80,\"unit\":\"g\",\"resolution\":1,\"scale\":\"new\"");
        Answer apart = trend();
        assertThat(apart.json().at("/changes")).isEmpty();
        assertThat(texts(apart.json().at("/caveats"), "caveat")).contains("scale-changed");
        assertThat(texts(threshold(apart, "loss-20").at("/why"), "caveat")).containsExactly("scale-changed");

        weigh(on(10) + fed("96") + "\"value\":102,\"unit\":\"g\",\"resolution\":1,\"scale\":\"new\"");
        Answer paired = trend();
        assertThat(paired.json().at("/changes")).hasSize(2);
        assertThat(paired.json().at("/changes").toString()).contains("through-pair");
        assertThat(stateOf("loss-20")).isEqualTo("past");
    }

    @Test
    void assertsNoLossSinceItWasFedOrWet() {
        weigh(on(7) + fed("5") + kitchen("420"));
        weigh(on(0) + fed("96") + kitchen("380"));
        assertThat(stateOf("loss-5-in-7-days")).isEqualTo("cannot-tell");
        assertThat(texts(threshold(trend(), "loss-5-in-7-days").at("/why"), "caveat"))
                .containsExactly("reference-fed");

        animal = newAnimal("{\"lifeStage\":\"juvenile\"}");
        weigh(on(7) + fed("96") + kitchen("420") + ",\"wet\":true");
        weigh(on(0) + fed("96") + kitchen("380"));
        assertThat(texts(threshold(trend(), "loss-5-in-7-days").at("/why"), "caveat"))
                .containsExactly("reference-wet");
    }

    @Test
    void countsTheWeightsOfTheRegistrationAndSaysWhereEachIsFrom() {
        animal = newAnimal("{\"lifeStage\":\"adult\",\"weights\":[{\"value\":1,\"unit\":\"kg\",\"resolution\":0.001,"
                + "\"scale\":\"kitchen\",\"occurredAt\":\"" + at(8) + "\"}]}");
        Answer one = trend();
        assertThat(one.text("/answer/answer")).isEqualTo("not-observed");
        assertThat(keeper.get(trendPath(5)).text("/answer/answer")).isEqualTo("not-yet-due");
        assertThat(keeper.get(trendPath(5)).text("/answer/from/dueOn")).isEqualTo(day(1).toString());
        Answer weighed = weigh(on(0) + kitchen("1010"));
        Answer two = trend();
        assertThat(two.text("/changes/0/from/from")).isEqualTo("registration");
        assertThat(two.json().at("/changes/0/from/place").intValue()).isZero();
        assertThat(two.text("/latest/from")).isEqualTo("weighing");
        assertThat(two.text("/latest/weighingId")).isEqualTo(weighed.id());
        assertThat(texts(two.json().at("/caveats"), "caveat")).contains("food-unknown");
        assertThat(two.text("/answer/answer")).isEqualTo("measured");
        assertThat(two.json().at("/answer/from/readings")).hasSize(2);
        UUID id = UUID.fromString(animal.substring(animal.lastIndexOf('/') + 1));
        assertThat(weighings.listDates(organisation.id(), ZoneOffset.UTC, id)).containsExactly(day(8), day(0));
        assertThat(trends.find(organisation.id(), ZoneOffset.UTC, id, day(0))
                        .orElseThrow()
                        .changes())
                .hasSize(1);
        assertThat(trends.find(organisation.id(), ZoneOffset.UTC, id, day(9))).isEmpty();
    }

    @Test
    void speaksOfADayAsItWasAndRefusesTomorrow() {
        weigh(on(20) + fed("96") + kitchen("100"));
        weigh(on(13) + fed("96") + kitchen("90"));
        weigh(on(0) + fed("96") + kitchen("110"));
        assertThat(keeper.get(trendPath(13)).text("/latest/grams")).isEqualTo("90");
        assertThat(threshold(keeper.get(trendPath(13)), "loss-5-in-7-days")
                        .at("/state")
                        .stringValue())
                .isEqualTo("past");
        assertThat(keeper.get(trendPath(21)).json().has("latest")).isFalse();
        assertThat(keeper.get(trendPath(-3)).faults()).containsExactly("asOf");
        assertThat(keeper.get(animal + "/weight-trend?asOf=soon").faults()).containsExactly("asOf");
        assertThat(keeper.get(animal + "/weight-trend?until=2026-01-01").status())
                .isEqualTo(422);
    }

    @Test
    void saysWhenTheLatestWeighingIsTooOld() {
        weigh(on(24) + kitchen("100"));
        weigh(on(15) + kitchen("101"));
        assertThat(keeper.get(trendPath(1)).text("/answer/answer")).isEqualTo("measured");
        Answer trend = trend();
        assertThat(texts(trend.json().at("/caveats"), "caveat")).contains("stale");
        assertThat(trend.text("/answer/answer")).isEqualTo("not-observed");
        assertThat(trend.json().at("/whatToDo").toString()).contains("too old");
    }

    @Test
    void countsDaysInTheOrganisationsZone() {
        // 12:30 in UTC is half past midnight of the next day in Auckland, where June is winter.
        Client there = organisations.create(ZoneId.of("Pacific/Auckland")).keeper();
        String lizard = there.post("/api/v1/animals", "{}").header("Location").orElseThrow();
        Answer kept =
                there.post(lizard + "/weighings", "{\"occurredAt\":\"2026-06-01T12:30:00Z\"," + kitchen("36") + "}");
        assertThat(kept.text("/localDate")).isEqualTo("2026-06-02");
    }

    // ---- mass against length

    @Test
    void asksAQuestionAboutMassForLengthAndGivesNoVerdict() {
        // Amniote database, median hatchling of Varanus salvator: 124.45 mm, 35.91 g, 1.199 and 1.192 of the two lines.
        measure(on(2) + "\"of\":\"snout-vent\",\"value\":124.45,\"unit\":\"mm\"");
        weigh(on(0) + "\"value\":35.91,\"unit\":\"g\",\"resolution\":0.01,\"scale\":\"letter\"");
        JsonNode condition = trend().json().at("/bodyCondition");
        assertThat(condition.at("/massForLength/place").stringValue()).isEqualTo("within-genus-wide-band");
        assertThat(condition.at("/massForLength/lines/0/relativeCondition").doubleValue())
                .isCloseTo(1.199, within(0.0006));
        assertThat(condition.at("/massForLength/lines/1/relativeCondition").doubleValue())
                .isCloseTo(1.192, within(0.0006));
        assertThat(condition.at("/massForLength/question").stringValue()).contains("?");
        assertThat(condition.at("/notice").stringValue()).contains("never says");
        assertThat(condition.at("/scaledMassIndex/makesSense").booleanValue()).isFalse();
        assertThat(condition.at("/scaledMassIndex/text").stringValue()).contains("two days");
    }

    @Test
    void setsNoMassAgainstALengthThatTheAnimalHasOutgrown() {
        weigh(on(0) + kitchen("100"));
        assertThat(trend().text("/bodyCondition/whyNotMassForLength")).contains("No length");
        measure(on(40) + "\"of\":\"snout-vent\",\"value\":20,\"unit\":\"cm\"");
        measure(on(1) + "\"of\":\"tail\",\"value\":30,\"unit\":\"cm\"");
        assertThat(trend().text("/bodyCondition/whyNotMassForLength")).contains("outgrows");
        assertThat(trend().json().at("/bodyCondition").has("massForLength")).isFalse();
    }

    @Test
    void comparesAnAnimalWithItselfByTheScaledMassIndex() {
        animal = newAnimal("{\"lifeStage\":\"adult\",\"lengths\":[{\"of\":\"snout-vent\",\"value\":40,\"unit\":\"cm\","
                + "\"occurredAt\":\"" + at(60) + "\"}]}");
        weigh(on(58) + "\"value\":1,\"unit\":\"kg\",\"resolution\":0.01,\"scale\":\"shop\"");
        measure(on(1) + "\"of\":\"snout-vent\",\"value\":42,\"unit\":\"cm\"");
        weigh(on(0) + "\"value\":1,\"unit\":\"kg\",\"resolution\":0.01,\"scale\":\"shop\"");
        JsonNode index = trend().json().at("/bodyCondition/scaledMassIndex");
        assertThat(index.at("/makesSense").booleanValue()).isTrue();
        assertThat(index.at("/referenceMillimetres").doubleValue()).isEqualTo(420);
        // 1000 (420/400)^3.0381628, Peig and Green 2009; by hand
        assertThat(index.at("/points/0/indexGrams").doubleValue())
                .isCloseTo(1000 * Math.pow(1.05, 3.0381628), within(0.0001));
        assertThat(index.at("/points/1/indexGrams").doubleValue()).isEqualTo(1000);
    }

    // ---- lengths

    @Test
    void keepsALengthAsGivenAndInMillimetres() {
        Answer kept =
                measure("\"of\":\"snout-vent\",\"value\":4.9,\"unit\":\"[in_i]\",\"resolution\":0.1,\"tool\":\"tape\"");
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        // 1 in = 25.4 mm exactly
        assertThat(kept.json().at("/millimetres").decimalValue()).isEqualByComparingTo("124.46");
        assertThat(keeper.get(kept.header("Location").orElseThrow()).json()).isEqualTo(kept.json());
        assertThat(measure("\"of\":\"tail-root-width\",\"value\":18,\"unit\":\"mm\"")
                        .status())
                .isEqualTo(201);
        assertThat(measure("\"of\":\"tail\",\"value\":0,\"unit\":\"mm\"").status())
                .isEqualTo(201);
        assertThat(keeper.get(animal + "/lengths?limit=2").json().at("/items")).hasSize(2);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"value\":124,\"unit\":\"mm\" | #/of",
                "\"of\":\"girth\",\"value\":124,\"unit\":\"mm\" | #/of",
                "\"of\":\"snout-vent\",\"value\":124,\"unit\":\"cm\",\"occurredAt\":\"2999-01-01T00:00:00Z\" | #/occurredAt",
                "\"of\":\"snout-vent\",\"value\":12.4,\"unit\":\"mm\" | #/value",
                "\"of\":\"snout-vent\",\"value\":0,\"unit\":\"mm\",\"confirmed\":true | #/value",
                "\"of\":\"tail\",\"value\":-1,\"unit\":\"mm\" | #/value",
                "\"of\":\"tail\",\"value\":10,\"unit\":\"m\" | #/unit",
            })
    void refusesAFaultyLengthAndKeepsNothing(String fields, String pointer) {
        Answer refused = measure(fields);
        assertThat(refused.status()).as(refused.body()).isEqualTo(422);
        assertThat(refused.faults()).containsExactly(pointer);
        assertThat(count("length_measurement")).isZero();
    }

    @Test
    void remarksOnLengthsThatDoNotFitTogetherAndRefusesNone() {
        measure(on(0) + "\"of\":\"snout-vent\",\"value\":30,\"unit\":\"cm\"");
        measure(on(0) + "\"of\":\"tail\",\"value\":40,\"unit\":\"cm\"");
        Answer odd = measure(on(0) + "\"of\":\"total\",\"value\":80,\"unit\":\"cm\"");
        assertThat(odd.status()).isEqualTo(201);
        assertThat(odd.text("/remarks/0/remark")).contains("700 mm", "800 mm", "3 %");
        Answer right =
                measure(on(0) + "\"of\":\"total\",\"value\":71,\"unit\":\"cm\",\"supersedes\":\"" + odd.id() + '"');
        assertThat(right.json().at("/remarks")).isEmpty();
        assertThat(measure("\"of\":\"total\",\"value\":71,\"unit\":\"cm\",\"supersedes\":\"" + odd.id() + '"')
                        .status())
                .isEqualTo(409);
    }

    // ---- the checklist's own question

    @Test
    void answersTheLookAndSaysFromWhichReadings() {
        Answer before = weigh(on(14) + fed("96") + kitchen("412"));
        Answer after = weigh(on(7) + fed("96") + kitchen("360"));
        weigh(on(0) + fed("96") + kitchen("200"));
        Answer look = look(on(7) + "\"answers\":{\"ticks\":\"few\"}");
        // 100 (359.5 - 412.5) / 412.5 and 100 (360.5 - 411.5) / 411.5, outward to the checklist's tenths
        assertThat(look.json().at("/answers/weight-trend/low").decimalValue()).isEqualByComparingTo("-12.9");
        assertThat(look.json().at("/answers/weight-trend/high").decimalValue()).isEqualByComparingTo("-12.3");
        assertThat(look.json().at("/answers/weight-trend/overDays").intValue()).isEqualTo(7);
        assertThat(look.json().at("/answersFrom").propertyNames()).containsExactly("weight-trend");
        JsonNode from = look.json().at("/answersFrom/weight-trend");
        assertThat(from.at("/kind").stringValue()).isEqualTo("two-readings");
        assertThat(texts(from.at("/readings"), "weighingId")).containsExactly(before.id(), after.id());
        assertThat(from.at("/text").stringValue()).contains("412 g", "360 g", "7 days");
        assertThat(reasons(look)).contains("weight-trend:loss-10");
        assertThat(keeper.get(look.header("Location").orElseThrow()).body()).isEqualTo(look.body());
        Answer asGiven = keeper.post(
                "/api/v1/scores",
                "{\"checklist\":\"varanid-intake\",\"lifeStage\":\"juvenile\",\"answers\":"
                        + look.json().at("/answers") + "}");
        assertThat(asGiven.json().at("/score")).isEqualTo(look.json().at("/score"));
    }

    @Test
    void letsStandWhatThePersonAnswered() {
        weigh(on(14) + fed("96") + kitchen("412"));
        weigh(on(7) + fed("96") + kitchen("360"));
        for (String given : List.of("\"not-observed\"", "{\"value\":1.5,\"overDays\":7}", "\"not-yet-due\"")) {
            Answer look = look(on(7) + "\"answers\":{\"weight-trend\":" + given + "}");
            assertThat(look.json().has("answersFrom")).isFalse();
            assertThat(look.json().at("/answers/weight-trend").toString()).isEqualTo(given);
            assertThat(reasons(look)).doesNotContain("weight-trend:loss-10");
        }
    }

    @Test
    void waitsForTheSecondWeighingAndClaimsNothingWithoutAny() {
        Answer none = look(on(3) + "\"note\":\"never weighed\"");
        assertThat(none.json().has("answersFrom")).isFalse();
        weigh(on(3) + kitchen("412"));
        Answer before = look("\"occurredAt\":\"" + at(3).minusSeconds(60) + "\",\"note\":\"before it was weighed\"");
        assertThat(before.json().has("answersFrom")).isFalse();
        Answer one = look(on(1) + "\"note\":\"weighed once\"");
        assertThat(one.text("/answers/weight-trend")).isEqualTo("not-yet-due");
        assertThat(one.text("/answersFrom/weight-trend/dueOn")).isEqualTo(day(-4).toString());
        assertThat(one.text("/answersFrom/weight-trend/text")).contains("412 g", "second weighing");
    }

    @Test
    void doesNotAnswerForACoarseScale() {
        weigh(on(7) + fed("96") + "\"value\":36,\"unit\":\"g\",\"resolution\":5,\"scale\":\"coarse\"");
        weigh(on(0) + fed("96") + "\"value\":33,\"unit\":\"g\",\"resolution\":5,\"scale\":\"coarse\"");
        Answer look = look("\"note\":\"coarse\"");
        assertThat(look.json().at("/answers/weight-trend/low").decimalValue()).isEqualByComparingTo("-20.8");
        assertThat(look.json().at("/answers/weight-trend/high").decimalValue()).isEqualByComparingTo("6.0");
        JsonNode unknown = StreamSupport.stream(look.json().at("/unknowns").spliterator(), false)
                .filter(each -> each.at("/finding").stringValue().equals("weight-trend"))
                .findFirst()
                .orElseThrow();
        assertThat(unknown.at("/why").stringValue()).isEqualTo("interval");
    }

    // ---- how it is said

    private Answer weigh(String fields) {
        return keeper.post(animal + "/weighings", "{" + fields + "}");
    }

    private Answer measure(String fields) {
        return keeper.post(animal + "/lengths", "{" + fields + "}");
    }

    private Answer look(String fields) {
        Answer look =
                keeper.post(animal + "/assessments", "{\"checklist\":\"varanid-intake\",\"version\":1," + fields + "}");
        assertThat(look.status()).as(look.body()).isEqualTo(201);
        return look;
    }

    private Answer trend() {
        return keeper.get(trendPath(0));
    }

    private String trendPath(int daysAgo) {
        return animal + "/weight-trend?asOf=" + day(daysAgo);
    }

    private String stateOf(String threshold) {
        return threshold(trend(), threshold).at("/state").stringValue();
    }

    private static JsonNode threshold(Answer trend, String id) {
        assertThat(trend.status()).as(trend.body()).isEqualTo(200);
        return StreamSupport.stream(trend.json().at("/thresholds").spliterator(), false)
                .filter(each -> each.at("/threshold").stringValue().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> reasons(Answer look) {
        return StreamSupport.stream(look.json().at("/reasons").spliterator(), false)
                .map(each ->
                        each.path("id").asString("") + ":" + each.path("level").asString(""))
                .toList();
    }

    private String newAnimal(String fields) {
        return keeper.post("/api/v1/animals", fields).header("Location").orElseThrow();
    }

    /** Noon of yesterday, so many days earlier. */
    private Instant at(int daysAgo) {
        return noon.minus(Duration.ofDays(daysAgo));
    }

    private LocalDate day(int daysAgo) {
        return LocalDate.ofInstant(at(daysAgo), ZoneOffset.UTC);
    }

    private String on(int daysAgo) {
        weighedAt = at(daysAgo);
        return "\"occurredAt\":\"" + weighedAt + "\",";
    }

    private Instant weighedAt = Instant.EPOCH;

    /** So many hours before what {@link #on} said last. */
    private String fed(String hours) {
        return "\"lastMealAt\":\"" + weighedAt.minus(Duration.ofHours(Long.parseLong(hours))) + "\",";
    }

    private static String kitchen(String grams) {
        return "\"value\":" + grams + ",\"unit\":\"g\",\"resolution\":1,\"scale\":\"kitchen\"";
    }

    private static List<String> texts(JsonNode list, String field) {
        return StreamSupport.stream(list.spliterator(), false)
                .map(each -> each.get(field).stringValue())
                .toList();
    }

    private int count(String table) {
        return jdbc.sql("SELECT count(*) FROM " + table + " WHERE organisation_id = ?")
                .param(organisation.id())
                .query(Integer.class)
                .single();
    }
}
