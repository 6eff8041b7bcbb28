package varanid.intake.durability;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The service is killed with {@code kill -9} in the middle of writes, again and again, on one data folder. Whatever got
 * no answer is sent again with the same Idempotency-Key. In the end each assessment that was acknowledged is there once,
 * with the bytes of its acknowledgement, and no key has two.
 *
 * <p>How often is a system property: {@code mvn verify -Dkills=20}.
 */
class KillNineIT {

    private static final int KILLS = Integer.getInteger("kills", 3);
    private static final int CLIENTS = 4;

    /** At most so many acknowledgements between a start and the kill. */
    private static final int MOST_PER_LIFE = 60;

    private static final Path PROGRAMS = Path.of("target", "test-postgresql").toAbsolutePath();
    private static final JsonMapper JSON = JsonMapper.shared();

    @TempDir
    Path home;

    /** Key to the ETag of the acknowledgement. */
    private final Map<String, String> acknowledged = new ConcurrentHashMap<>();

    private final ConcurrentLinkedQueue<String> surprises = new ConcurrentLinkedQueue<>();
    private final AtomicInteger unanswered = new AtomicInteger();
    private final AtomicInteger replayed = new AtomicInteger();
    private String token = "";

    @Test
    void losesNothingThatWasAcknowledgedAndKeepsNothingTwice() throws Exception {
        long start = System.nanoTime();
        Random random = new Random(20_261_125);
        List<Writer> writers = new ArrayList<>();
        for (int life = 0; life < KILLS; life++) {
            try (ServiceProcess service = ServiceProcess.start(home, PROGRAMS)) {
                token = Files.readString(home.resolve("token")).strip();
                while (writers.size() < CLIENTS) {
                    writers.add(new Writer(registerAnimal(service), writers.size()));
                }
                CountDownLatch enough = new CountDownLatch(1 + random.nextInt(MOST_PER_LIFE));
                ExecutorService threads = Executors.newFixedThreadPool(CLIENTS);
                try {
                    List<Future<?>> running = new ArrayList<>();
                    writers.forEach(
                            writer -> running.add(threads.submit(() -> writer.writeUntilDead(service, enough))));
                    assertThat(enough.await(5, TimeUnit.MINUTES))
                            .as("the service answers")
                            .isTrue();
                    service.kill();
                    for (Future<?> each : running) {
                        each.get();
                    }
                } finally {
                    threads.shutdownNow();
                }
            }
        }
        try (ServiceProcess service = ServiceProcess.start(home, PROGRAMS)) {
            writers.forEach(writer -> writer.sendTheLastAgain(service));
            assertThat(surprises).isEmpty();
            assertThat(unanswered).as("it was killed while it worked").hasPositiveValue();
            Map<String, List<String>> kept = readAll(service, writers);
            int sent = writers.stream().mapToInt(writer -> writer.count).sum();
            assertThat(kept)
                    .as("each key once")
                    .allSatisfy((key, tags) -> assertThat(tags).as(key).hasSize(1));
            assertThat(kept.keySet())
                    .containsExactlyInAnyOrderElementsOf(acknowledged.keySet())
                    .hasSize(sent);
            acknowledged.forEach((key, tag) -> assertThat(kept.get(key)).as(key).containsExactly(tag));
            service.stop();
            System.out.printf(
                    "%d kills: %d assessments acknowledged, 0 lost, 0 kept twice; %d requests got no answer, %d of them had"
                            + " been kept and were answered when sent again; %d s%n",
                    KILLS,
                    acknowledged.size(),
                    unanswered.get(),
                    replayed.get(),
                    TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - start));
        }
    }

    /** A failed run leaves the database server of its folder behind; nothing else would ever stop it. */
    @AfterEach
    void stopAnOrphan() throws IOException {
        Path pidFile = home.resolve("database").resolve("postmaster.pid");
        if (Files.exists(pidFile)) {
            ProcessHandle.of(Long.parseLong(Files.readAllLines(pidFile).get(0))).ifPresent(server -> {
                server.destroyForcibly();
                server.onExit().join();
            });
        }
    }

    /** Posts one assessment after the other, each with a key of its own, which is also its note. */
    private final class Writer {

        private final String assessments;
        private final int number;
        private int count;
        private @Nullable String unansweredKey;

        Writer(String animal, int number) {
            this.assessments = animal + "/assessments";
            this.number = number;
        }

        void writeUntilDead(ServiceProcess service, CountDownLatch enough) {
            HttpClient http =
                    HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
            while (post(http, service)) {
                enough.countDown();
            }
        }

        void sendTheLastAgain(ServiceProcess service) {
            if (unansweredKey != null) {
                post(HttpClient.newHttpClient(), service);
            }
        }

        /** Whether it was acknowledged. */
        private boolean post(HttpClient http, ServiceProcess service) {
            boolean again = unansweredKey != null;
            String key = again ? String.valueOf(unansweredKey) : number + "-" + ++count;
            unansweredKey = key;
            String body = "{\"checklist\":\"varanid-intake\",\"version\":1,\"answers\":{\"ticks\":\"few\"},\"note\":\""
                    + key + "\"}";
            HttpResponse<String> response;
            try {
                response = http.send(
                        request(service, assessments)
                                .header("Content-Type", "application/json")
                                .header("Idempotency-Key", key)
                                .POST(BodyPublishers.ofString(body))
                                .build(),
                        BodyHandlers.ofString());
            } catch (IOException e) {
                unanswered.incrementAndGet();
                return false;
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return false;
            }
            if (response.statusCode() != 201) {
                surprises.add(key + ": " + response.statusCode() + " " + response.body());
                return false;
            }
            if (again && response.headers().firstValue("Idempotency-Replayed").isPresent()) {
                replayed.incrementAndGet();
            }
            acknowledged.put(key, response.headers().firstValue("ETag").orElseThrow());
            unansweredKey = null;
            return true;
        }
    }

    private String registerAnimal(ServiceProcess service) throws Exception {
        HttpResponse<String> response = HttpClient.newHttpClient()
                .send(
                        request(service, "/api/v1/animals")
                                .POST(BodyPublishers.noBody())
                                .build(),
                        BodyHandlers.ofString());
        assertThat(response.statusCode()).as(response.body()).isEqualTo(201);
        return response.headers().firstValue("Location").orElseThrow();
    }

    /** Note to the ETags of the assessments that have it. */
    private Map<String, List<String>> readAll(ServiceProcess service, List<Writer> writers) throws Exception {
        Map<String, List<String>> kept = new ConcurrentHashMap<>();
        HttpClient http = HttpClient.newHttpClient();
        for (Writer writer : writers) {
            @Nullable String next = writer.assessments + "?limit=200";
            while (next != null) {
                HttpResponse<String> page =
                        http.send(request(service, next).GET().build(), BodyHandlers.ofString());
                assertThat(page.statusCode()).as(page.body()).isEqualTo(200);
                for (JsonNode item : JSON.readTree(page.body()).get("items")) {
                    String path = item.get("path").stringValue();
                    HttpResponse<String> one =
                            http.send(request(service, path).GET().build(), BodyHandlers.ofString());
                    String note = JSON.readTree(one.body()).get("note").stringValue();
                    kept.computeIfAbsent(note, key -> new ArrayList<>())
                            .add(one.headers().firstValue("ETag").orElseThrow());
                }
                next = page.headers().allValues("Link").stream()
                        .filter(link -> link.endsWith("rel=\"next\""))
                        .map(link -> link.substring(1, link.indexOf('>')))
                        .findFirst()
                        .orElse(null);
            }
        }
        return kept;
    }

    private HttpRequest.Builder request(ServiceProcess service, String path) {
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + service.port() + path))
                .timeout(Duration.ofMinutes(2))
                .header("Authorization", "Bearer " + token);
    }
}
