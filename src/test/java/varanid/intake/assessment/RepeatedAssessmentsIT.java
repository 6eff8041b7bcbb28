package varanid.intake.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.IntFunction;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** The same request again, one after the other and at the same moment. */
@ServiceTest
class RepeatedAssessmentsIT {

    private static final String LOOK = "{\"checklist\":\"varanid-intake\",\"answers\":{\"ticks\":\"few\"}}";

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
        assessments = keeper.post("/api/v1/animals", "{}").header("Location").orElseThrow() + "/assessments";
    }

    @Test
    void repliesTheSameBytesToTheSameKeyAndKeepsOne() {
        Answer first = keeper.post(assessments, LOOK, "Idempotency-Key", "one");
        Answer again = keeper.post(assessments, LOOK, "Idempotency-Key", "one");
        assertThat(first.status()).isEqualTo(201);
        assertThat(first.header("Idempotency-Replayed")).isEmpty();
        assertThat(again.status()).isEqualTo(201);
        assertThat(again.body()).isEqualTo(first.body());
        assertThat(again.etag()).isEqualTo(first.etag());
        assertThat(again.header("Location")).isEqualTo(first.header("Location"));
        assertThat(again.header("Idempotency-Replayed")).contains("true");
        assertThat(count()).isEqualTo(1);
    }

    @Test
    void keepsTwoUnderTwoKeysAndWithoutOne() {
        keeper.post(assessments, LOOK, "Idempotency-Key", "one");
        keeper.post(assessments, LOOK, "Idempotency-Key", "two");
        keeper.post(assessments, LOOK);
        keeper.post(assessments, LOOK);
        assertThat(count()).isEqualTo(4);
    }

    @Test
    void refusesTheKeyForAnotherLookOrAnotherAnimal() {
        keeper.post(assessments, LOOK, "Idempotency-Key", "one");
        Answer otherLook = keeper.post(assessments, LOOK.replace("few", "many"), "Idempotency-Key", "one");
        String otherAnimal =
                keeper.post("/api/v1/animals", "{}").header("Location").orElseThrow();
        Answer other = keeper.post(otherAnimal + "/assessments", LOOK, "Idempotency-Key", "one");
        for (Answer refused : List.of(otherLook, other)) {
            assertThat(refused.status()).isEqualTo(422);
            assertThat(refused.isProblem("idempotency-key-reused")).isTrue();
        }
        assertThat(count()).isEqualTo(1);
    }

    @Test
    void remembersNoKeyOfARefusedLook() {
        Answer refused = keeper.post(assessments, LOOK.replace("few", "hundreds"), "Idempotency-Key", "one");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(keeper.post(assessments, LOOK, "Idempotency-Key", "one").status())
                .isEqualTo(201);
    }

    @Test
    void keepsOneOfManyThatCameAtOnceWithTheSameKey() throws Exception {
        List<Answer> answers =
                atOnce(8, number -> keeper.post(assessments, LOOK, "Idempotency-Key", "the-same-for-all"));
        assertThat(count()).isEqualTo(1);
        Answer after = keeper.post(assessments, LOOK, "Idempotency-Key", "the-same-for-all");
        assertThat(after.header("Idempotency-Replayed")).contains("true");
        assertThat(answers).anyMatch(answer -> answer.status() == 201);
        for (Answer answer : answers) {
            if (answer.status() == 201) {
                assertThat(answer.body()).isEqualTo(after.body());
            } else {
                assertThat(answer.isProblem("request-in-flight"))
                        .as(answer.body())
                        .isTrue();
                assertThat(answer.header("Retry-After")).isPresent();
            }
        }
    }

    @Test
    void letsOneOfTwoCorrectionsThatCameAtOnceWin() throws Exception {
        for (int round = 0; round < 5; round++) {
            String first = keeper.post(assessments, LOOK).id();
            String correction = LOOK.replace("}}", "},\"supersedes\":\"" + first + "\"}");
            List<Answer> answers = atOnce(2, number -> keeper.post(assessments, correction));
            assertThat(answers).extracting(Answer::status).containsExactlyInAnyOrder(201, 409);
            Answer won = answers.stream()
                    .filter(answer -> answer.status() == 201)
                    .findFirst()
                    .orElseThrow();
            Answer lost = answers.stream()
                    .filter(answer -> answer.status() == 409)
                    .findFirst()
                    .orElseThrow();
            assertThat(lost.isProblem("conflict")).isTrue();
            assertThat(lost.text("/detail")).contains(won.id());
            assertThat(keeper.get(assessments + "/" + first).link("successor-version"))
                    .contains(assessments + "/" + won.id());
        }
    }

    @Test
    void excusesOneOfTwoLooksThatCameAtOnce() throws Exception {
        String cold = "{\"checklist\":\"varanid-intake\",\"conditions\":[\"cold\"],\"answers\":{\"dull\":\"mild\"},"
                + "\"occurredAt\":\"2026-03-09T12:00:00Z\"}";
        List<Answer> answers = atOnce(4, number -> keeper.post(assessments, cold));
        assertThat(answers).extracting(Answer::status).containsOnly(201);
        assertThat(answers)
                .extracting(answer -> answer.json().at("/lookAgain").size())
                .containsExactlyInAnyOrder(1, 0, 0, 0);
    }

    private static List<Answer> atOnce(int many, IntFunction<Answer> request) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(many);
        try {
            CyclicBarrier together = new CyclicBarrier(many);
            List<Future<Answer>> futures = new ArrayList<>();
            for (int i = 0; i < many; i++) {
                int number = i;
                futures.add(threads.submit(() -> {
                    together.await();
                    return request.apply(number);
                }));
            }
            List<Answer> answers = new ArrayList<>();
            for (Future<Answer> future : futures) {
                answers.add(Objects.requireNonNull(future.get()));
            }
            return answers;
        } finally {
            threads.shutdownNow();
        }
    }

    private int count() {
        return jdbc.sql("SELECT count(*) FROM assessment WHERE organisation_id = ?")
                .param(organisation.id())
                .query(Integer.class)
                .single();
    }
}
