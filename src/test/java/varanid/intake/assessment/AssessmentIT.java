package varanid.intake.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
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
class AssessmentIT {

    /** The whole of what was answered, in one field or another. */
    private static final String COLD_AND_DULL = "\"conditions\":[\"cold\"],\"answers\":{\"dull\":\"mild\"}";

    @Autowired
    Organisations organisations;

    @Autowired
    JdbcClient jdbc;

    private Organisations.Organisation organisation;
    private Client keeper;
    private String assessments;

    @BeforeEach
    void someAnimal() {
        organisation = organisations.create();
        keeper = organisation.keeper();
        assessments = assessmentsOfANewAnimal(keeper);
    }

    @Test
    void keepsALookAndServesTheSameBytesAgain() throws Exception {
        Answer kept =
                keeper.post(assessments, look("\"answers\":{\"laboured-breathing\":\"mild\"},\"note\":\"at noon\""));
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        assertThat(kept.header("Location")).contains(assessments + "/" + kept.id());
        assertThat(kept.etag()).isEqualTo('"' + sha256(kept.body()) + '"');
        Answer again = read(kept);
        assertThat(again.status()).isEqualTo(200);
        assertThat(again.body()).isEqualTo(kept.body());
        assertThat(again.etag()).isEqualTo(kept.etag());
        assertThat(again.text("/urgency/recommended")).isEqualTo("asap");
        assertThat(again.text("/observerId")).isEqualTo(keeper.personId().toString());
        assertThat(again.text("/note")).isEqualTo("at noon");
        assertThat(again.text("/answers/laboured-breathing")).isEqualTo("mild");
        assertThat(again.text("/animal/lifeStage")).isEqualTo("juvenile");
        assertThat(again.text("/animal/origin"))
                .as("what is not known counts as such")
                .isEqualTo("U");
        assertThat(again.json().at("/urgency").has("within"))
                .as("a moment, not a duration")
                .isFalse();
        assertThat(Instant.parse(again.text("/urgency/by")))
                .isEqualTo(Instant.parse(again.text("/occurredAt")).plus(24, ChronoUnit.HOURS));
    }

    @Test
    void scoresTheSameAsScoresDoes() {
        String answers =
                "\"answers\":{\"laboured-breathing\":\"mild\",\"days-food-refused\":9,\"ticks\":\"not-observed\"}";
        JsonNode kept =
                keeper.post(assessments, look("\"origin\":\"W\"," + answers)).json();
        JsonNode score = keeper.post("/api/v1/scores", look("\"lifeStage\":\"juvenile\",\"origin\":\"W\"," + answers))
                .json();
        for (String part : List.of("score", "isolation", "reasons", "next", "settling", "advice", "checklist")) {
            assertThat(kept.get(part)).as(part).isEqualTo(score.get(part));
        }
    }

    @Test
    void servesTheSameBytesAfterTheAnimalsRecordAndTheAssessmentItselfWereCorrected() {
        Answer first = keeper.post(assessments, look("\"answers\":{\"ticks\":\"few\"}"));
        String animal = assessments.substring(0, assessments.lastIndexOf('/'));
        Answer changed = keeper.put(
                animal,
                "{\"name\":\"Reed\",\"lifeStage\":\"adult\",\"declaredOrigin\":\"C\"}",
                "If-Match",
                keeper.get(animal).etag());
        assertThat(changed.status()).as(changed.body()).isEqualTo(200);
        Answer second =
                keeper.post(assessments, look("\"answers\":{\"ticks\":\"many\"},\"supersedes\":\"" + first.id() + '"'));
        assertThat(second.status()).as(second.body()).isEqualTo(201);
        assertThat(second.text("/animal/lifeStage")).isEqualTo("adult");

        Answer firstAgain = read(first);
        assertThat(firstAgain.body()).isEqualTo(first.body());
        assertThat(firstAgain.etag()).isEqualTo(first.etag());
        assertThat(firstAgain.link("successor-version")).contains(assessments + "/" + second.id());
        assertThat(firstAgain.link("predecessor-version")).isEmpty();
        Answer secondAgain = read(second);
        assertThat(secondAgain.body()).isEqualTo(second.body());
        assertThat(secondAgain.text("/supersedes")).isEqualTo(first.id());
        assertThat(secondAgain.link("predecessor-version")).contains(assessments + "/" + first.id());
        assertThat(secondAgain.link("successor-version")).isEmpty();
    }

    @Test
    void leadsBothWaysFromOneInTheMiddle() {
        Answer first = keeper.post(assessments, look("\"note\":\"1\""));
        Answer second = keeper.post(assessments, look("\"supersedes\":\"" + first.id() + '"'));
        Answer third = keeper.post(assessments, look("\"supersedes\":\"" + second.id() + '"'));
        Answer middle = read(second);
        assertThat(middle.link("predecessor-version")).contains(assessments + "/" + first.id());
        assertThat(middle.link("successor-version")).contains(assessments + "/" + third.id());
    }

    @Test
    void listsThemInOrderWithWhatWasSupersededByWhat() {
        Answer first = keeper.post(assessments, look("\"answers\":{\"ticks\":\"few\"}"));
        Answer second = keeper.post(assessments, look("\"supersedes\":\"" + first.id() + '"'));
        Answer third = keeper.post(assessments, look("\"answers\":{\"laboured-breathing\":\"marked\"}"));
        Answer page = keeper.get(assessments + "?limit=2");
        assertThat(texts(page, "id")).containsExactly(first.id(), second.id());
        assertThat(page.text("/items/0/supersededBy")).isEqualTo(second.id());
        assertThat(page.text("/items/1/supersedes")).isEqualTo(first.id());
        assertThat('"' + page.text("/items/0/digest") + '"').isEqualTo(first.etag());
        Answer next = keeper.get(page.link("next").orElseThrow());
        assertThat(texts(next, "id")).containsExactly(third.id());
        assertThat(next.text("/items/0/urgency")).isEqualTo("stat");
        assertThat(next.link("next")).isEmpty();
    }

    @Test
    void refusesToSupersedeOneTwice() {
        Answer first = keeper.post(assessments, look("\"note\":\"1\""));
        Answer second = keeper.post(assessments, look("\"supersedes\":\"" + first.id() + '"'));
        Answer again = keeper.post(assessments, look("\"supersedes\":\"" + first.id() + '"'));
        assertThat(again.status()).isEqualTo(409);
        assertThat(again.isProblem("conflict")).isTrue();
        assertThat(again.text("/detail")).contains(second.id());
        assertThat(count()).isEqualTo(2);
    }

    @Test
    void refusesToSupersedeWhatIsNotAnAssessmentOfThisAnimal() {
        Answer ofAnother = keeper.post(assessmentsOfANewAnimal(keeper), look("\"note\":\"1\""));
        Client stranger = organisations.create().keeper();
        Answer ofStrangers = stranger.post(assessmentsOfANewAnimal(stranger), look("\"note\":\"1\""));
        for (String id :
                List.of(ofAnother.id(), ofStrangers.id(), UUID.randomUUID().toString())) {
            Answer refused = keeper.post(assessments, look("\"supersedes\":\"" + id + '"'));
            assertThat(refused.status()).isEqualTo(422);
            assertThat(refused.faults()).containsExactly("#/supersedes");
        }
        assertThat(texts(keeper.get(assessments), "id")).isEmpty();
    }

    @Test
    void findsNothingOfAnotherOrganisation() {
        Answer kept = keeper.post(assessments, look("\"note\":\"1\""));
        Client stranger = organisations.create().keeper();
        assertThat(stranger.get(assessments).status()).isEqualTo(404);
        assertThat(stranger.get(assessments + "/" + kept.id()).status()).isEqualTo(404);
        Answer posted = stranger.post(assessments, look("\"note\":\"1\""));
        assertThat(posted.status()).isEqualTo(404);
        assertThat(posted.isProblem("not-found")).isTrue();
        String anotherAnimal = assessmentsOfANewAnimal(keeper);
        assertThat(keeper.get(anotherAnimal + "/" + kept.id()).status())
                .as("of another animal")
                .isEqualTo(404);
        assertThat(count()).isEqualTo(1);
    }

    @Test
    void letsAKeeperOrAnAdministratorKeepALookAndAClinicianReadIt() {
        Client clinician = organisation.clinician();
        Answer refused = clinician.post(assessments, look("\"note\":\"1\""));
        assertThat(refused.status()).isEqualTo(403);
        assertThat(refused.isProblem("forbidden")).isTrue();
        assertThat(count()).isZero();
        Answer kept = organisation.administrator().post(assessments, look("\"note\":\"1\""));
        assertThat(kept.status()).isEqualTo(201);
        assertThat(clinician.get(assessments + "/" + kept.id()).body()).isEqualTo(kept.body());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"occurredAt\":\"2999-01-01T00:00:00Z\"          | #/occurredAt",
                "\"occurredAt\":\"2026-01-01T00:00:00\"           | #/occurredAt",
                "\"occurredAt\":\"yesterday\"                     | #/occurredAt",
                "\"skinTemperature\":{\"value\":85,\"unit\":\"Cel\"} | #/skinTemperature/value",
                "\"skinTemperature\":{\"value\":-3,\"unit\":\"Cel\"} | #/skinTemperature/value",
                "\"skinTemperature\":{\"value\":150,\"unit\":\"[degF]\"} | #/skinTemperature/value",
                "\"skinTemperature\":{\"value\":30}               | #/skinTemperature/unit",
                "\"skinTemperature\":{\"value\":30,\"unit\":\"K\"} | #/skinTemperature/unit",
                "\"skinTemperature\":30                           | #/skinTemperature",
                "\"supersedes\":\"the last one\"                  | #/supersedes",
                "\"note\":\"a\\u0000b\"                           | #/note",
                "\"note\":\"a\\u001bb\"                           | #/note",
                "\"note\":\"\\ud800\"                             | #/note",
                "\"note\":\"\"                                    | #/note",
                "\"note\":7                                       | #/note",
            })
    void refusesWhatIsFaultyAndKeepsNothing(String fields, String pointer) {
        Answer answer = keeper.post(assessments, look(fields));
        assertThat(answer.status()).as(answer.body()).isEqualTo(422);
        assertThat(answer.faults()).containsExactly(pointer);
        assertThat(count()).isZero();
    }

    @Test
    void namesFaultsOfTheLookAndOfTheRestTogether() {
        Answer answer = keeper.post(assessments, look("""
                "occurredAt":"2999-01-01T00:00:00Z","skinTemperature":{"value":85,"unit":"Cel"},"lifeStage":"egg",
                "answers":{"ticks":"mild","wing-droop":"present"},"weight":3"""));
        assertThat(answer.faults())
                .containsExactlyInAnyOrder(
                        "#/occurredAt",
                        "#/skinTemperature/value",
                        "#/lifeStage",
                        "#/answers/ticks",
                        "#/answers/wing-droop",
                        "#/weight");
    }

    @Test
    void takesASkinTemperatureInFahrenheitAndOneThatIsConfirmed() {
        Answer warm = keeper.post(assessments, look("\"skinTemperature\":{\"value\":85,\"unit\":\"[degF]\"}"));
        assertThat(warm.status()).isEqualTo(201);
        assertThat(warm.json().at("/skinTemperature/value").decimalValue()).isEqualByComparingTo("85");
        assertThat(warm.text("/skinTemperature/unit")).isEqualTo("[degF]");
        // (85 - 32) * 5 / 9
        assertThat(warm.json().at("/skinTemperature/celsius").decimalValue()).isEqualByComparingTo("29.4444");
        Answer hot = keeper.post(
                assessments, look("\"skinTemperature\":{\"value\":52,\"unit\":\"Cel\",\"confirmed\":true}"));
        assertThat(hot.status()).isEqualTo(201);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<script>alert(1)</script> & \"quotes\" 'and' \\backslashes\\",
                "'; DROP TABLE assessment; -- ${jndi:ldap://x} {{7*7}} %s %n =1+1",
                "\u202Eright to left\u202C, \uD83E\uDD8E, \u00E4\u00F6\u00FC, \u4E2D\u6587, e\u0301",
                "lines\nand\ttabs",
            })
    void keepsAHostileNoteAsItIs(String note) {
        Answer kept =
                keeper.post(assessments, look("\"note\":" + JsonMapper.shared().writeValueAsString(note)));
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        Answer again = read(kept);
        assertThat(again.body()).isEqualTo(kept.body());
        // In normal form C, the one that PostgreSQL and people search by.
        assertThat(again.text("/note")).isEqualTo(java.text.Normalizer.normalize(note, java.text.Normalizer.Form.NFC));
    }

    @Test
    void saysOnWhichDateOfTheOrganisationsZoneAThingIsDue() {
        Instant lookedAt = Instant.now().minus(3, ChronoUnit.DAYS).truncatedTo(ChronoUnit.MILLIS);
        for (String zone : List.of("Pacific/Kiritimati", "Pacific/Pago_Pago")) {
            Client there = organisations.create(ZoneId.of(zone)).keeper();
            Answer kept = there.post(
                    assessmentsOfANewAnimal(there),
                    look("\"occurredAt\":\"" + lookedAt + "\",\"answers\":{\"weight-trend\":\"not-yet-due\"}"));
            JsonNode unknown = StreamSupport.stream(kept.json().at("/unknowns").spliterator(), false)
                    .filter(each -> each.get("finding").stringValue().equals("weight-trend"))
                    .findFirst()
                    .orElseThrow();
            assertThat(unknown.get("why").stringValue()).isEqualTo("not-yet-due");
            // The two zones are 25 hours apart, so their dates always differ.
            assertThat(unknown.get("dueOn").stringValue())
                    .isEqualTo(LocalDate.ofInstant(lookedAt, ZoneId.of(zone))
                            .plusDays(7)
                            .toString());
            assertThat(unknown.has("dueAfter")).isFalse();
        }
    }

    @Test
    void excusesAColdAnimalOnceADay() {
        String noon = at("2026-03-09T12:00:00Z");
        assertThat(isExcused(keeper.post(assessments, look(noon + COLD_AND_DULL))))
                .isTrue();
        Answer second = keeper.post(assessments, look(at("2026-03-09T13:00:00Z") + COLD_AND_DULL));
        assertThat(isExcused(second)).as("it was to be warm by then").isFalse();
        assertThat(second.text("/urgency/lowest")).isEqualTo("urgent");
        assertThat(isExcused(keeper.post(assessments, look(at("2026-03-10T00:30:00Z") + COLD_AND_DULL))))
                .as("the next day")
                .isTrue();
        assertThat(isExcused(keeper.post(assessmentsOfANewAnimal(keeper), look(noon + COLD_AND_DULL))))
                .as("another animal")
                .isTrue();
    }

    @Test
    void countsTheDayInTheOrganisationsZone() {
        // 23:30 and 00:30 in UTC are one day in Auckland, 12:30 and 13:30; 10:30 and 11:30 are two.
        Client there = organisations.create(ZoneId.of("Pacific/Auckland")).keeper();
        String animal = assessmentsOfANewAnimal(there);
        assertThat(isExcused(there.post(animal, look(at("2026-03-09T23:30:00Z") + COLD_AND_DULL))))
                .isTrue();
        assertThat(isExcused(there.post(animal, look(at("2026-03-10T00:30:00Z") + COLD_AND_DULL))))
                .isFalse();
        assertThat(isExcused(there.post(animal, look(at("2026-03-10T10:30:00Z") + COLD_AND_DULL))))
                .isFalse();
        assertThat(isExcused(there.post(animal, look(at("2026-03-10T11:30:00Z") + COLD_AND_DULL))))
                .isTrue();
    }

    @Test
    void excusesEachFindingByItself() {
        keeper.post(assessments, look(at("2026-03-09T12:00:00Z") + COLD_AND_DULL));
        Answer second = keeper.post(
                assessments,
                look(at("2026-03-09T13:00:00Z")
                        + "\"conditions\":[\"cold\"],\"answers\":{\"no-tongue-flick\":\"present\",\"dull\":\"mild\"}"));
        assertThat(excused(second)).containsExactly("no-tongue-flick");
    }

    @Test
    void doesNotCountTheExcuseOfALookThatWasCorrected() {
        String noon = at("2026-03-09T12:00:00Z");
        Answer first = keeper.post(assessments, look(noon + COLD_AND_DULL));
        Answer second = keeper.post(assessments, look(noon + COLD_AND_DULL + ",\"supersedes\":\"" + first.id() + '"'));
        assertThat(isExcused(second))
                .as("a correction of the look that was excused")
                .isTrue();
        Answer third = keeper.post(assessments, look(noon + COLD_AND_DULL + ",\"supersedes\":\"" + second.id() + '"'));
        assertThat(isExcused(third)).as("a correction of the correction").isTrue();
        Answer warm = keeper.post(
                assessments, look(noon + "\"answers\":{\"dull\":\"mild\"},\"supersedes\":\"" + third.id() + '"'));
        assertThat(isExcused(warm)).as("it was not cold after all").isFalse();
        Answer later = keeper.post(assessments, look(at("2026-03-09T18:00:00Z") + COLD_AND_DULL));
        assertThat(isExcused(later)).as("the day's excuse was never needed").isTrue();
    }

    private static String at(String moment) {
        return "\"occurredAt\":\"" + moment + "\",";
    }

    private static String look(String fields) {
        return "{\"checklist\":\"varanid-intake\",\"version\":1," + fields + "}";
    }

    private Answer read(Answer kept) {
        return keeper.get(kept.header("Location").orElseThrow());
    }

    private static boolean isExcused(Answer kept) {
        return excused(kept).contains("dull");
    }

    private static List<String> excused(Answer kept) {
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        return StreamSupport.stream(kept.json().at("/lookAgain").spliterator(), false)
                .map(each -> each.get("finding").stringValue())
                .toList();
    }

    private static List<String> texts(Answer page, String field) {
        return StreamSupport.stream(page.json().at("/items").spliterator(), false)
                .map(each -> each.get(field).stringValue())
                .toList();
    }

    private int count() {
        return jdbc.sql("SELECT count(*) FROM assessment WHERE organisation_id = ?")
                .param(organisation.id())
                .query(Integer.class)
                .single();
    }

    private static String assessmentsOfANewAnimal(Client keeper) {
        Answer animal = keeper.post("/api/v1/animals", "{\"lifeStage\":\"juvenile\"}");
        return animal.header("Location").orElseThrow() + "/assessments";
    }

    private static String sha256(String text) throws Exception {
        return HexFormat.of()
                .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    }
}
