package varanid.intake.sample;

import static org.assertj.core.api.Assertions.assertThat;

import java.text.Normalizer;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationListener;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.PayloadApplicationEvent;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.animal.AnimalChanged;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class SampleIT {

    @Autowired
    Organisations organisations;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Samples register;

    @Autowired
    ConfigurableApplicationContext context;

    private Organisations.Organisation organisation;
    private Client keeper;
    private String animal;
    private String samples;

    @BeforeEach
    void someAnimal() {
        organisation = organisations.create();
        keeper = organisation.keeper();
        animal = keeper.post("/api/v1/animals", "{}").header("Location").orElseThrow();
        samples = animal + "/samples";
    }

    @Test
    void writesDownASampleAndShowsItAgain() {
        Answer kept = keeper.post(samples, """
                {"kind": "stool", "takenAt": "2026-03-09T10:00:00Z", "passedAt": "2026-03-09T08:30:00+01:00",
                 "methods": ["smear-and-flotation", "pcr"], "laboratory": "Reed Bank", "storage": "cool",
                 "note": "soft"}""");
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        Answer again = keeper.get(kept.header("Location").orElseThrow());
        assertThat(again.json()).isEqualTo(kept.json());
        assertThat(again.text("/takenOn")).isEqualTo("2026-03-09");
        // From 07:30 to 10:00.
        assertThat(again.json().at("/freshHours").intValue()).isEqualTo(2);
        assertThat(again.text("/outcome")).isEqualTo("pending");
        assertThat(texts(again, "/awaited")).containsExactly("smear-and-flotation", "pcr");
        assertThat(again.text("/recordedBy")).isEqualTo(keeper.personId().toString());
    }

    @ParameterizedTest
    @CsvSource({
        "2026-03-09T07:00:00Z, 3", // no longer less than three hours old
        "2026-03-09T07:00:01Z, 2",
        "2026-03-09T10:00:00Z, 0",
        "2026-03-07T10:00:00Z, 48"
    })
    void countsWholeHoursSinceItWasPassed(String passedAt, int hours) {
        Answer kept = keeper.post(
                samples, "{\"kind\":\"stool\",\"takenAt\":\"2026-03-09T10:00:00Z\",\"passedAt\":\"" + passedAt + "\"}");
        assertThat(kept.json().at("/freshHours").intValue()).isEqualTo(hours);
        assertThat(standing().get(0).freshHours()).contains(hours);
    }

    @Test
    void leavesFreshnessUnknownWhereNobodySaidAnything() {
        Answer kept = keeper.post(samples, "{\"kind\":\"stool\"}");
        assertThat(kept.json().has("freshHours")).isFalse();
        assertThat(standing().get(0).freshHours()).isEmpty();
        Answer told = keeper.post(samples, "{\"kind\":\"stool\",\"freshHours\":0}");
        assertThat(told.json().at("/freshHours").intValue()).isZero();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "                                                                  | #/kind",
                "\"kind\":\"tooth\"                                                | #/kind",
                "\"kind\":\"stool\",\"takenAt\":\"2999-01-01T00:00:00Z\"           | #/takenAt",
                "\"kind\":\"stool\",\"passedAt\":\"2999-01-01T00:00:00Z\"          | #/passedAt",
                "\"kind\":\"stool\",\"takenAt\":\"2026-03-09T10:00:00Z\",\"passedAt\":\"2026-03-09T10:00:01Z\" | #/passedAt",
                "\"kind\":\"stool\",\"takenAt\":\"2026-03-09T10:00:00Z\",\"passedAt\":\"2026-03-09T09:00:00Z\",\"freshHours\":1 | #/freshHours",
                "\"kind\":\"stool\",\"freshHours\":-1                              | #/freshHours",
                "\"kind\":\"stool\",\"freshHours\":1.5                             | #/freshHours",
                "\"kind\":\"stool\",\"methods\":[\"tea-leaves\"]                   | #/methods/0",
                "\"kind\":\"stool\",\"methods\":[\"pcr\",\"pcr\"]                  | #/methods",
                "\"kind\":\"stool\",\"storage\":\"pocket\"                         | #/storage",
                "\"kind\":\"stool\",\"note\":\"a\\u0000b\"                         | #/note",
                "\"kind\":\"stool\",\"laboratory\":\"two\\nlines\"                 | #/laboratory",
                "\"kind\":\"stool\",\"supersedes\":\"the last one\"                | #/supersedes",
                "\"kind\":\"stool\",\"supersedes\":\"01890a5d-ac96-774b-bcce-b302099a8057\" | #/supersedes",
                "\"kind\":\"stool\",\"outcome\":\"negative\"                       | #/outcome",
            })
    void refusesAFaultySampleAndKeepsNothing(String fields, String pointer) {
        Answer answer = keeper.post(samples, "{" + (fields == null ? "" : fields) + "}");
        assertThat(answer.status()).as(answer.body()).isEqualTo(422);
        assertThat(answer.faults()).containsExactly(pointer);
        assertThat(count("sample")).isZero();
    }

    @Test
    void namesEveryFaultAtOnce() {
        assertThat(keeper.post(samples, "{\"freshHours\":-1,\"methods\":[\"x\",\"pcr\",7],\"storage\":1,\"colour\":2}")
                        .faults())
                .containsExactlyInAnyOrder(
                        "#/kind", "#/freshHours", "#/methods/0", "#/methods/2", "#/storage", "#/colour");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<script>alert(1)</script> & \"quotes\" 'and' \\backslashes\\",
                "'; DROP TABLE sample_result; -- ${jndi:ldap://x} {{7*7}} %s =1+1",
                "\u202Eright to left\u202C, \uD83E\uDD8E, \u4E2D\u6587, e\u0301",
                "lines\nand\ttabs",
            })
    void keepsTheReportsOwnWordsAsTheyAre(String words) {
        String sample = sample("");
        String text = JsonMapper.shared().writeValueAsString(words);
        assertThat(keeper.post(
                                sample + "/results",
                                "{\"method\":\"flotation\",\"outcome\":\"negative\",\"report\":" + text + "}")
                        .status())
                .isEqualTo(201);
        assertThat(keeper.get(sample).text("/results/0/report"))
                .isEqualTo(Normalizer.normalize(words, Normalizer.Form.NFC));
        assertThat(keeper.post(samples, "{\"kind\":\"other\",\"note\":" + text + "}")
                        .status())
                .isEqualTo(201);
    }

    @Test
    void isNoNegativeToWhoeverDecidesByItWhileAnotherResultIsAwaited() {
        String sample = sample("\"methods\":[\"flotation\",\"pcr\"],");
        result(sample, "\"method\":\"flotation\",\"outcome\":\"negative\"");
        assertThat(standing().get(0).outcome()).isEqualTo(KeptSample.Outcome.PENDING);
        result(sample, "\"method\":\"pcr\",\"outcome\":\"negative\"");
        assertThat(standing().get(0).outcome()).isEqualTo(KeptSample.Outcome.NEGATIVE);
    }

    @Test
    void isPendingUntilAResultStands() {
        String sample = sample("\"methods\":[\"flotation\",\"pcr\"],");
        assertThat(outcome(sample)).isEqualTo("pending");
        result(sample, "\"method\":\"pcr\",\"outcome\":\"unusable\"");
        assertThat(outcome(sample)).as("an unusable result counts for nothing").isEqualTo("pending");
        result(sample, "\"method\":\"flotation\",\"outcome\":\"negative\"");
        assertThat(outcome(sample)).isEqualTo("negative");
        assertThat(standing().get(0).outcome()).isEqualTo(KeptSample.Outcome.NEGATIVE);
    }

    @Test
    void isUnusableWhenItsOnlyResultIsOrItWasLost() {
        String one = sample("\"methods\":[\"flotation\"],");
        result(one, "\"method\":\"flotation\",\"outcome\":\"unusable\"");
        assertThat(outcome(one)).isEqualTo("unusable");
        String other = sample("\"methods\":[\"flotation\"],");
        Answer lost = keeper.post(other + "/steps", "{\"step\":\"lost\",\"note\":\"in the post\"}");
        assertThat(lost.status()).as(lost.body()).isEqualTo(201);
        assertThat(outcome(other)).isEqualTo("unusable");
        assertThat(texts(keeper.get(other), "/awaited")).isEmpty();
        Answer found = keeper.post(
                other + "/steps", "{\"step\":\"received\",\"supersedes\":\"" + lost.id() + "\",\"laboratory\":\"B\"}");
        assertThat(found.status()).as(found.body()).isEqualTo(201);
        assertThat(outcome(other)).as("it was found").isEqualTo("pending");
        assertThat(keeper.get(other).text("/steps/0/supersededBy")).isEqualTo(found.id());
    }

    @Test
    void isPositiveWhereAnyResultIsAndNeverNegativeForAnEquivocalOne() {
        String sample = sample("");
        result(sample, "\"method\":\"flotation\",\"outcome\":\"negative\"");
        result(sample, "\"method\":\"pcr\",\"outcome\":\"equivocal\",\"found\":[{\"agent\":\"cryptosporidium\"}]");
        assertThat(outcome(sample)).isEqualTo("equivocal");
        assertThat(standing().get(0).outcome())
                .as("whoever waits for a clear answer goes on waiting")
                .isEqualTo(KeptSample.Outcome.PENDING);
        assertThat(standing().get(0).agents()).isEmpty();
        result(
                sample,
                "\"method\":\"direct-smear\",\"outcome\":\"positive\",\"found\":[{\"agent\":\"coccidia\","
                        + "\"significant\":false},{\"agent\":\"pinworm\"}]");
        assertThat(outcome(sample)).isEqualTo("positive");
        assertThat(texts(keeper.get(sample), "/agents")).containsExactly("coccidia", "pinworm");
        assertThat(standing().get(0).agents()).isEqualTo(Set.of("coccidia", "pinworm"));
        assertThat(keeper.get(sample)
                        .json()
                        .at("/results/2/found/0/significant")
                        .booleanValue())
                .isFalse();
        assertThat(keeper.get(sample).json().at("/results/2/found/1").has("significant"))
                .as("nobody said")
                .isFalse();
    }

    @Test
    void correctsAResultAndCountsOnlyTheCorrection() {
        String sample = sample("");
        Answer wrong =
                result(sample, "\"method\":\"pcr\",\"outcome\":\"positive\",\"found\":[{\"agent\":\"entamoeba\"}]");
        Answer right =
                result(sample, "\"method\":\"pcr\",\"outcome\":\"negative\",\"supersedes\":\"" + wrong.id() + "\"");
        assertThat(outcome(sample)).isEqualTo("negative");
        assertThat(texts(keeper.get(sample), "/agents")).isEmpty();
        assertThat(keeper.get(sample).text("/results/0/supersededBy")).isEqualTo(right.id());
        assertThat(keeper.get(sample).text("/results/0/outcome"))
                .as("stays readable")
                .isEqualTo("positive");
        Answer again = keeper.post(
                sample + "/results",
                "{\"method\":\"pcr\",\"outcome\":\"unusable\",\"supersedes\":\"" + wrong.id() + "\"}");
        assertThat(again.isProblem("conflict")).isTrue();
        assertThat(again.text("/detail")).contains(right.id());
        Answer ofAnother = keeper.post(
                sample("") + "/results",
                "{\"method\":\"pcr\",\"outcome\":\"unusable\",\"supersedes\":\"" + right.id() + "\"}");
        assertThat(ofAnother.faults()).containsExactly("#/supersedes");
    }

    @Test
    void correctsASampleWithoutLosingItsStepsAndResults() {
        String first = sample("");
        keeper.post(first + "/steps", "{\"step\":\"sent\",\"occurredAt\":\"2026-03-10T08:00:00Z\"}");
        result(first, "\"method\":\"flotation\",\"outcome\":\"negative\",\"reportedOn\":\"2026-03-12\"");
        Answer corrected = keeper.post(
                samples,
                "{\"kind\":\"urate\",\"takenAt\":\"2026-03-08T10:00:00Z\",\"supersedes\":\"" + id(first) + "\"}");
        assertThat(corrected.status()).as(corrected.body()).isEqualTo(201);
        assertThat(corrected.text("/outcome")).isEqualTo("negative");
        assertThat(corrected.text("/steps/0/step")).isEqualTo("sent");
        assertThat(keeper.get(first).text("/supersededBy")).isEqualTo(corrected.id());
        assertThat(standing()).hasSize(1);
        assertThat(standing().get(0).id()).hasToString(corrected.id());
        assertThat(standing().get(0).takenOn()).isEqualTo("2026-03-08");
        for (String late : List.of(
                keeper.post(first + "/results", "{\"method\":\"pcr\",\"outcome\":\"negative\"}")
                        .text("/detail"),
                keeper.post(first + "/steps", "{\"step\":\"received\"}").text("/detail"),
                keeper.post(samples, "{\"kind\":\"stool\",\"supersedes\":\"" + id(first) + "\"}")
                        .text("/detail"))) {
            assertThat(late).contains(corrected.id());
        }
        Answer tooLate = keeper.post(
                samples,
                "{\"kind\":\"urate\",\"takenAt\":\"2026-03-11T10:00:00Z\",\"supersedes\":\"" + corrected.id() + "\"}");
        assertThat(tooLate.faults()).as("it was sent the day before").containsExactly("#/takenAt");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"outcome\":\"negative\"                                                 | #/method",
                "\"method\":\"pcr\"                                                       | #/outcome",
                "\"method\":\"pcr\",\"outcome\":\"pending\"                               | #/outcome",
                "\"method\":\"pcr\",\"outcome\":\"positive\"                              | #/found",
                "\"method\":\"pcr\",\"outcome\":\"positive\",\"found\":[]                 | #/found",
                "\"method\":\"pcr\",\"outcome\":\"negative\",\"found\":[{\"agent\":\"mites\"}] | #/found",
                "\"method\":\"pcr\",\"outcome\":\"unusable\",\"found\":[{\"agent\":\"mites\"}] | #/found",
                "\"method\":\"pcr\",\"outcome\":\"positive\",\"found\":[{\"agent\":\"helminths\"}] | #/found/0/agent",
                "\"method\":\"pcr\",\"outcome\":\"positive\",\"found\":[{\"significant\":true}] | #/found/0/agent",
                "\"method\":\"pcr\",\"outcome\":\"positive\",\"found\":[{\"agent\":\"mites\"},{\"agent\":\"mites\"}] | #/found",
                "\"method\":\"pcr\",\"outcome\":\"positive\",\"found\":[\"mites\"]        | #/found/0",
                "\"method\":\"pcr\",\"outcome\":\"negative\",\"reportedOn\":\"2999-01-01\" | #/reportedOn",
                "\"method\":\"pcr\",\"outcome\":\"negative\",\"reportedOn\":\"2026-03-08\" | #/reportedOn",
            })
    void refusesAFaultyResultAndKeepsNothing(String fields, String pointer) {
        Answer answer = keeper.post(sample("") + "/results", "{" + fields + "}");
        assertThat(answer.status()).as(answer.body()).isEqualTo(422);
        assertThat(answer.faults()).containsExactly(pointer);
        assertThat(count("sample_result")).isZero();
    }

    @Test
    void refusesAStepBeforeTheSampleWasTakenOrInTheFuture() {
        String sample = sample("");
        for (String at : List.of("2026-03-09T09:59:59Z", "2999-01-01T00:00:00Z")) {
            assertThat(keeper.post(sample + "/steps", "{\"step\":\"sent\",\"occurredAt\":\"" + at + "\"}")
                            .faults())
                    .containsExactly("#/occurredAt");
        }
        assertThat(keeper.post(sample + "/steps", "{\"step\":\"eaten\"}").faults())
                .containsExactly("#/step");
        assertThat(count("sample_step")).isZero();
    }

    @Test
    void tellsOtherFeaturesWhatWasFoundOnTheDayItWasReportedAndWhatWasCorrected() {
        List<Object> told = new ArrayList<>();
        ApplicationListener<PayloadApplicationEvent<?>> listener = event -> told.add(event.getPayload());
        context.addApplicationListener(listener);
        try {
            String sample = sample("");
            told.clear();
            Answer wrong = result(
                    sample,
                    "\"method\":\"direct-smear\",\"outcome\":\"positive\",\"reportedOn\":\"2026-03-13\",\"found\":"
                            + "[{\"agent\":\"coccidia\",\"significant\":true},{\"agent\":\"tapeworm\"}]");
            UUID animalId = UUID.fromString(id(animal));
            LocalDate on = LocalDate.of(2026, 3, 13);
            LocalDate takenOn = LocalDate.of(2026, 3, 9);
            UUID result = UUID.fromString(wrong.id());
            assertThat(told)
                    .containsExactly(
                            new AgentFound(organisation.id(), animalId, result, "coccidia", true, on, takenOn),
                            new AgentFound(organisation.id(), animalId, result, "tapeworm", false, on, takenOn),
                            AnimalChanged.of(organisation.id(), animalId));
            told.clear();
            result(
                    sample,
                    "\"method\":\"direct-smear\",\"outcome\":\"equivocal\",\"found\":[{\"agent\":\"coccidia\"}],"
                            + "\"supersedes\":\"" + wrong.id() + "\"");
            assertThat(told)
                    .containsExactly(
                            new ResultCorrected(organisation.id(), animalId, result),
                            AnimalChanged.of(organisation.id(), animalId));
        } finally {
            context.removeApplicationListener(listener);
        }
    }

    @Test
    void takesTheDayInTheOrganisationsZone() {
        Client there = organisations.create(ZoneId.of("Pacific/Auckland")).keeper();
        String where = there.post("/api/v1/animals", "{}").header("Location").orElseThrow() + "/samples";
        Answer kept = there.post(where, "{\"kind\":\"stool\",\"takenAt\":\"2026-03-09T12:00:00Z\"}");
        assertThat(kept.text("/takenOn")).isEqualTo("2026-03-10");
        assertThat(there.post(
                                where + "/" + kept.id() + "/results",
                                "{\"method\":\"pcr\",\"outcome\":\"negative\",\"reportedOn\":\"2026-03-09\"}")
                        .faults())
                .containsExactly("#/reportedOn");
    }

    @Test
    void takesNowWhereNoTimeIsNamed() {
        Instant before = Instant.now().truncatedTo(ChronoUnit.MILLIS);
        Answer kept = keeper.post(samples, "{\"kind\":\"blood\"}");
        assertThat(Instant.parse(kept.text("/takenAt"))).isBetween(before, Instant.now());
        String sample = kept.header("Location").orElseThrow();
        Answer result = result(sample, "\"method\":\"serology\",\"outcome\":\"negative\"");
        assertThat(result.text("/reportedOn"))
                .isEqualTo(LocalDate.ofInstant(Instant.parse(result.text("/recordedAt")), ZoneOffset.UTC)
                        .toString());
    }

    @Test
    void listsThemInPagesInTheOrderTheyWereRecorded() {
        String first = sample("");
        String second = sample("");
        Answer third = keeper.post(samples, "{\"kind\":\"urate\",\"supersedes\":\"" + id(first) + "\"}");
        result(second, "\"method\":\"flotation\",\"outcome\":\"negative\"");
        Answer page = keeper.get(samples + "?limit=2");
        assertThat(ids(page)).containsExactly(id(first), id(second));
        assertThat(page.text("/items/0/supersededBy")).isEqualTo(third.id());
        assertThat(page.text("/items/1/outcome")).isEqualTo("negative");
        Answer next = keeper.get(page.link("next").orElseThrow());
        assertThat(ids(next)).containsExactly(third.id());
        assertThat(next.link("next")).isEmpty();
    }

    @Test
    void doesTheSameRequestOnce() {
        String body = "{\"kind\":\"stool\"}";
        Answer once = keeper.post(samples, body, "Idempotency-Key", "k");
        Answer twice = keeper.post(samples, body, "Idempotency-Key", "k");
        assertThat(twice.body()).isEqualTo(once.body());
        assertThat(twice.header("Idempotency-Replayed")).contains("true");
        String results = once.header("Location").orElseThrow() + "/results";
        String negative = "{\"method\":\"flotation\",\"outcome\":\"negative\"}";
        Answer result = keeper.post(results, negative, "Idempotency-Key", "r");
        assertThat(keeper.post(results, negative, "Idempotency-Key", "r").id()).isEqualTo(result.id());
        assertThat(count("sample")).isEqualTo(1);
        assertThat(count("sample_result")).isEqualTo(1);
    }

    @Test
    void letsAKeeperWriteAndAClinicianWriteResultsOnly() {
        Client clinician = organisation.clinician();
        assertThat(clinician.post(samples, "{\"kind\":\"stool\"}").isProblem("forbidden"))
                .isTrue();
        String sample = sample("");
        assertThat(clinician.post(sample + "/steps", "{\"step\":\"sent\"}").status())
                .isEqualTo(403);
        assertThat(clinician
                        .post(sample + "/results", "{\"method\":\"flotation\",\"outcome\":\"negative\"}")
                        .status())
                .isEqualTo(201);
        assertThat(clinician.get(sample).text("/outcome")).isEqualTo("negative");
        assertThat(organisation
                        .administrator()
                        .post(samples, "{\"kind\":\"stool\"}")
                        .status())
                .isEqualTo(201);
    }

    @Test
    void findsNothingOfAnotherOrganisationOrAnotherAnimal() {
        String sample = sample("");
        Client stranger = organisations.create().keeper();
        assertThat(stranger.get(samples).status()).isEqualTo(404);
        assertThat(stranger.get(sample).status()).isEqualTo(404);
        assertThat(stranger.post(sample + "/results", "{\"method\":\"pcr\",\"outcome\":\"negative\"}")
                        .status())
                .isEqualTo(404);
        String another = keeper.post("/api/v1/animals", "{}").header("Location").orElseThrow();
        assertThat(keeper.get(another + "/samples/" + id(sample)).status()).isEqualTo(404);
        assertThat(keeper.post(another + "/samples", "{\"kind\":\"stool\",\"supersedes\":\"" + id(sample) + "\"}")
                        .faults())
                .containsExactly("#/supersedes");
        assertThat(count("sample_result")).isZero();
    }

    /** Taken at ten on 9 March 2026. */
    private String sample(String fields) {
        Answer kept = keeper.post(samples, "{" + fields + "\"kind\":\"stool\",\"takenAt\":\"2026-03-09T10:00:00Z\"}");
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        return kept.header("Location").orElseThrow();
    }

    private Answer result(String sample, String fields) {
        Answer kept = keeper.post(sample + "/results", "{" + fields + "}");
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        return kept;
    }

    private String outcome(String sample) {
        return keeper.get(sample).text("/outcome");
    }

    private List<KeptSample> standing() {
        return register.list(organisation.id(), UUID.fromString(id(animal)));
    }

    private static String id(String path) {
        return path.substring(path.lastIndexOf('/') + 1);
    }

    private static List<String> ids(Answer page) {
        return StreamSupport.stream(page.json().at("/items").spliterator(), false)
                .map(each -> each.get("id").stringValue())
                .toList();
    }

    private static List<String> texts(Answer answer, String pointer) {
        return StreamSupport.stream(answer.json().at(pointer).spliterator(), false)
                .map(each -> each.stringValue())
                .toList();
    }

    private int count(String table) {
        return jdbc.sql("SELECT count(*) FROM " + table + " WHERE organisation_id = ?")
                .param(organisation.id())
                .query(Integer.class)
                .single();
    }
}
