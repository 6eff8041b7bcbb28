package varanid.intake.enclosure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class EnclosureIT {

    private static final String JUVENILE_SALVATOR =
            "{\"lifeStage\":\"juvenile\",\"species\":{\"name\":\"Varanus salvator\"}}";

    @Autowired
    Organisations organisations;

    @Autowired
    EnclosureReadings publicReadings;

    @Autowired
    JdbcClient jdbc;

    private Organisations.Organisation organisation;
    private Client keeper;
    private String animal;
    private String readings;

    @BeforeEach
    void someAnimal() {
        organisation = organisations.create();
        keeper = organisation.keeper();
        animal = newAnimal(keeper, JUVENILE_SALVATOR);
        readings = animal + "/enclosure-readings";
    }

    // ---- keeping

    @Test
    void keepsAReadingAsItWasTypedWithCelsiusBeside() {
        Answer kept = keeper.post(readings, """
                {"temperatures":{"basking-surface":{"value":120,"unit":"[degF]"},"cool-air":{"value":28.5,"unit":"Cel"}},
                 "humidity":{"percent":65,"at":{"value":82,"unit":"[degF]"}},"uvIndexAtBack":2.4,
                 "facts":{"lamp":"flood","lamp-guarded":"yes"},
                 "sizes":{"lamp-distance":{"value":12,"unit":"[in_i]"}},"note":"at noon"}""");
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        assertThat(kept.header("Location")).contains(readings + "/" + kept.id());
        Answer again = keeper.get(readings + "/" + kept.id());
        assertThat(again.json()).isEqualTo(kept.json());
        assertThat(number(again, "/temperatures/basking-surface/value")).isEqualByComparingTo("120");
        assertThat(again.text("/temperatures/basking-surface/unit")).isEqualTo("[degF]");
        // (120 - 32) * 5 / 9
        assertThat(number(again, "/temperatures/basking-surface/celsius")).isEqualByComparingTo("48.8889");
        assertThat(number(again, "/humidity/percent")).isEqualByComparingTo("65");
        assertThat(again.text("/humidity/at/unit")).isEqualTo("[degF]");
        // 12 x 25.4
        assertThat(number(again, "/sizes/lamp-distance/millimetres")).isEqualByComparingTo("304.8");
        assertThat(again.text("/facts/lamp")).isEqualTo("flood");
        assertThat(again.text("/note")).isEqualTo("at noon");
        assertThat(again.text("/recordedBy")).isEqualTo(keeper.personId().toString());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"temperatures\":{\"warm-air\":{\"value\":88,\"unit\":\"Cel\"}}     | #/temperatures/warm-air/value",
                "\"temperatures\":{\"warm-air\":{\"value\":30,\"unit\":\"[degF]\"}}  | #/temperatures/warm-air/value",
                "\"temperatures\":{\"basking-surface\":{\"value\":95,\"unit\":\"Cel\"}} | #/temperatures/basking-surface/value",
                "\"temperatures\":{\"skin\":{\"value\":-40,\"unit\":\"Cel\"}}        | #/temperatures/skin/value",
                "\"temperatures\":{\"skin\":{\"value\":1e400,\"unit\":\"Cel\"}}      | #/temperatures/skin/value",
                "\"temperatures\":{\"skin\":{\"value\":30.123,\"unit\":\"Cel\"}}     | #/temperatures/skin/value",
                "\"temperatures\":{\"skin\":{\"value\":\"30\",\"unit\":\"Cel\"}}     | #/temperatures/skin/value",
                "\"temperatures\":{\"skin\":{\"value\":30}}                          | #/temperatures/skin/unit",
                "\"temperatures\":{\"skin\":{\"value\":300,\"unit\":\"K\"}}          | #/temperatures/skin/unit",
                "\"temperatures\":{\"skin\":30}                                      | #/temperatures/skin",
                "\"temperatures\":{\"skin\":null}                                    | #/temperatures/skin",
                "\"temperatures\":{\"gradient\":{\"value\":3,\"unit\":\"Cel\"}}      | #/temperatures/gradient",
                "\"temperatures\":{\"humidity\":{\"value\":30,\"unit\":\"Cel\"}}     | #/temperatures/humidity",
                "\"temperatures\":{\"moon/~\":{\"value\":30,\"unit\":\"Cel\"}}       | #/temperatures/moon~1~0",
                "\"temperatures\":[30]                                               | #/temperatures",
                "\"humidity\":65                                                     | #/humidity",
                "\"humidity\":{\"percent\":65}                                       | #/humidity/at",
                "\"humidity\":{\"percent\":0,\"at\":{\"value\":28,\"unit\":\"Cel\"}} | #/humidity/percent",
                "\"humidity\":{\"percent\":101,\"at\":{\"value\":28,\"unit\":\"Cel\"}} | #/humidity/percent",
                "\"humidity\":{\"at\":{\"value\":28,\"unit\":\"Cel\"}}               | #/humidity/percent",
                "\"humidity\":{\"percent\":65,\"at\":{\"value\":82,\"unit\":\"Cel\"}} | #/humidity/at/value",
                "\"uvIndexAtBack\":-1                                                | #/uvIndexAtBack",
                "\"uvIndexAtBack\":180                                               | #/uvIndexAtBack",
                "\"facts\":{\"lamp\":\"sun\"}                                        | #/facts/lamp",
                "\"facts\":{\"lamp\":true}                                           | #/facts/lamp",
                "\"facts\":{\"dragon\":\"yes\"}                                      | #/facts/dragon",
                "\"sizes\":{\"lamp-distance\":{\"value\":-3,\"unit\":\"cm\"}}        | #/sizes/lamp-distance/value",
                "\"sizes\":{\"lamp-distance\":{\"value\":30,\"unit\":\"m\"}}         | #/sizes/lamp-distance/unit",
                "\"sizes\":{\"height\":{\"value\":60,\"unit\":\"mm\"}}               | #/sizes/height/value",
                "\"sizes\":{\"soul\":{\"value\":60,\"unit\":\"cm\"}}                 | #/sizes/soul",
                "\"occurredAt\":\"2999-01-01T00:00:00Z\",\"note\":\"n\"              | #/occurredAt",
                "\"occurredAt\":\"2026-01-01T00:00:00\",\"note\":\"n\"               | #/occurredAt",
                "\"supersedes\":\"the last one\",\"note\":\"n\"                      | #/supersedes",
                "\"note\":\"a\\u0000b\"                                              | #/note",
                "\"note\":\"\\ud800\"                                                | #/note",
                "\"note\":\"n\",\"colour\":\"red\"                                   | #/colour",
                "\"temperatures\":{}                                                 | #",
                "\"note\":null                                                       | #",
            })
    void refusesWhatIsFaultyAndKeepsNothing(String fields, String pointer) {
        Answer answer = keeper.post(readings, "{" + fields + "}");
        assertThat(answer.status()).as(answer.body()).isEqualTo(422);
        assertThat(answer.faults()).as(answer.body()).containsExactly(pointer);
        assertThat(count()).isZero();
    }

    @Test
    void namesAllFaultsAtOnce() {
        Answer answer = keeper.post(readings, """
                {"temperatures":{"warm-air":{"value":88,"unit":"Cel"},"cool-air":{"value":80,"unit":"F"}},
                 "humidity":{"percent":650},"uvIndexAtBack":-2,"facts":{"lamp":"sun","x":"y"},
                 "sizes":{"height":{"value":1}},"occurredAt":"2999-01-01T00:00:00Z","weight":3}""");
        assertThat(answer.faults())
                .containsExactlyInAnyOrder(
                        "#/temperatures/warm-air/value",
                        "#/temperatures/cool-air/unit",
                        "#/humidity/percent",
                        "#/humidity/at",
                        "#/uvIndexAtBack",
                        "#/facts/lamp",
                        "#/facts/x",
                        "#/sizes/height/unit",
                        "#/occurredAt",
                        "#/weight");
        assertThat(count()).isZero();
    }

    /** 120 °F = 48.9 °C and 248 °F = 120 °C: arithmetic. */
    @Test
    void asksAboutAProbableMistakeOfUnitSayingBothReadings() {
        Answer asked = keeper.post(readings, temperature("basking-surface", "120", "Cel"));
        assertThat(asked.faults()).containsExactly("#/temperatures/basking-surface/value");
        assertThat(asked.text("/faults/0/wrong")).contains("120 Cel = 248 [degF]", "120 [degF] = 48.9 Cel");
        assertThat(asked.text("/faults/0/right")).contains("confirmed: true");
        Answer other = keeper.post(readings, temperature("night-minimum", "26", "[degF]"));
        assertThat(other.text("/faults/0/wrong")).contains("26 [degF] = -3.3 Cel", "26 Cel = 78.8 [degF]");
        assertThat(count()).isZero();
    }

    @Test
    void takesTheRightUnitAndWhatIsConfirmedAndConvertsNothing() {
        assertThat(keeper.post(readings, temperature("basking-surface", "120", "[degF]"))
                        .status())
                .isEqualTo(201);
        Answer confirmed = keeper.post(
                readings,
                "{\"temperatures\":{\"basking-surface\":{\"value\":85,\"unit\":\"Cel\",\"confirmed\":true}}}");
        assertThat(confirmed.status()).isEqualTo(201);
        assertThat(number(confirmed, "/temperatures/basking-surface/celsius")).isEqualByComparingTo("85");
        Answer surroundings = surroundings();
        assertThat(quantity(surroundings, "basking-surface").get("value").decimalValue())
                .isEqualByComparingTo("85");
        assertThat(codes(surroundings)).contains("basking-surface-above");
    }

    @Test
    void saysWhyAHumidityNeedsATemperature() {
        assertThat(keeper.post(readings, "{\"humidity\":{\"percent\":65}}").text("/faults/0/wrong"))
                .contains("means nothing without the temperature beside it");
        assertThat(keeper.post(readings, "{\"humidity\":65}").text("/faults/0/wrong"))
                .contains("means nothing without the temperature beside it");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<script>alert(1)</script> & \"quotes\" 'and' \\backslashes\\",
                "'; DROP TABLE enclosure_reading; -- ${jndi:ldap://x} {{7*7}} %s %n =1+1",
                "\u202Eright to left\u202C, \uD83E\uDD8E, \u00E4\u00F6\u00FC, \u4E2D\u6587",
                "lines\nand\ttabs",
            })
    void keepsAHostileNoteAsItIs(String note) {
        Answer kept = keeper.post(readings, "{\"note\":" + JsonMapper.shared().writeValueAsString(note) + "}");
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        assertThat(keeper.get(readings + "/" + kept.id()).text("/note")).isEqualTo(note);
    }

    @Test
    void keepsItOncePerIdempotencyKey() {
        String body = temperature("warm-air", "31", "Cel");
        Answer first = keeper.post(readings, body, "Idempotency-Key", "round-1");
        Answer again = keeper.post(readings, body, "Idempotency-Key", "round-1");
        assertThat(again.body()).isEqualTo(first.body());
        assertThat(again.header("Idempotency-Replayed")).contains("true");
        assertThat(count()).isEqualTo(1);
    }

    @Test
    void listsThemInOrderPageByPage() {
        List<String> kept = List.of("30", "31", "32").stream()
                .map(each -> keeper.post(readings, temperature("warm-air", each, "Cel"))
                        .id())
                .toList();
        Answer page = keeper.get(readings + "?limit=2");
        assertThat(ids(page)).containsExactly(kept.get(0), kept.get(1));
        Answer next = keeper.get(page.link("next").orElseThrow());
        assertThat(ids(next)).containsExactly(kept.get(2));
        assertThat(next.link("next")).isEmpty();
        assertThat(keeper.get(readings + "?colour=red").status()).isEqualTo(422);
    }

    // ---- correcting

    @Test
    void countsASupersededReadingForNothingAndKeepsItReadable() {
        Answer first = keeper.post(readings, temperature("warm-air", "20", "Cel"));
        assertThat(codes(surroundings())).contains("warm-air-below");
        Answer second = keeper.post(readings, superseding(first, "31"));
        assertThat(second.status()).as(second.body()).isEqualTo(201);
        assertThat(codes(surroundings())).doesNotContain("warm-air-below");
        assertThat(keeper.get(readings + "/" + first.id()).text("/supersededBy"))
                .isEqualTo(second.id());
        assertThat(number(keeper.get(readings + "/" + first.id()), "/temperatures/warm-air/value"))
                .isEqualByComparingTo("20");
        Answer list = keeper.get(readings);
        assertThat(list.text("/items/0/supersededBy")).isEqualTo(second.id());
        assertThat(list.text("/items/1/supersedes")).isEqualTo(first.id());
        Answer twice = keeper.post(readings, superseding(first, "32"));
        assertThat(twice.isProblem("conflict")).as(twice.body()).isTrue();
        assertThat(twice.status()).isEqualTo(409);
        Answer takenBack = keeper.post(readings, "{\"note\":\"wrong box\",\"supersedes\":\"" + second.id() + "\"}");
        assertThat(takenBack.status()).isEqualTo(201);
        assertThat(quantity(surroundings(), "warm-air").get("standing").stringValue())
                .isEqualTo("not-read");
    }

    @Test
    void refusesToSupersedeWhatIsNoReadingOfThisAnimal() {
        Answer ofAnother =
                keeper.post(newAnimal(keeper, "{}") + "/enclosure-readings", temperature("warm-air", "30", "Cel"));
        Client stranger = organisations.create().keeper();
        Answer ofStrangers =
                stranger.post(newAnimal(stranger, "{}") + "/enclosure-readings", temperature("warm-air", "30", "Cel"));
        for (String id :
                List.of(ofAnother.id(), ofStrangers.id(), UUID.randomUUID().toString())) {
            Answer refused = keeper.post(readings, "{\"note\":\"n\",\"supersedes\":\"" + id + "\"}");
            assertThat(refused.status()).isEqualTo(422);
            assertThat(refused.faults()).containsExactly("#/supersedes");
        }
        assertThat(count()).isEqualTo(1);
    }

    // ---- who may

    @Test
    void findsNothingOfAnotherOrganisation() {
        Answer kept = keeper.post(readings, temperature("warm-air", "30", "Cel"));
        Client stranger = organisations.create().keeper();
        assertThat(stranger.get(readings).status()).isEqualTo(404);
        assertThat(stranger.get(readings + "/" + kept.id()).status()).isEqualTo(404);
        assertThat(stranger.get(animal + "/surroundings").status()).isEqualTo(404);
        assertThat(stranger.post(readings, temperature("warm-air", "30", "Cel")).status())
                .isEqualTo(404);
        assertThat(keeper.get(newAnimal(keeper, "{}") + "/enclosure-readings/" + kept.id())
                        .status())
                .as("of another animal")
                .isEqualTo(404);
        assertThat(count()).isEqualTo(1);
    }

    @Test
    void letsAKeeperWriteAndAClinicianRead() {
        Client clinician = organisation.clinician();
        assertThat(clinician
                        .post(readings, temperature("warm-air", "30", "Cel"))
                        .status())
                .isEqualTo(403);
        keeper.post(readings, temperature("warm-air", "30", "Cel"));
        assertThat(clinician.get(readings).status()).isEqualTo(200);
        assertThat(clinician.get(animal + "/surroundings").status()).isEqualTo(200);
    }

    // ---- what they say

    @Test
    void isUsefulBeforeAnythingWasMeasured() {
        Answer nothing = surroundings();
        assertThat(nothing.status()).as(nothing.body()).isEqualTo(200);
        assertThat(texts(nothing, "/notices", "id")).contains("not-illness", "no-readings");
        assertThat(texts(nothing, "/measureNext", "id")).containsExactly("cool-air", "basking-surface", "lamp-guarded");
        assertThat(nothing.text("/measureNext/0/text")).isNotBlank();
        assertThat(texts(nothing, "/cautions", "id")).contains("fire", "guard-the-lamp", "clear-the-lamp");
        assertThat(codes(nothing)).isEmpty();
        assertThat(nothing.json().at("/lessCertain")).isEmpty();
        JsonNode basking = quantity(nothing, "basking-surface");
        assertThat(basking.get("standing").stringValue()).isEqualTo("not-read");
        assertThat(basking.get("rangesDisagree").booleanValue()).isTrue();
        assertThat(kinds(basking)).containsExactly("published", "common-practice");
        assertThat(publicReadings.find(organisation.id(), animalId(), LocalDate.now(ZoneOffset.UTC)))
                .isEmpty();
    }

    /** Handout: 95 to 97 °F; trade: 120 to 130 °F, where the cool end is at 30 °C or less. */
    @Test
    void showsPublishedFiguresAndCommonPracticeSideBySideWhereTheyDisagree() {
        keeper.post(readings, """
                {"temperatures":{"basking-surface":{"value":125,"unit":"[degF]"},"cool-air":{"value":28,"unit":"Cel"},
                 "warm-air":{"value":31,"unit":"Cel"},"skin":{"value":35,"unit":"Cel"}}}""");
        Answer surroundings = surroundings();
        JsonNode basking = quantity(surroundings, "basking-surface");
        assertThat(basking.get("standing").stringValue()).isEqualTo("sources-disagree");
        assertThat(basking.at("/ranges/0/side").stringValue()).isEqualTo("above");
        assertThat(basking.at("/ranges/0/from").decimalValue()).isEqualByComparingTo("35");
        assertThat(basking.at("/ranges/1/side").stringValue()).isEqualTo("within");
        assertThat(basking.at("/ranges/1/source/0").stringValue()).isEqualTo("T");
        assertThat(basking.at("/given/value").decimalValue()).isEqualByComparingTo("125");
        assertThat(surroundings.text("/sources/T")).contains("Common practice");
        assertThat(texts(surroundings, "/notices", "id")).contains("sources-disagree");
        JsonNode skin = quantity(surroundings, "skin");
        assertThat(kinds(skin)).containsExactly("field");
        assertThat(skin.get("standing").stringValue()).isEqualTo("no-figures");
        assertThat(quantity(surroundings, "gradient").get("value").decimalValue())
                .isEqualByComparingTo("3");
        assertThat(quantity(surroundings, "gradient").get("unit").stringValue()).isEqualTo("K");
        assertThat(codes(surroundings)).isEmpty();
    }

    /**
     * Air of 28 °C at 80 % has its dew point at 24.23 °C: a wall of 23 °C gets wet, and under a lamp at 35 °C the same
     * moisture is 53.7 %. By the equation of Alduchov and Eskridge 1996; the ASHRAE and WMO equations give 24.22.
     */
    @Test
    void saysWhereWaterSettlesAndWhatTheHumidityIsElsewhere() {
        keeper.post(readings, """
                {"temperatures":{"coldest-surface":{"value":23,"unit":"Cel"},"basking-surface":{"value":35,"unit":"Cel"}},
                 "humidity":{"percent":80,"at":{"value":28,"unit":"Cel"}}}""");
        Answer surroundings = surroundings();
        assertThat(number(surroundings, "/moisture/dewPointCelsius")).isEqualByComparingTo("24.23");
        assertThat(number(surroundings, "/moisture/marginCelsius")).isEqualByComparingTo("-1.23");
        // .7547 kPa and 21.721 g/m3 by the same equation
        assertThat(number(surroundings, "/moisture/deficitKilopascals")).isEqualByComparingTo("0.75");
        assertThat(number(surroundings, "/moisture/gramsPerCubicMetre")).isEqualByComparingTo("21.72");
        JsonNode atLamp = surroundings.json().at("/moisture/humidityAt/0");
        assertThat(atLamp.get("quantity").stringValue()).isEqualTo("basking-surface");
        assertThat(atLamp.get("percent").doubleValue()).isCloseTo(53.7, within(0.05));
        assertThat(atLamp.get("together").booleanValue()).isTrue();
        assertThat(codes(surroundings)).contains("surface-wet", "surface-mould", "humidity-above");
        assertThat(texts(surroundings, "/notices", "id")).doesNotContain("not-together");
        keeper.post(readings, temperature("coldest-surface", "26", "Cel"));
        Answer apart = surroundings();
        assertThat(texts(apart, "/notices", "id")).contains("not-together");
        assertThat(codes(apart)).contains("surface-nearly-wet").doesNotContain("surface-wet");
    }

    /** Maxima of zones 2 and 3 overlap from 2.9 to 3.0 (Ferguson 2010); 8 and more is unsafe (manual of a meter). */
    @Test
    void namesEveryUvZoneThatFits() {
        keeper.post(readings, "{\"uvIndexAtBack\":2.95}");
        Answer two = surroundings();
        assertThat(two.json().at("/uv/zones").toString()).isEqualTo("[2,3]");
        assertThat(two.json().at("/uv/confirmed").booleanValue()).isFalse();
        keeper.post(readings, "{\"uvIndexAtBack\":8}");
        assertThat(codes(surroundings())).contains("uv-unsafe");
    }

    @Test
    void usesNoFiguresOfAnotherSpeciesAndSaysSo() {
        String other = newAnimal(keeper, "{\"lifeStage\":\"juvenile\",\"species\":{\"name\":\"Varanus acanthurus\"}}");
        keeper.post(other + "/enclosure-readings", temperature("basking-surface", "20", "Cel"));
        Answer surroundings = keeper.get(other + "/surroundings");
        assertThat(texts(surroundings, "/notices", "id")).contains("no-figures");
        assertThat(quantity(surroundings, "basking-surface").get("standing").stringValue())
                .isEqualTo("no-figures");
        assertThat(quantity(surroundings, "basking-surface").get("ranges")).isEmpty();
        assertThat(codes(surroundings)).isEmpty();
        assertThat(texts(surroundings, "/cautions", "id")).contains("fire");
        Answer nobodyKnows = keeper.get(newAnimal(keeper, "{}") + "/surroundings");
        assertThat(texts(nobodyKnows, "/notices", "id")).contains("no-species");
        assertThat(nobodyKnows.json().has("species")).isFalse();
    }

    @Test
    void namesTheAnswersThatAreLessCertainAndWhy() {
        keeper.post(readings, """
                {"temperatures":{"warm-air":{"value":22,"unit":"Cel"},"night-minimum":{"value":15,"unit":"Cel"},
                 "skin":{"value":23,"unit":"Cel"}},"facts":{"lamp":"spot","lamp-guarded":"no","mesh-under-lamp":"yes"}}""");
        Answer surroundings = surroundings();
        JsonNode dull = first(surroundings.json().at("/lessCertain"), "finding", "dull");
        assertThat(dull.get("because").toString()).isEqualTo("[\"night-minimum-below\",\"warm-air-below\"]");
        assertThat(surroundings.json().at("/lookConditions").toString()).isEqualTo("[\"cold\"]");
        assertThat(texts(surroundings, "/cautions", "id"))
                .contains("spot-lamp", "guard-the-lamp", "mesh-takes-light", "cables", "fire");
        assertThat(texts(surroundings, "/facts", "fact")).contains("lamp", "lamp-guarded");
        assertThat(publicReadings
                        .find(organisation.id(), animalId(), LocalDate.now(ZoneOffset.UTC))
                        .orElseThrow()
                        .lessCertain())
                .containsKey("dull");
        assertThat(publicReadings.find(organisations.create().id(), animalId(), LocalDate.now(ZoneOffset.UTC)))
                .isEmpty();
    }

    @Test
    void marksOldReadingsAndExplainsNothingByThem() {
        keeper.post(
                readings,
                "{\"occurredAt\":\"" + Instant.now().minus(8, ChronoUnit.DAYS)
                        + "\",\"temperatures\":{\"warm-air\":{\"value\":22,\"unit\":\"Cel\"}}}");
        Answer surroundings = surroundings();
        JsonNode warm = quantity(surroundings, "warm-air");
        assertThat(warm.get("stale").booleanValue()).isTrue();
        assertThat(warm.at("/read/ageDays").intValue()).isGreaterThanOrEqualTo(8);
        assertThat(warm.get("standing").stringValue()).isEqualTo("below");
        assertThat(first(surroundings.json().at("/signs"), "code", "warm-air-below")
                        .get("stale")
                        .booleanValue())
                .isTrue();
        assertThat(surroundings.json().at("/lessCertain")).isEmpty();
        assertThat(texts(surroundings, "/notices", "id")).contains("stale");
        assertThat(first(surroundings.json().at("/notKnown"), "id", "warm-air")
                        .get("why")
                        .stringValue())
                .isEqualTo("stale");
    }

    @Test
    void speaksOfTheDayThatIsAskedFor() {
        Instant threeDaysAgo = Instant.now().minus(3, ChronoUnit.DAYS);
        keeper.post(
                readings,
                "{\"occurredAt\":\"" + threeDaysAgo
                        + "\",\"temperatures\":{\"warm-air\":{\"value\":29,\"unit\":\"Cel\"}}}");
        keeper.post(readings, temperature("warm-air", "31", "Cel"));
        LocalDate then = LocalDate.ofInstant(threeDaysAgo, ZoneOffset.UTC);
        assertThat(value(keeper.get(animal + "/surroundings?asOf=" + then))).isEqualByComparingTo("29");
        assertThat(value(surroundings())).isEqualByComparingTo("31");
        assertThat(quantity(keeper.get(animal + "/surroundings?asOf=" + then.minusDays(1)), "warm-air")
                        .get("standing")
                        .stringValue())
                .isEqualTo("not-read");
        assertThat(keeper.get(animal + "/surroundings?asOf=yesterday").faults()).containsExactly("asOf");
        assertThat(keeper.get(animal + "/surroundings?day=" + then).status()).isEqualTo(422);
    }

    @Test
    void countsTheDayOfAReadingInTheOrganisationsZone() {
        Instant moment = Instant.parse("2026-03-09T23:30:00Z");
        for (String zone : List.of("Pacific/Kiritimati", "Pacific/Pago_Pago")) {
            Client there = organisations.create(ZoneId.of(zone)).keeper();
            Answer kept = there.post(
                    newAnimal(there, "{}") + "/enclosure-readings",
                    "{\"note\":\"n\",\"occurredAt\":\"" + moment + "\"}");
            assertThat(kept.text("/localDate"))
                    .isEqualTo(LocalDate.ofInstant(moment, ZoneId.of(zone)).toString());
        }
    }

    // ---- what they never do

    @Test
    void addsNoPointsOfIllness() {
        String look =
                "{\"checklist\":\"varanid-intake\",\"version\":1,\"answers\":{\"dull\":\"mild\",\"ticks\":\"few\"}}";
        JsonNode before = keeper.post(animal + "/assessments", look).json();
        Answer bad = keeper.post(readings, """
                {"temperatures":{"basking-surface":{"value":20,"unit":"Cel"},"warm-air":{"value":15,"unit":"Cel"},
                 "cool-air":{"value":12,"unit":"Cel"},"night-minimum":{"value":8,"unit":"Cel"}},
                 "humidity":{"percent":99,"at":{"value":15,"unit":"Cel"}},"uvIndexAtBack":20,
                 "facts":{"lamp":"hot-rock","lamp-guarded":"no","water-depth":"deeper"}}""");
        assertThat(bad.status()).as(bad.body()).isEqualTo(201);
        assertThat(codes(surroundings())).hasSizeGreaterThan(5);
        JsonNode after = keeper.post(animal + "/assessments", look).json();
        assertThat(before.at("/score/lowest").intValue()).isPositive();
        assertThat(after.get("score")).isEqualTo(before.get("score"));
        assertThat(after.at("/urgency/recommended")).isEqualTo(before.at("/urgency/recommended"));
        assertThat(after.get("reasons")).isEqualTo(before.get("reasons"));
        assertThat(before.get("lessCertain")).isNull();
        assertThat(after.at("/lessCertain/0/finding").stringValue()).isEqualTo("dull");
        assertThat(after.at("/lessCertain/0/because/0/advice").stringValue()).isNotBlank();
        assertThat(after.at("/lessCertain").size())
                .as("ticks come of no enclosure")
                .isEqualTo(1);
    }

    @Test
    void isNeverChanged() {
        Answer kept = keeper.post(readings, temperature("warm-air", "30", "Cel"));
        assertThat(keeper.put(readings + "/" + kept.id(), "{}", "If-Match", "*").status())
                .isEqualTo(405);
        assertThat(keeper.sendJson("DELETE", readings + "/" + kept.id(), "{}").status())
                .isEqualTo(405);
    }

    // ---- helpers

    private static String temperature(String code, String value, String unit) {
        return "{\"temperatures\":{\"" + code + "\":{\"value\":" + value + ",\"unit\":\"" + unit + "\"}}}";
    }

    private static String superseding(Answer old, String warmAir) {
        return "{\"supersedes\":\"" + old.id() + "\",\"temperatures\":{\"warm-air\":{\"value\":" + warmAir
                + ",\"unit\":\"Cel\"}}}";
    }

    private Answer surroundings() {
        return keeper.get(animal + "/surroundings");
    }

    private static JsonNode quantity(Answer surroundings, String code) {
        return first(surroundings.json().at("/quantities"), "quantity", code);
    }

    private static BigDecimal value(Answer surroundings) {
        return quantity(surroundings, "warm-air").get("value").decimalValue();
    }

    private static JsonNode first(JsonNode list, String field, String value) {
        return StreamSupport.stream(list.spliterator(), false)
                .filter(each -> each.get(field).stringValue().equals(value))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + value + " in " + list));
    }

    private static List<String> codes(Answer surroundings) {
        return texts(surroundings, "/signs", "code");
    }

    private static List<String> kinds(JsonNode quantity) {
        return StreamSupport.stream(quantity.get("ranges").spliterator(), false)
                .map(each -> each.get("kind").stringValue())
                .toList();
    }

    private static List<String> texts(Answer answer, String list, String field) {
        return StreamSupport.stream(answer.json().at(list).spliterator(), false)
                .map(each -> each.get(field).stringValue())
                .toList();
    }

    private static List<String> ids(Answer page) {
        return texts(page, "/items", "id");
    }

    private static BigDecimal number(Answer answer, String pointer) {
        return answer.json().at(pointer).decimalValue();
    }

    private UUID animalId() {
        return UUID.fromString(animal.substring(animal.lastIndexOf('/') + 1));
    }

    private int count() {
        return jdbc.sql("SELECT count(*) FROM enclosure_reading WHERE organisation_id = ?")
                .param(organisation.id())
                .query(Integer.class)
                .single();
    }

    private static String newAnimal(Client keeper, String body) {
        Answer made = keeper.post("/api/v1/animals", body);
        assertThat(made.status()).as(made.body()).isEqualTo(201);
        return made.header("Location").orElseThrow();
    }
}
