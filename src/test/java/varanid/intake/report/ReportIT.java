package varanid.intake.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;
import varanid.intake.platform.web.Role;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class ReportIT {

    private static final String EVERYTHING = """
            {"reportedBy":"previous keeper, by phone","occurredAt":"2026-03-09T12:00:00Z",
             "lastMeal":{"food":"two crickets","daysAgo":3,"words":"\\"snapped at them\\""},
             "lastStool":{"on":"2026-03-01"},"lastUrate":{"unknown":true},"lastDrink":{"words":"never saw it"},
             "diet":"crickets,\\nnow and then a mouse","supplements":"white powder",
             "lamps":[{"place":"over the branch","type":"uv-tube","ageMonths":14,"words":"T5 12 %"}],
             "temperatures":{"cage-warm-end":{"value":95,"unit":"[degF]"},"transport":{"value":14.5,"unit":"Cel"}},
             "transport":{"hours":30,"words":"nine in one box"},
             "reproductiveState":{"code":"gravid-suspected","words":"digs"},
             "treatments":[{"what":"drops <b>from the shop</b>","givenBy":"the shop","on":"2026-03-02","why":"worms",
               "amount":"5 drops, \\"as always\\""},{"what":"a bath","period":"twice in February"}],
             "handlingRisk":{"code":"defends-itself","words":"tail"},
             "bites":[{"who":"the neighbour's child","on":"2026-02-20","bodyPart":"hand","brokeSkin":"yes",
               "doctorSeen":"no"}],
             "vulnerablePeople":["child-under-five","pregnant"],
             "consent":{"by":"A. Keeper","given":["examination","necropsy"],"words":"call first"},
             "spendingLimit":"200 without asking","payer":"the rescue",
             "questions":["Is it a female?","Why does it\\nsneeze?"],
             "contact":{"name":"A. Keeper","phone":"+49 30 1234 ext. 5","email":"keeper@rescue.example","bestTime":"after 6"},
             "note":"line was bad"}""";

    @Autowired
    Organisations organisations;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Reports publicReports;

    private Organisations.Organisation organisation;
    private Client keeper;
    private String animal;
    private String reports;

    @BeforeEach
    void someAnimal() {
        organisation = organisations.create();
        keeper = organisation.keeper();
        animal = "/api/v1/animals/" + keeper.post("/api/v1/animals", "{}").id();
        reports = animal + "/reports";
    }

    @Test
    void keepsEveryWordAsItWasTold() {
        Answer kept = keeper.post(reports, EVERYTHING);
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        assertThat(kept.header("Location")).contains(reports + "/" + kept.id());
        Answer again = keeper.get(reports + "/" + kept.id());
        assertThat(again.json()).isEqualTo(kept.json());
        assertThat(again.text("/recordedBy")).isEqualTo(keeper.personId().toString());
        assertThat(again.text("/told/reportedBy")).isEqualTo("previous keeper, by phone");
        assertThat(again.text("/told/lastMeal/on")).isEqualTo("2026-03-06");
        assertThat(again.json().at("/told/lastMeal/daysAgo").intValue()).isEqualTo(3);
        assertThat(again.text("/told/lastMeal/words")).isEqualTo("\"snapped at them\"");
        assertThat(again.json().at("/told/lastUrate/unknown").booleanValue()).isTrue();
        assertThat(again.text("/told/diet")).isEqualTo("crickets,\nnow and then a mouse");
        assertThat(again.text("/told/temperatures/cage-warm-end/unit")).isEqualTo("[degF]");
        // (95 - 32) * 5 / 9
        assertThat(again.json().at("/told/temperatures/cage-warm-end/celsius").decimalValue())
                .isEqualByComparingTo("35");
        assertThat(again.text("/told/treatments/0/what")).isEqualTo("drops <b>from the shop</b>");
        assertThat(again.text("/told/treatments/0/amount")).isEqualTo("5 drops, \"as always\"");
        assertThat(again.text("/told/treatments/1/period")).isEqualTo("twice in February");
        assertThat(again.text("/told/bites/0/who")).isEqualTo("the neighbour's child");
        assertThat(again.text("/told/consent/given/1")).isEqualTo("necropsy");
        assertThat(again.text("/told/questions/1")).isEqualTo("Why does it\nsneeze?");
        assertThat(again.text("/told/contact/phone")).isEqualTo("+49 30 1234 ext. 5");
        assertThat(again.text("/told/note")).isEqualTo("line was bad");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "                                                                     | #",
                "\"occurredAt\":\"2026-03-09T12:00:00Z\",\"reportedBy\":\"he\"       | #",
                "\"treatments\":[]                                                   | #",
                "\"lastMeal\":{}                                                     | #/lastMeal",
                "\"lastMeal\":{\"on\":\"2026-03-01\",\"daysAgo\":3}                  | #/lastMeal",
                "\"lastMeal\":{\"unknown\":false}                                    | #/lastMeal/unknown",
                "\"lastMeal\":{\"on\":\"2999-01-01\"}                                | #/lastMeal/on",
                "\"lastMeal\":{\"on\":\"2026-03-10\"},\"occurredAt\":\"2026-03-09T12:00:00Z\" | #/lastMeal/on",
                "\"lastMeal\":{\"on\":\"unknown\"}                                   | #/lastMeal/on",
                "\"lastStool\":{\"food\":\"mouse\"}                                  | #/lastStool/food",
                "\"lastStool\":{\"daysAgo\":-1}                                      | #/lastStool/daysAgo",
                "\"lamps\":[{\"type\":\"sun\"}]                                      | #/lamps/0/type",
                "\"lamps\":[{}]                                                      | #/lamps/0",
                "\"lamps\":[{\"ageMonths\":1.5}]                                     | #/lamps/0/ageMonths",
                "\"temperatures\":{\"transport\":{\"value\":64,\"unit\":\"Cel\"}}    | #/temperatures/transport/value",
                "\"temperatures\":{\"transport\":{\"value\":64}}                     | #/temperatures/transport/unit",
                "\"temperatures\":{\"moon\":{\"value\":20,\"unit\":\"Cel\"}}         | #/temperatures/moon",
                "\"transport\":{}                                                    | #/transport",
                "\"reproductiveState\":{\"words\":\"digs\"}                          | #/reproductiveState/code",
                "\"treatments\":[{\"amount\":\"5 ml\"}]                              | #/treatments/0/what",
                "\"treatments\":[{\"what\":\"x\",\"dose\":5}]                        | #/treatments/0/dose",
                "\"handlingRisk\":{\"code\":\"tame\"}                                | #/handlingRisk/code",
                "\"bites\":[{\"brokeSkin\":true}]                                    | #/bites/0/brokeSkin",
                "\"vulnerablePeople\":[\"none\",\"pregnant\"]                        | #/vulnerablePeople",
                "\"vulnerablePeople\":[\"pregnant\",\"pregnant\"]                    | #/vulnerablePeople",
                "\"vulnerablePeople\":[\"old\"]                                      | #/vulnerablePeople/0",
                "\"consent\":{\"given\":[\"none-yet\",\"necropsy\"]}                 | #/consent/given",
                "\"consent\":{}                                                      | #/consent",
                "\"questions\":[\"\"]                                                | #/questions/0",
                "\"questions\":[\"a\\u0000b\"]                                       | #/questions/0",
                "\"contact\":{\"phone\":\"call me\"}                                 | #/contact/phone",
                "\"contact\":{\"email\":\"keeper\"}                                  | #/contact/email",
                "\"contact\":{\"email\":\"a@b c\"}                                   | #/contact/email",
                "\"diet\":\"x\",\"supersedes\":\"the last\"                          | #/supersedes",
                "\"diet\":\"x\",\"dose\":\"5\"                                       | #/dose",
            })
    void refusesWhatIsFaultyAndKeepsNothing(String fields, String pointer) {
        Answer answer = keeper.post(reports, "{" + (fields == null ? "" : fields) + "}");
        assertThat(answer.status()).as(answer.body()).isEqualTo(422);
        assertThat(answer.faults()).as(answer.body()).containsExactly(pointer);
        assertThat(count("report")).isZero();
    }

    @Test
    void keepsAnUnlikelyTemperatureThatSomebodyStandsBy() {
        Answer kept = keep("{\"temperatures\":{\"transport\":{\"value\":64,\"unit\":\"Cel\",\"confirmed\":true}}}");
        assertThat(kept.json().at("/told/temperatures/transport/confirmed").booleanValue())
                .isTrue();
    }

    @Test
    void isForKeepersAndClinicians() {
        assertThat(organisation.clinician().post(reports, "{\"diet\":\"mice\"}").status())
                .isEqualTo(201);
        assertThat(organisation
                        .administrator()
                        .post(reports, "{\"diet\":\"mice\"}")
                        .status())
                .isEqualTo(201);
        assertThat(organisations.nobody().post(reports, "{\"diet\":\"mice\"}").status())
                .isEqualTo(401);
        Client stranger = organisations.create().person(Role.values());
        assertThat(stranger.post(reports, "{\"diet\":\"mice\"}").isProblem("not-found"))
                .isTrue();
        assertThat(stranger.get(reports + "/standing").isProblem("not-found")).isTrue();
    }

    @Test
    void standsWithTheLatestStatementOfEachFieldAndAllTreatmentsAndBites() {
        Answer first = keep(EVERYTHING);
        Answer second = keep("""
                {"occurredAt":"2026-03-10T12:00:00Z","lastStool":{"daysAgo":0},
                 "temperatures":{"transport":{"value":16,"unit":"Cel"}},
                 "treatments":[{"what":"spray"}],"bites":[{"who":"its keeper"}],"questions":["What now?"],
                 "vulnerablePeople":["none"]}""");
        // Told before both, written down after them.
        keep("""
                {"occurredAt":"2026-03-08T12:00:00Z","diet":"only mice","supplements":"none",
                 "treatments":[{"what":"a wormer"}]}""");

        Answer standing = keeper.get(reports + "/standing");

        assertThat(standing.text("/standing/lastMeal/value/food")).isEqualTo("two crickets");
        assertThat(standing.text("/standing/lastMeal/reportId")).isEqualTo(first.id());
        assertThat(standing.text("/standing/lastMeal/reportedBy")).isEqualTo("previous keeper, by phone");
        assertThat(standing.text("/standing/lastStool/value/on")).isEqualTo("2026-03-10");
        assertThat(standing.text("/standing/lastStool/reportId")).isEqualTo(second.id());
        assertThat(standing.json().at("/standing/lastStool/reportedBy").isMissingNode())
                .isTrue();
        assertThat(standing.text("/standing/diet/value")).startsWith("crickets");
        assertThat(standing.json()
                        .at("/standing/temperatures/transport/value/celsius")
                        .decimalValue())
                .isEqualByComparingTo("16");
        assertThat(standing.text("/standing/temperatures/cage-warm-end/reportId"))
                .isEqualTo(first.id());
        assertThat(texts(standing.json().at("/standing/treatments"), "/value/what"))
                .containsExactly("a wormer", "drops <b>from the shop</b>", "a bath", "spray");
        assertThat(texts(standing.json().at("/standing/bites"), "/value/who"))
                .containsExactly("the neighbour's child", "its keeper");
        assertThat(texts(standing.json().at("/standing/questions/value"), "")).containsExactly("What now?");
        assertThat(texts(standing.json().at("/cautions"), "/id")).containsExactly("bitten", "hygiene");
        assertThat(standing.json().get("untold")).isEmpty();
    }

    @Test
    void saysWhatNobodyHasToldYetAndHowToAsk() {
        Answer standing = keeper.get(reports + "/standing");
        assertThat(texts(standing.json().at("/untold"), "/field"))
                .startsWith("lastMeal", "lastStool", "lastUrate", "lastDrink")
                .hasSize(19);
        assertThat(standing.text("/untold/0/ask")).endsWith("?");
        assertThat(texts(standing.json().at("/cautions"), "/id")).containsExactly("vulnerable", "hygiene");
        assertThat(publicReports.find(organisation.id(), UUID.randomUUID()).treatments())
                .isEmpty();
    }

    @Test
    void aCorrectionTakesThePlaceOfWhatItCorrectsOnce() {
        Answer wrong = keep("{\"treatments\":[{\"what\":\"the wrong one\"}],\"diet\":\"mice\"}");
        Answer right = keep("{\"treatments\":[{\"what\":\"the right one\"}],\"supersedes\":\"" + wrong.id() + "\"}");
        assertThat(keeper.get(reports + "/" + wrong.id()).text("/supersededBy")).isEqualTo(right.id());
        Answer standing = keeper.get(reports + "/standing");
        assertThat(texts(standing.json().at("/standing/treatments"), "/value/what"))
                .containsExactly("the right one");
        assertThat(standing.json().at("/standing/diet").isMissingNode()).isTrue();
        Answer again = keeper.post(reports, "{\"diet\":\"x\",\"supersedes\":\"" + wrong.id() + "\"}");
        assertThat(again.isProblem("conflict")).as(again.body()).isTrue();
        Answer foreign = keeper.post(reports, "{\"diet\":\"x\",\"supersedes\":\"" + UUID.randomUUID() + "\"}");
        assertThat(foreign.faults()).containsExactly("#/supersedes");
        // A report that should never have been is taken back by a note alone.
        keep("{\"note\":\"another animal was meant\",\"supersedes\":\"" + right.id() + "\"}");
        assertThat(keeper.get(reports + "/standing").json().at("/standing/treatments"))
                .isEmpty();
    }

    @Test
    void keepsOncePerKey() {
        Answer first = keeper.post(reports, EVERYTHING, "Idempotency-Key", "a-call");
        Answer second = keeper.post(reports, EVERYTHING, "Idempotency-Key", "a-call");
        assertThat(second.body()).isEqualTo(first.body());
        assertThat(second.header("Idempotency-Replayed")).contains("true");
        assertThat(count("report")).isEqualTo(1);
    }

    @Test
    void pagesInTheOrderOfRecording() {
        Answer one = keep("{\"diet\":\"a\"}");
        Answer two = keep("{\"diet\":\"b\",\"occurredAt\":\"2026-01-01T00:00:00Z\"}");
        Answer page = keeper.get(reports + "?limit=1");
        assertThat(texts(page.json().get("items"), "/id")).containsExactly(one.id());
        assertThat(texts(keeper.get(page.link("next").orElseThrow()).json().get("items"), "/id"))
                .containsExactly(two.id());
    }

    @Test
    void removesPeopleForGoodAndKeepsWhatWasToldOfTheAnimal() {
        Answer kept = keep(EVERYTHING);
        String removal = reports + "/" + kept.id() + "/people-removal";
        assertThat(keeper.post(removal, "{}").isProblem("forbidden")).isTrue();
        Client administrator = organisation.administrator();

        Answer removed = administrator.post(removal, "{}");

        assertThat(removed.status()).as(removed.body()).isEqualTo(200);
        assertThat(removed.text("/peopleRemoved/by"))
                .isEqualTo(administrator.personId().toString());
        Answer left = keeper.get(reports + "/" + kept.id());
        assertThat(left.json()).isEqualTo(removed.json());
        for (String gone : List.of("phone\":", "previous keeper", "neighbour", "A. Keeper", "the rescue", "pregnant")) {
            assertThat(left.body()).doesNotContain(gone);
            assertThat(keeper.get(reports + "/standing").body())
                    .as(gone)
                    .doesNotContain("\"value\":\"" + gone)
                    .doesNotContain("\"reportedBy\":\"" + gone);
            assertThat(everythingStored()).doesNotContain(gone);
        }
        assertThat(left.text("/told/bites/0/bodyPart")).isEqualTo("hand");
        assertThat(left.text("/told/consent/given/0")).isEqualTo("examination");
        assertThat(left.text("/told/treatments/0/what")).startsWith("drops");
        // Asking again changes neither when it was nor by whom.
        assertThat(organisation.administrator().post(removal, "{}").json()).isEqualTo(removed.json());
        assertThat(administrator.post(removal, "{\"why\":\"x\"}").faults()).containsExactly("#/why");
    }

    @Test
    void aReportThatNamesNobodyHasNobodyToRemove() {
        Answer kept = keep("{\"diet\":\"mice\"}");
        assertThat(count("report_people")).isZero();
        Answer removed = organisation.administrator().post(reports + "/" + kept.id() + "/people-removal", "{}");
        assertThat(removed.json()).isEqualTo(kept.json());
    }

    @Test
    void everyFieldOfTheFileIsOneThatCanBeTold() {
        ReportWords words = new ReportWords();
        Standing nothing = Standing.of(List.of());
        assertThat(words.fields())
                .allSatisfy(each -> assertThat(nothing.isUntold(each.id())).isTrue());
        assertThat(Told.class.getRecordComponents())
                .extracting(component -> component.getName())
                .containsAll(words.fields().stream().map(ReportWords.Field::id).toList());
    }

    private Answer keep(String body) {
        Answer answer = keeper.post(reports, body);
        assertThat(answer.status()).as(answer.body()).isEqualTo(201);
        return answer;
    }

    private String everythingStored() {
        return String.join(
                "\n",
                jdbc.sql("""
                                SELECT told::text FROM report WHERE organisation_id = :id
                                UNION ALL SELECT said::text FROM report_people
                                    WHERE organisation_id = :id AND said IS NOT NULL""").param("id", organisation.id()).query(String.class).list());
    }

    private long count(String table) {
        return jdbc.sql("SELECT count(*) FROM " + table + " WHERE organisation_id = ?")
                .param(organisation.id())
                .query(Long.class)
                .single();
    }

    private static List<String> texts(JsonNode items, String pointer) {
        return StreamSupport.stream(items.spliterator(), false)
                .map(each -> each.at(pointer).asString())
                .toList();
    }
}
