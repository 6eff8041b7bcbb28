package varanid.intake.platform.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.ResponseEntity;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.node.JsonNodeFactory;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** A POST has its effect once per key, and its reply is there again when it is asked for again. */
@ServiceTest
class OnceIT {

    private static final String ANIMALS = "/api/v1/animals";
    private static final String KEY = "Idempotency-Key";

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    @Autowired
    Once once;

    @Autowired
    JdbcClient jdbc;

    @Test
    void repeatsTheReplyAndNotTheEffect() {
        Client keeper = organisations.create().keeper();
        Answer first = keeper.post(ANIMALS, "{\"name\":\"Kö\"}", KEY, "k");
        Answer again = keeper.post(ANIMALS, "{\"name\":\"Kö\"}", KEY, "k");
        assertThat(first.status()).isEqualTo(201);
        assertThat(first.header("Idempotency-Replayed")).isEmpty();
        assertThat(again.status()).isEqualTo(201);
        assertThat(again.body()).isEqualTo(first.body());
        assertThat(again.header("Idempotency-Replayed")).contains("true");
        for (String header : List.of("Location", "ETag", "Content-Type")) {
            assertThat(again.header(header))
                    .as(header)
                    .isEqualTo(first.header(header))
                    .isPresent();
        }
        assertThat(animals(keeper)).isEqualTo(1);
    }

    @Test
    void refusesTheKeyForAnotherRequest() {
        Client keeper = organisations.create().keeper();
        keeper.post(ANIMALS, "{\"name\":\"a\"}", KEY, "k");
        assertThat(keeper.post(ANIMALS, "{\"name\":\"b\"}", KEY, "k").isProblem("idempotency-key-reused"))
                .isTrue();
        assertThat(keeper.post("/api/v1/consignments", "{\"name\":\"a\"}", KEY, "k")
                        .isProblem("idempotency-key-reused"))
                .isTrue();
        assertThat(animals(keeper)).isEqualTo(1);
    }

    @Test
    void keepsTheKeysOfEachTokenApart() {
        Organisations.Organisation rescue = organisations.create();
        Client one = rescue.keeper();
        Client other = rescue.keeper();
        String first = one.post(ANIMALS, "{}", KEY, "k").id();
        assertThat(other.post(ANIMALS, "{}", KEY, "k").id()).isNotEqualTo(first);
        assertThat(organisations.create().keeper().post(ANIMALS, "{}", KEY, "k").id())
                .isNotEqualTo(first);
        assertThat(animals(one)).isEqualTo(2);
    }

    @Test
    void doesNotKeepARefusal() {
        Client keeper = organisations.create().keeper();
        assertThat(keeper.post(ANIMALS, "{\"sex\":\"x\"}", KEY, "k").status()).isEqualTo(422);
        assertThat(keeper.post(ANIMALS, "{\"sex\":\"male\"}", KEY, "k").status())
                .isEqualTo(201);
    }

    @Test
    void forgetsTheKeyAfterADay() {
        Organisations.Organisation rescue = organisations.create();
        Client keeper = rescue.keeper();
        String first = keeper.post(ANIMALS, "{}", KEY, "k").id();
        // The token of a test is good for a day only, so the reply is made older instead of the clock later.
        jdbc.sql(
                        "UPDATE idempotency_reply SET recorded_at = recorded_at - interval '24 hours 1 second' WHERE organisation_id = ?")
                .param(rescue.id())
                .update();
        assertThat(keeper.post(ANIMALS, "{}", KEY, "k").id()).isNotEqualTo(first);
        assertThat(animals(keeper)).isEqualTo(2);
    }

    @Test
    void purgesWhatIsOlderThanADay() {
        Organisations.Organisation rescue = organisations.create();
        rescue.keeper().post(ANIMALS, "{}", KEY, "k");
        clock.later(Duration.ofHours(23), once::purge);
        assertThat(replies(rescue)).isEqualTo(1);
        clock.later(Duration.ofHours(25), once::purge);
        assertThat(replies(rescue)).isZero();
    }

    @Test
    void refusesASecondRequestWhileTheFirstIsInFlight() throws Exception {
        Organisations.Organisation rescue = organisations.create();
        Caller caller = caller(rescue);
        JsonRequest request = request("{}");
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch mayEnd = new CountDownLatch(1);
        ExecutorService threads = Executors.newSingleThreadExecutor();
        try {
            Future<ResponseEntity<byte[]>> first = threads.submit(() -> once.perform(caller, request, () -> {
                begun.countDown();
                await(mayEnd);
                return Reply.ok(new Items<>(List.of()));
            }));
            begun.await();
            ProblemException problem = catchThrowableOfType(
                    ProblemException.class,
                    () -> once.perform(caller, request, () -> {
                        throw new AssertionError("done twice");
                    }));
            assertThat(problem.type()).isEqualTo(ProblemType.IN_FLIGHT);
            mayEnd.countDown();
            assertThat(first.get().getStatusCode().value()).isEqualTo(200);
        } finally {
            mayEnd.countDown();
            threads.shutdown();
        }
    }

    @Test
    void storesNothingWhenTheEffectFails() {
        Organisations.Organisation rescue = organisations.create();
        Caller caller = caller(rescue);
        assertThatIllegalStateException()
                .isThrownBy(() -> once.perform(caller, request("{}"), () -> {
                    throw new IllegalStateException("failed in the middle");
                }));
        assertThat(replies(rescue)).isZero();
    }

    @Test
    void hasTheEffectOnceHoweverManyAskAtTheSameTime() throws Exception {
        Client keeper = organisations.create().keeper();
        int many = 12;
        CyclicBarrier together = new CyclicBarrier(many);
        ExecutorService threads = Executors.newFixedThreadPool(many);
        try {
            List<Callable<Answer>> requests = new ArrayList<>();
            for (int i = 0; i < many; i++) {
                requests.add(() -> {
                    together.await();
                    return keeper.post(ANIMALS, "{\"name\":\"once\"}", KEY, "same");
                });
            }
            List<Answer> answers = new ArrayList<>();
            for (Future<Answer> answer : threads.invokeAll(requests)) {
                answers.add(answer.get());
            }
            assertThat(answers).allSatisfy(answer -> assertThat(answer.status()).isIn(201, 409));
            assertThat(answers)
                    .filteredOn(answer -> answer.status() == 201)
                    .isNotEmpty()
                    .extracting(Answer::body)
                    .containsOnly(keeper.post(ANIMALS, "{\"name\":\"once\"}", KEY, "same")
                            .body());
            assertThat(animals(keeper)).isEqualTo(1);
        } finally {
            threads.shutdown();
        }
    }

    @Test
    void storesNoSecretThatTheDatabaseCouldRead() {
        Organisations.Organisation rescue = organisations.create();
        Client administrator = rescue.administrator();
        Answer made = administrator.post("/api/v1/tokens", "{\"label\":\"for the phone\"}", KEY, "k");
        Answer again = administrator.post("/api/v1/tokens", "{\"label\":\"for the phone\"}", KEY, "k");
        assertThat(again.text("/token")).isEqualTo(made.text("/token")).startsWith("vi1.");
        byte[] stored = jdbc.sql("SELECT sealed_reply FROM idempotency_reply WHERE organisation_id = ?")
                .param(rescue.id())
                .query(byte[].class)
                .single();
        assertThat(new String(stored, StandardCharsets.ISO_8859_1))
                .doesNotContain("vi1.")
                .doesNotContain("phone");
    }

    private static JsonRequest request(String body) {
        return new JsonRequest(
                "POST /x", body.getBytes(StandardCharsets.UTF_8), JsonNodeFactory.instance.objectNode(), "key");
    }

    private static Caller caller(Organisations.Organisation rescue) {
        UUID any = rescue.id();
        return new Caller(rescue.id(), any, any, Set.of(Role.KEEPER), ZoneOffset.UTC, new Secret("secret"));
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static int animals(Client keeper) {
        return keeper.get(ANIMALS).json().get("items").size();
    }

    private int replies(Organisations.Organisation rescue) {
        return jdbc.sql("SELECT count(*) FROM idempotency_reply WHERE organisation_id = ?")
                .param(rescue.id())
                .query(Integer.class)
                .single();
    }
}
