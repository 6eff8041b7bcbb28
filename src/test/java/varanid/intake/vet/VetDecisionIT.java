package varanid.intake.vet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationListener;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.PayloadApplicationEvent;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;
import varanid.intake.service.Answer;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** What a clinician answers with an account, and what then holds. */
@ServiceTest
class VetDecisionIT {

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    ConfigurableApplicationContext context;

    Clinic clinic;

    @BeforeEach
    void someAnimal() {
        clinic = new Clinic(organisations);
    }

    private final List<VetAnswered> heard = new ArrayList<>();
    private final ApplicationListener<PayloadApplicationEvent<VetAnswered>> ear = new Ear();

    @AfterEach
    void noLongerListen() {
        context.removeApplicationListener(ear);
    }

    @Test
    void keepsEveryWordOfIt() {
        Answer kept = clinic.clinician.post(
                clinic.path("/vet-decisions"), Clinic.body(clock.instant(), """
                "answeredAt":"%s","urgency":"asap","isolation":"strict",
                "findings":[{"finding":"ticks","verdict":"confirmed","level":"few","words":"three at the vent"},
                    {"finding":"mites","verdict":"rejected"},
                    {"verdict":"added","words":"a heart murmur"}],
                "tests":[{"words":"throat swab","on":"2026-03-01","result":"negative"},{"words":"blood"}],
                "instructions":"0.1 ml of what I gave you,\\n twice a day. <b>Not</b> more.",
                "rulings":[{"cause":"air-sign","ruling":"goes-on"}],
                "approvesRelease":false,"words":"Call me."
                """.formatted(clock.instant())));
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        Answer read = clinic.keeper.get(clinic.path("/vet-decisions/" + kept.id()));
        assertThat(read.json()).isEqualTo(kept.json());
        assertThat(kept.header("Location")).contains(clinic.path("/vet-decisions/" + kept.id()));
        assertThat(read.text("/instructions")).isEqualTo("0.1 ml of what I gave you,\n twice a day. <b>Not</b> more.");
        assertThat(read.text("/findings/0/words")).isEqualTo("three at the vent");
        assertThat(read.json().at("/findings/2").has("finding")).isFalse();
        assertThat(read.text("/tests/0/result")).isEqualTo("negative");
        assertThat(read.text("/rulings/0/ruling")).isEqualTo("goes-on");
        assertThat(read.text("/writer/licenceStatement")).isEqualTo("Register of Vets 4711");
        assertThat(read.text("/recordedVia")).isEqualTo("account");
        assertThat(read.text("/recordedBy"))
                .isEqualTo(clinic.clinician.personId().toString());
        assertThat(read.json().get("confirmed").booleanValue()).isTrue();
        assertThat(clinic.keeper.get(clinic.path("/vet-decisions")).json().get("items"))
                .hasSize(1);
    }

    @Test
    void standsAboveWhatIsWorkedOutFromWhatTheVetHadSeen() {
        clinic.look("{\"laboured-breathing\":\"mild\"}");
        assertThat(clinic.recommendation().text("/urgency/code")).isEqualTo("asap");
        assertThat(clinic.recommendation().text("/urgency/by")).isEqualTo("computed");
        clinic.answers(clock.instant(), "\"urgency\":\"routine\",\"isolation\":\"standard\"");
        Answer holds = clinic.recommendation();
        assertThat(holds.text("/urgency/code")).isEqualTo("routine");
        assertThat(holds.text("/urgency/by")).isEqualTo("vet");
        assertThat(holds.text("/isolation/code")).isEqualTo("standard");
        assertThat(holds.text("/computed/urgency")).isEqualTo("asap");
        assertThat(holds.text("/headline")).startsWith("Routine check, says Ines Okafor (Harbour Reptile Practice), ");
        assertThat(holds.json().get("callVet").booleanValue()).isFalse();
        assertThat(holds.json().has("alert")).isFalse();
    }

    @Test
    void whatIsNewSinceThenHeadsEveryPage() {
        clinic.look("{\"laboured-breathing\":\"absent\"}");
        clinic.answers(clock.instant(), "\"urgency\":\"routine\"");
        clock.later(Duration.ofMinutes(2), () -> clinic.look("{\"laboured-breathing\":\"mild\"}"));
        Answer holds = clinic.recommendation();
        assertThat(holds.text("/urgency/code")).isEqualTo("asap");
        assertThat(holds.json().get("callVet").booleanValue()).isTrue();
        assertThat(holds.text("/alert"))
                .isEqualTo(
                        "New since the vet's answer: call. Laboured breathing: sides move more than they should but the neck stays"
                                + " still");
        assertThat(holds.text("/headline")).isEqualTo("Vet within 24 hours. New since the vet's answer: call");
        clock.later(
                Duration.ofMinutes(4),
                () -> clinic.answers(clock.instant(), "\"urgency\":\"routine\",\"words\":\"heard it\""));
        clock.later(
                Duration.ofMinutes(5),
                () -> assertThat(clinic.recommendation().text("/urgency/code")).isEqualTo("routine"));
    }

    @Test
    void aCorrectionOfALookThatTheVetHadSeenCallsIfItAddsSomething() {
        String seen = clinic.look("{\"laboured-breathing\":\"absent\"}");
        clinic.answers(clock.instant(), "\"urgency\":\"routine\"");
        clock.later(
                Duration.ofMinutes(2),
                () -> Clinic.created(clinic.keeper.post(
                        clinic.path("/assessments"),
                        "{\"checklist\":\"varanid-intake\",\"version\":1,\"supersedes\":\"" + seen
                                + "\",\"answers\":{\"laboured-breathing\":\"marked\"}}")));
        Answer holds = clinic.recommendation();
        assertThat(holds.text("/urgency/code")).isEqualTo("stat");
        assertThat(holds.json().get("callVet").booleanValue()).isTrue();
    }

    @Test
    void theCorrectionOfANewLookTakesItsAlertWithIt() {
        clinic.look("{\"laboured-breathing\":\"absent\"}");
        clinic.answers(clock.instant(), "\"urgency\":\"routine\"");
        clock.later(Duration.ofMinutes(2), () -> {
            String wrong = clinic.look("{\"laboured-breathing\":\"marked\"}");
            Clinic.created(clinic.keeper.post(
                    clinic.path("/assessments"),
                    "{\"checklist\":\"varanid-intake\",\"version\":1,\"supersedes\":\"" + wrong
                            + "\",\"answers\":{\"laboured-breathing\":\"absent\"}}"));
        });
        assertThat(clinic.recommendation().text("/urgency/code")).isEqualTo("routine");
    }

    @Test
    void onlyAClinicianAnswersAndConfirms() {
        String body = Clinic.body(clock.instant(), "\"urgency\":\"routine\"");
        assertThat(clinic.keeper.post(clinic.path("/vet-decisions"), body).isProblem("forbidden"))
                .isTrue();
        assertThat(clinic.organisation
                        .administrator()
                        .post(clinic.path("/vet-decisions"), body)
                        .isProblem("forbidden"))
                .isTrue();
        String kept = clinic.answers(clock.instant(), "\"urgency\":\"routine\"");
        assertThat(clinic.keeper
                        .post(clinic.path("/vet-decisions/" + kept + "/confirmation"), "{}")
                        .isProblem("forbidden"))
                .isTrue();
        assertThat(clinic.organisation
                        .administrator()
                        .post(clinic.path("/vet-decisions/" + kept + "/confirmation"), "{}")
                        .isProblem("forbidden"))
                .isTrue();
        assertThat(clinic.keeper.get(clinic.path("/vet-decisions")).json().get("items"))
                .hasSize(1);
    }

    @Test
    void refusesWithEveryFaultAndKeepsNothing() {
        Answer refused = clinic.clinician.post(
                clinic.path("/vet-decisions"), """
                {"seenUpTo":"%s","sawAnimal":"dreamt","urgency":"soon","isolation":"loose",
                 "findings":[{"finding":"wings","verdict":"confirmed"},{"finding":"ticks","verdict":"maybe","level":"x"},
                    {"verdict":"rejected"}],
                 "tests":[{"on":"2199-01-01"}],"rulings":[{"cause":"bad-luck","ruling":"restarts"}],
                 "nextVisit":"2001-01-01","quarantineUntil":"2150-01-01","writer":{"name":" "},"dose":"1 ml"}
                """.formatted(clock.instant().plusSeconds(60)));
        assertThat(refused.isProblem("invalid-request")).as(refused.body()).isTrue();
        assertThat(refused.faults())
                .contains(
                        "#/seenUpTo",
                        "#/sawAnimal",
                        "#/urgency",
                        "#/isolation",
                        "#/findings/0/finding",
                        "#/findings/1/verdict",
                        "#/findings/1/level",
                        "#/findings/2",
                        "#/tests/0/words",
                        "#/tests/0/on",
                        "#/rulings/0/cause",
                        "#/nextVisit",
                        "#/quarantineUntil",
                        "#/writer/name",
                        "#/writer/practice",
                        "#/writer/licenceStatement",
                        "#/dose");
        assertThat(clinic.keeper.get(clinic.path("/vet-decisions")).json().get("items"))
                .isEmpty();
    }

    @Test
    void refusesAnAnswerThatSaysNothingOrHadSeenWhatCameAfterIt() {
        Instant now = clock.instant();
        assertThat(clinic.clinician
                        .post(
                                clinic.path("/vet-decisions"),
                                "{\"seenUpTo\":\"" + now + "\",\"findings\":[]," + Clinic.WRITER + "}")
                        .faults())
                .containsExactly("#");
        assertThat(clinic.clinician
                        .post(
                                clinic.path("/vet-decisions"),
                                Clinic.body(now, "\"answeredAt\":\"" + now.minusMillis(1) + "\",\"words\":\"w\""))
                        .faults())
                .containsExactly("#/seenUpTo");
        assertThat(clinic.clinician
                        .post(clinic.path("/vet-decisions"), "{\"words\":\"w\"," + Clinic.WRITER + "}")
                        .faults())
                .containsExactly("#/seenUpTo");
    }

    @Test
    void anAnswerGivenEarlierIsKeptAndChangesNothing() {
        clinic.look("{\"laboured-breathing\":\"mild\"}");
        clinic.answers(clock.instant(), "\"urgency\":\"urgent\"");
        String older = clinic.answers(
                clock.instant().minusSeconds(7_200),
                "\"answeredAt\":\"" + clock.instant().minusSeconds(3_600) + "\",\"urgency\":\"routine\"");
        assertThat(clinic.recommendation().text("/urgency/code")).isEqualTo("urgent");
        assertThat(clinic.keeper.get(clinic.path("/vet-decisions/" + older)).status())
                .isEqualTo(200);
    }

    @Test
    void onlyALaterAnswerSupersedesAnEarlierOneAndOnlyOnce() {
        String first = clinic.answers(clock.instant(), "\"urgency\":\"urgent\"");
        String supersedes = ",\"supersedes\":\"" + first + "\"";
        Answer earlier = clinic.clinician.post(
                clinic.path("/vet-decisions"),
                Clinic.body(
                        clock.instant().minusSeconds(600),
                        "\"answeredAt\":\"" + clock.instant().minusSeconds(600) + "\",\"urgency\":\"routine\""
                                + supersedes));
        assertThat(earlier.faults()).containsExactly("#/supersedes");
        String second = clinic.answers(clock.instant(), "\"words\":\"w\"" + supersedes);
        Answer again = clinic.clinician.post(
                clinic.path("/vet-decisions"), Clinic.body(clock.instant(), "\"words\":\"w\"" + supersedes));
        assertThat(again.isProblem("conflict")).as(again.body()).isTrue();
        assertThat(again.body()).contains(second);
        Answer foreign = clinic.clinician.post(
                clinic.path("/vet-decisions"),
                Clinic.body(clock.instant(), "\"words\":\"w\",\"supersedes\":\"" + UUID.randomUUID() + "\""));
        assertThat(foreign.faults()).containsExactly("#/supersedes");
    }

    @Test
    void keepsOneAnswerForOneKey() {
        String body = Clinic.body(clock.instant(), "\"urgency\":\"routine\"");
        Answer first = clinic.clinician.post(clinic.path("/vet-decisions"), body, "Idempotency-Key", "k1");
        Answer second = clinic.clinician.post(clinic.path("/vet-decisions"), body, "Idempotency-Key", "k1");
        assertThat(second.body()).isEqualTo(first.body());
        assertThat(second.header("Idempotency-Replayed")).contains("true");
        assertThat(clinic.keeper.get(clinic.path("/vet-decisions")).json().get("items"))
                .hasSize(1);
    }

    @Test
    void keepsEveryOneOfConcurrentAnswersAndOneStands() throws Exception {
        ExecutorService people = Executors.newFixedThreadPool(4);
        try {
            List<Future<String>> answers = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                String urgency = Urgency.CODES.get(i % 4);
                answers.add(people.submit(() -> clinic.answers(clock.instant(), "\"urgency\":\"" + urgency + "\"")));
            }
            for (Future<String> each : answers) {
                each.get();
            }
        } finally {
            people.shutdownNow();
        }
        JsonNode items = clinic.keeper.get(clinic.path("/vet-decisions")).json().get("items");
        assertThat(items).hasSize(8);
        JsonNode standing = clinic.recommendation().json().get("standing");
        String latest = "";
        for (JsonNode item : items) {
            String at = item.get("answeredAt").stringValue();
            latest = at.compareTo(latest) > 0 ? at : latest;
        }
        assertThat(Instant.parse(standing.get("answeredAt").stringValue())).isEqualTo(Instant.parse(latest));
    }

    @Test
    void isReadAsOfADay() {
        clinic.look("{\"laboured-breathing\":\"mild\"}");
        clinic.answers(clock.instant(), "\"urgency\":\"routine\"");
        Answer yesterday = clinic.keeper.get(clinic.path("/recommendation?asOf="
                + clock.instant().minusSeconds(86_400).toString().substring(0, 10)));
        assertThat(yesterday.json().has("urgency")).isFalse();
        assertThat(yesterday.text("/headline")).isEqualTo("Nobody has looked, and no vet has said how soon.");
        assertThat(clinic.keeper
                        .get(clinic.path("/recommendation?asOf=2199-01-01"))
                        .faults())
                .containsExactly("asOf");
    }

    @Test
    void tellsOfItWithinTheTransactionAndBeforeWhatFollows() {
        context.addApplicationListener(ear);
        String kept = clinic.answers(clock.instant(), "\"urgency\":\"routine\"");
        assertThat(heard)
                .filteredOn(event -> event.organisationId().equals(clinic.organisation.id()))
                .containsExactly(new VetAnswered(clinic.organisation.id(), clinic.animal, UUID.fromString(kept), true));
    }

    @Test
    void nothingOfItCanBeChanged() {
        String kept = clinic.answers(clock.instant(), "\"urgency\":\"routine\"");
        assertThatThrownBy(() -> jdbc.sql("UPDATE vet_answer SET urgency = 'stat' WHERE id = ?")
                        .param(UUID.fromString(kept))
                        .update())
                .isInstanceOf(DataAccessException.class);
    }

    private final class Ear implements ApplicationListener<PayloadApplicationEvent<VetAnswered>> {
        @Override
        public void onApplicationEvent(PayloadApplicationEvent<VetAnswered> event) {
            heard.add(event.getPayload());
        }
    }
}
