package varanid.intake.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.sql.SQLException;
import java.util.List;
import java.util.stream.IntStream;
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
class ScoreIT {

    private static final String SCORES = "/api/v1/scores";
    private static final String EXAMPLE = """
            {"checklist":"varanid-intake","version":1,"lifeStage":"juvenile","origin":"W","conditions":["cold"],
             "answers":{"laboured-breathing":"mild","days-food-refused":9,"ticks":"not-observed"}}""";

    @Autowired
    Organisations organisations;

    @Autowired
    JdbcClient jdbc;

    private Organisations.Organisation organisation;
    private Client keeper;

    @BeforeEach
    void someKeeper() {
        organisation = organisations.create();
        keeper = organisation.keeper();
    }

    @Test
    void scoresALookAndExplainsItself() {
        Answer answer = keeper.post(SCORES, EXAMPLE);
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        JsonNode score = answer.json();
        // Hard breathing asks for a vet within 24 hours, and cold is no excuse for it.
        assertThat(answer.text("/urgency/recommended")).isEqualTo("asap");
        assertThat(answer.text("/urgency/lowest")).isEqualTo("asap");
        assertThat(answer.text("/urgency/highest")).isEqualTo("stat");
        assertThat(answer.text("/urgency/within")).isEqualTo("PT24H");
        assertThat(score.at("/urgency").has("by")).as("nobody says when it was").isFalse();
        assertThat(score.at("/urgency/settled").booleanValue()).isFalse();
        assertThat(score.at("/score/lowest").decimalValue())
                .isLessThan(score.at("/score/highest").decimalValue());
        assertThat(score.at("/score/sections").size()).isEqualTo(9);
        assertThat(answer.text("/isolation/recommended")).isEqualTo("strict");
        assertThat(answer.text("/reasons/0/id")).isEqualTo("laboured-breathing");
        assertThat(answer.text("/reasons/0/sources/0")).isNotBlank();
        assertThat(names(score, "/unknowns", "finding")).contains("ticks", "open-mouth-breathing");
        assertThat(names(score, "/next", "finding")).isNotEmpty();
        assertThat(score.at("/advice").size()).isPositive();
        assertThat(score.at("/cautions").size()).isPositive();
        assertThat(answer.text("/notices/1")).contains("not a diagnosis");
        assertThat(answer.text("/checklist/id")).isEqualTo("varanid-intake");
        assertThat(answer.text("/checklist/digest")).matches("[0-9a-f]{64}");
    }

    @Test
    void givesTheSameReplyToTheSameLookInAnyOrder() {
        String other = """
                {"answers":{"ticks":"not-observed","days-food-refused":9.0,"laboured-breathing":"mild"},
                 "conditions":["cold"],"origin":"W","lifeStage":"juvenile","checklist":"varanid-intake"}""";
        assertThat(keeper.post(SCORES, other).body())
                .isEqualTo(keeper.post(SCORES, EXAMPLE).body());
    }

    @Test
    void namesEveryFaultOfALookAtOnceAndWhereItIs() {
        Answer answer = keeper.post(SCORES, """
                {"checklist":"varanid-intake","version":1,"lifeStage":"egg","origin":"W","colour":"green",
                 "conditions":["cold","dusk","cold"],
                 "answers":{"wing-droop":"present","laboured-breathing":"few","days-food-refused":401,
                            "weight-trend":{"value":-91,"overDays":0},
                            "cannot-lift-body":"absent","unresponsive":"present",
                            "ticks":7,"mites":null,"bleeding":"not-yet-due","dull":["mild"],"a/b":"mild"}}""");
        assertThat(answer.isProblem("invalid-request")).as(answer.body()).isTrue();
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.faults())
                .containsExactlyInAnyOrder(
                        "#/lifeStage",
                        "#/colour",
                        "#/conditions/1",
                        "#/conditions/2",
                        "#/answers/wing-droop",
                        "#/answers/laboured-breathing",
                        "#/answers/days-food-refused",
                        "#/answers/weight-trend",
                        "#/answers/weight-trend",
                        "#/answers/unresponsive",
                        "#/answers/ticks",
                        "#/answers/mites",
                        "#/answers/bleeding",
                        "#/answers/dull",
                        "#/answers/a~1b");
        answer.json().at("/faults").forEach(fault -> {
            assertThat(fault.get("wrong").stringValue()).isNotBlank();
            assertThat(fault.get("right").stringValue()).isNotBlank();
        });
    }

    @Test
    void saysWhatTheLevelsAreWhereOneOfAnotherFindingWasGiven() {
        Answer answer = keeper.post(SCORES, look("\"laboured-breathing\":\"few\""));
        assertThat(answer.text("/faults/0/wrong")).contains("'few'");
        assertThat(answer.text("/faults/0/right")).contains("absent, mild, marked");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{\"days-food-refused\":{\"low\":5,\"high\":3}}   | #/answers/days-food-refused",
                "{\"days-food-refused\":{\"value\":5,\"high\":3}} | #/answers/days-food-refused/high",
                "{\"days-food-refused\":{\"low\":5}}              | #/answers/days-food-refused/high",
                "{\"days-food-refused\":{\"value\":5,\"overDays\":3}} | #/answers/days-food-refused/overDays",
                "{\"days-food-refused\":\"9\"}                    | #/answers/days-food-refused",
                "{\"days-food-refused\":-1}                       | #/answers/days-food-refused",
                "{\"weight-trend\":{\"value\":\"-9\"}}            | #/answers/weight-trend/value",
                "{\"ticks\":true}                                 | #/answers/ticks",
                "[]                                               | #/answers",
            })
    void refusesAnAnswerOfTheWrongShape(String answers, String pointer) {
        Answer answer = keeper.post(SCORES, "{\"checklist\":\"varanid-intake\",\"answers\":" + answers + "}");
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.faults()).containsExactly(pointer);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{}                                              | #/checklist",
                "{\"checklist\":\"other\"}                       | #/checklist",
                "{\"checklist\":\"varanid-intake\",\"version\":99} | #/version",
                "{\"checklist\":\"varanid-intake\",\"version\":0}  | #/version",
                "{\"checklist\":\"varanid-intake\",\"version\":\"1\"} | #/version",
            })
    void refusesAChecklistThatThereIsNot(String body, String pointer) {
        Answer answer = keeper.post(SCORES, body);
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.faults()).containsExactly(pointer);
    }

    @Test
    void scoresALookAtNothing() {
        Answer answer = keeper.post(SCORES, "{\"checklist\":\"varanid-intake\"}");
        assertThat(answer.status()).isEqualTo(200);
        assertThat(answer.text("/urgency/recommended")).isEqualTo("urgent");
        assertThat(answer.text("/urgency/basis")).isEqualTo("unseen");
        assertThat(answer.text("/urgency/lowest")).isEqualTo("routine");
        assertThat(answer.text("/urgency/highest")).isEqualTo("stat");
    }

    @Test
    void namesOneFaultWhereTheRequestCannotBeReadOrItsSenderIsNotKnown() {
        assertThat(keeper.post(SCORES, "{\"checklist\":").isProblem("malformed-request"))
                .isTrue();
        assertThat(keeper.post(SCORES, "{\"answers\":{\"dull\":\"mild\",\"dull\":\"absent\"}}")
                        .isProblem("malformed-request"))
                .isTrue();
        Answer tooLarge = keeper.post(SCORES, "{\"checklist\":\"" + "a".repeat(300_000) + "\"}");
        assertThat(tooLarge.isProblem("too-large")).isTrue();
        assertThat(tooLarge.status()).isEqualTo(413);
        Answer text = keeper.send("POST", SCORES, BodyPublishers.ofString(EXAMPLE), "Content-Type", "text/plain");
        assertThat(text.isProblem("unsupported-media-type")).isTrue();
        Answer nobody = organisations.nobody().post(SCORES, EXAMPLE);
        assertThat(nobody.isProblem("unauthenticated")).isTrue();
        assertThat(nobody.status()).isEqualTo(401);
    }

    @Test
    void scoresForAnybodyOfTheOrganisation() {
        assertThat(organisation.person(Role.CLINICIAN).post(SCORES, EXAMPLE).status())
                .isEqualTo(200);
    }

    @Test
    void refusesMoreAnswersThanAnyChecklistAsksFor() {
        List<String> many = IntStream.range(0, 301)
                .mapToObj(number -> "\"x" + number + "\":1")
                .toList();
        Answer answer = keeper.post(SCORES, look(String.join(",", many)));
        assertThat(answer.faults()).containsExactly("#/answers");
    }

    @Test
    void storesNothing() throws SQLException {
        keeper.post(SCORES, EXAMPLE, "Idempotency-Key", "score-once");
        for (String table : List.of("assessment", "checklist_in_use", "idempotency_reply")) {
            assertThat(jdbc.sql("SELECT count(*) FROM " + table + " WHERE organisation_id = ?")
                            .param(organisation.id())
                            .query(Integer.class)
                            .single())
                    .as(table)
                    .isZero();
        }
    }

    private static String look(String answers) {
        return "{\"checklist\":\"varanid-intake\",\"answers\":{" + answers + "}}";
    }

    private static List<String> names(JsonNode score, String list, String field) {
        return StreamSupport.stream(score.at(list).spliterator(), false)
                .map(each -> each.get(field).stringValue())
                .toList();
    }
}
