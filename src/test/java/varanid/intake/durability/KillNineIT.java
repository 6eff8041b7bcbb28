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
 * no answer is sent again with the same Idempotency-Key. In the end each look, weighing, diary entry, placement, event of a
 * room, report, link and vet's answer by a link that was acknowledged is there once, a look with the bytes of its
 * acknowledgement, and no key has two. Each answer's link was opened for it. The work list says what it says when it is
 * made again from the records.
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

    /** Key to what the acknowledgement said: the ETag of a look, the id of anything else. */
    private final Map<String, String> acknowledged = new ConcurrentHashMap<>();

    private final ConcurrentLinkedQueue<String> surprises = new ConcurrentLinkedQueue<>();
    private final AtomicInteger unanswered = new AtomicInteger();
    private final AtomicInteger replayed = new AtomicInteger();
    private String token = "";
    private List<String> rooms = List.of();

    @Test
    void losesNothingThatWasAcknowledgedAndKeepsNothingTwice() throws Exception {
        long start = System.nanoTime();
        Random random = new Random(20_261_125);
        List<Writer> writers = new ArrayList<>();
        for (int life = 0; life < KILLS; life++) {
            try (ServiceProcess service = ServiceProcess.start(home, PROGRAMS)) {
                token = Files.readString(home.resolve("token")).strip();
                if (rooms.isEmpty()) {
                    rooms = List.of(
                            add(service, "/api/v1/rooms", "{\"name\":\"North\"}"),
                            add(service, "/api/v1/rooms", "{\"name\":\"South\"}"));
                }
                while (writers.size() < CLIENTS) {
                    String animal = add(service, "/api/v1/animals", "{}");
                    String reply = JSON.readTree(
                                    added(service, animal + "/links", "{\"kind\":\"reply\",\"recipient\":\"answers\"}")
                                            .body())
                            .get("address")
                            .stringValue();
                    writers.add(new Writer(animal, URI.create(reply).getPath(), writers.size()));
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
            for (Writer writer : writers) {
                assertThat(openings(service, writer)).isGreaterThanOrEqualTo(writer.answers.get());
            }
            JsonNode workList = workList(service);
            for (Writer writer : writers) {
                makeEntryAgain(service, writer.animal);
            }
            assertThat(workList.at("/rounds/items")).hasSize(CLIENTS);
            assertThat(workList(service)).isEqualTo(workList);
            service.stop();
            System.out.printf(
                    "%d kills: %d writes acknowledged, 0 lost, 0 kept twice; %d requests got no answer, %d of them had"
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

    /** Posts one thing after the other, each with a key of its own, which is also its note, reason, words or recipient. */
    private final class Writer {

        private static final int KINDS = 8;

        private final String animal;
        private final String reply;
        private final int number;
        private final AtomicInteger answers = new AtomicInteger();
        private int count;
        private @Nullable String unansweredKey;

        /** @param reply where a vet answers without a token */
        Writer(String animal, String reply, int number) {
            this.animal = animal;
            this.reply = reply;
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
            // By turns, and each time round in the other room: so what is sent again is the same.
            String room = rooms.get((count - 1) / KINDS % rooms.size());
            String path;
            String body;
            switch (count % KINDS) {
                case 1 -> {
                    path = animal + "/placements";
                    body = "{\"roomId\":\"" + room.substring(room.lastIndexOf('/') + 1) + "\",\"reason\":\"" + key
                            + "\"}";
                }
                case 2 -> {
                    path = animal + "/assessments";
                    body = "{\"checklist\":\"varanid-intake\",\"version\":1,\"answers\":{\"ticks\":\"few\"},\"note\":\""
                            + key + "\"}";
                }
                case 3 -> {
                    path = animal + "/weighings";
                    body = "{\"value\":" + (400 + count % 7)
                            + ",\"unit\":\"g\",\"resolution\":1,\"scale\":\"kitchen\",\"note\":\"" + key + "\"}";
                }
                case 4 -> {
                    path = animal + "/diary";
                    body = "{\"ate\":\"some\",\"demeanour\":\"dull\",\"note\":\"" + key + "\"}";
                }
                case 5 -> {
                    path = animal + "/reports";
                    body = "{\"diet\":\"mice\",\"note\":\"" + key + "\"}";
                }
                case 6 -> {
                    path = animal + "/links";
                    body = "{\"kind\":\"summary\",\"recipient\":\"" + key + "\"}";
                }
                case 7 -> {
                    path = reply;
                    body = "{\"seenUpTo\":\"2026-01-01T00:00:00Z\",\"sawAnimal\":\"read-only\",\"words\":\"" + key
                            + "\",\"writer\":{\"name\":\"n\",\"practice\":\"p\",\"licenceStatement\":\"l\"}}";
                }
                default -> {
                    path = room + "/events";
                    body = "{\"kind\":\"lengthened\",\"days\":1,\"reason\":\"" + key + "\"}";
                }
            }
            HttpResponse<String> response;
            try {
                response = http.send(
                        request(service, path)
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
            acknowledged.put(
                    key,
                    path.endsWith("/assessments")
                            ? response.headers().firstValue("ETag").orElseThrow()
                            : JSON.readTree(response.body()).get("id").stringValue());
            if (path.equals(reply)) {
                answers.incrementAndGet();
            }
            unansweredKey = null;
            return true;
        }
    }

    /** Gives its path. */
    private String add(ServiceProcess service, String list, String body) throws Exception {
        return added(service, list, body).headers().firstValue("Location").orElseThrow();
    }

    private HttpResponse<String> added(ServiceProcess service, String list, String body) throws Exception {
        HttpResponse<String> response = HttpClient.newHttpClient()
                .send(
                        request(service, list)
                                .header("Content-Type", "application/json")
                                .POST(BodyPublishers.ofString(body))
                                .build(),
                        BodyHandlers.ofString());
        assertThat(response.statusCode()).as(response.body()).isEqualTo(201);
        return response;
    }

    /** How often the link was opened by which this one answers. */
    private int openings(ServiceProcess service, Writer writer) throws Exception {
        return items(service, writer.animal + "/links").stream()
                .filter(link -> link.get("kind").stringValue().equals("reply"))
                .mapToInt(link -> link.get("openings").intValue())
                .sum();
    }

    private JsonNode workList(ServiceProcess service) throws Exception {
        return JSON.readTree(get(service, "/api/v1/worklist").body());
    }

    /** Changes an animal into what it is: whatever is told of it is then worked out from its records. */
    private void makeEntryAgain(ServiceProcess service, String animal) throws Exception {
        String tag = get(service, animal).headers().firstValue("ETag").orElseThrow();
        HttpResponse<String> changed = HttpClient.newHttpClient()
                .send(
                        request(service, animal)
                                .header("Content-Type", "application/json")
                                .header("If-Match", tag)
                                .PUT(BodyPublishers.ofString("{}"))
                                .build(),
                        BodyHandlers.ofString());
        assertThat(changed.statusCode()).as(changed.body()).isEqualTo(200);
    }

    /** Note, reason, words or recipient to what was kept with it: the ETag of a look, the id of anything else. */
    private Map<String, List<String>> readAll(ServiceProcess service, List<Writer> writers) throws Exception {
        Map<String, List<String>> kept = new ConcurrentHashMap<>();
        for (String room : rooms) {
            // Those that follow from a placement or a look have other reasons.
            items(service, room + "/events").stream()
                    .filter(event -> event.get("kind").stringValue().equals("lengthened"))
                    .forEach(event -> keep(kept, event, "/reason"));
        }
        for (Writer writer : writers) {
            items(service, writer.animal + "/placements").forEach(each -> keep(kept, each, "/reason"));
            items(service, writer.animal + "/weighings").forEach(each -> keep(kept, each, "/note"));
            items(service, writer.animal + "/diary").forEach(each -> keep(kept, each, "/note"));
            items(service, writer.animal + "/reports").forEach(each -> keep(kept, each, "/told/note"));
            items(service, writer.animal + "/vet-decisions").forEach(each -> keep(kept, each, "/words"));
            items(service, writer.animal + "/links").stream()
                    .filter(link -> link.get("kind").stringValue().equals("summary"))
                    .forEach(each -> keep(kept, each, "/recipient"));
            for (JsonNode item : items(service, writer.animal + "/assessments")) {
                HttpResponse<String> one = get(service, item.get("path").stringValue());
                kept.computeIfAbsent(JSON.readTree(one.body()).get("note").stringValue(), key -> new ArrayList<>())
                        .add(one.headers().firstValue("ETag").orElseThrow());
            }
        }
        return kept;
    }

    private static void keep(Map<String, List<String>> kept, JsonNode item, String keyAt) {
        kept.computeIfAbsent(item.at(keyAt).stringValue(), key -> new ArrayList<>())
                .add(item.get("id").stringValue());
    }

    private List<JsonNode> items(ServiceProcess service, String list) throws Exception {
        List<JsonNode> items = new ArrayList<>();
        @Nullable String next = list + "?limit=200";
        while (next != null) {
            HttpResponse<String> page = get(service, next);
            JSON.readTree(page.body()).get("items").forEach(items::add);
            next = page.headers().allValues("Link").stream()
                    .filter(link -> link.endsWith("rel=\"next\""))
                    .map(link -> link.substring(1, link.indexOf('>')))
                    .findFirst()
                    .orElse(null);
        }
        return items;
    }

    private HttpResponse<String> get(ServiceProcess service, String path) throws Exception {
        HttpResponse<String> answer =
                HttpClient.newHttpClient().send(request(service, path).GET().build(), BodyHandlers.ofString());
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return answer;
    }

    private HttpRequest.Builder request(ServiceProcess service, String path) {
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + service.port() + path))
                .timeout(Duration.ofMinutes(2))
                .header("Authorization", "Bearer " + token);
    }
}
