package varanid.intake.worklist;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.JsonNode;
import varanid.intake.platform.web.Role;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/**
 * Whatever is recorded, and in whatever order: the entry of every animal is what its records come to at that moment. An
 * entry that nobody told of a change would stay false until something else is recorded of that animal.
 */
@ServiceTest
class EntriesStayTrueIT {

    private static final int OPERATIONS = 70;

    private static final int ANIMALS = 4;
    private static final int WRITERS = 4;
    private static final int WRITES_EACH = 15;

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    @Autowired
    WorklistRows rows;

    @Autowired
    EntrySource source;

    @Autowired
    PlatformTransactionManager transactions;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void afterEveryWrite(long seed) {
        Rescue rescue = new Rescue(organisations.create(), new Random(seed));
        List<String> told = new ArrayList<>();
        rescue.checkEntries("registered");
        for (int i = 0; i < OPERATIONS; i++) {
            told.add(rescue.write());
            rescue.checkEntries(String.join("\n", told));
            if (i % 6 == 5) {
                rescue.checkPages(String.join("\n", told));
            }
        }
        assertThat(rescue.written)
                .as("enough of it was accepted: " + rescue.kinds)
                .isGreaterThan(OPERATIONS / 3);
        assertThat(rescue.kinds).containsKeys("vet's answer", "reply");
    }

    @Test
    void whenSeveralPeopleWriteInOneRoomAtOnce() throws Exception {
        Organisations.Organisation organisation = organisations.create();
        Rescue first = new Rescue(organisation, new Random(4));
        ExecutorService threads = Executors.newFixedThreadPool(WRITERS);
        try {
            List<Future<?>> running = IntStream.range(0, WRITERS)
                    .mapToObj(number -> first.colleague(new Random(100 + number)))
                    .<Future<?>>map(colleague -> threads.submit(() -> {
                        for (int i = 0; i < WRITES_EACH; i++) {
                            colleague.write();
                        }
                    }))
                    .toList();
            for (Future<?> each : running) {
                each.get();
            }
        } finally {
            threads.shutdownNow();
        }
        first.checkEntries("all at once");
        first.checkPages("all at once");
    }

    @Test
    void aKeyThatIsSentByFourAtOnceMovesAnimalsOnce() throws Exception {
        Rescue rescue = new Rescue(organisations.create(), new Random(5));
        String animal = "/api/v1/animals/" + rescue.animals.get(0);
        String south = "{\"roomId\":\"" + rescue.rooms.get(1) + "\"}";
        atOnce(() -> rescue.keeper.post(animal + "/placements", south, "Idempotency-Key", "move"));
        assertThat(rescue.items(animal + "/placements")).hasSize(2);
        String overrides = rescue.overrides(animal);
        atOnce(() -> rescue.keeper.post(animal + "/release-decisions", overrides, "Idempotency-Key", "release"));
        assertThat(rescue.items(animal + "/release-decisions")).hasSize(1);
        rescue.checkEntries("moved and released");
    }

    /** Until each has been answered: 409 while another one's is still worked on. */
    private static void atOnce(Supplier<Answer> request) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(WRITERS);
        try {
            List<Future<Answer>> sent = IntStream.range(0, WRITERS)
                    .mapToObj(number -> threads.submit(request::get))
                    .toList();
            Set<String> ids = new HashSet<>();
            for (Future<Answer> each : sent) {
                Answer answer = each.get();
                assertThat(answer.status()).as(answer.body()).isIn(201, 409);
                if (answer.status() == 201) {
                    ids.add(answer.id());
                }
            }
            ids.add(created(request.get()).id());
            assertThat(ids).hasSize(1);
        } finally {
            threads.shutdownNow();
        }
    }

    /** Two rooms for quarantine, one of residents, and the animals; does one thing after the other at random. */
    private final class Rescue {

        private final UUID organisation;
        private final Client keeper;
        private final Client vet;
        private final Random random;
        private final List<String> animals;
        private final List<String> rooms;
        private final String residents;
        private final Map<String, List<String>> findings;
        private final Map<String, Integer> kinds = new TreeMap<>();
        /** Nobody else writes meanwhile. */
        private final boolean alone;

        private int written;

        Rescue(Organisations.Organisation organisation, Random random) {
            this.organisation = organisation.id();
            this.keeper = organisation.person("Keeper", Duration.ofDays(200), Role.KEEPER);
            this.vet = organisation.clinician();
            this.random = random;
            this.alone = true;
            this.rooms = List.of(room("North", "quarantine"), room("South", "quarantine"));
            this.residents = room("Hall", "residents");
            this.findings = readFindings();
            this.animals = List.of(
                    animal("Sorrel", "C", day(-40)),
                    animal("Nettle", "W", day(-30)),
                    animal("Yarrow", "F", day(-20)),
                    animal("Burdock", "U", day(-5)));
            assertThat(animals).hasSize(ANIMALS);
            animals.forEach(animal -> place(animal, rooms.get(0), -10));
        }

        private Rescue(Rescue other, Random random) {
            this.organisation = other.organisation;
            this.keeper = other.keeper;
            this.vet = other.vet;
            this.random = random;
            this.alone = false;
            this.animals = other.animals;
            this.rooms = other.rooms;
            this.residents = other.residents;
            this.findings = other.findings;
        }

        /** Somebody else in the same rooms. */
        Rescue colleague(Random own) {
            return new Rescue(this, own);
        }

        private String room(String name, String kind) {
            return created(keeper.post("/api/v1/rooms", "{\"name\":\"%s\",\"kind\":\"%s\"}".formatted(name, kind)))
                    .id();
        }

        private String animal(String name, String origin, LocalDate arrived) {
            return created(keeper.post("/api/v1/animals", details(name, "juvenile", origin, arrived)))
                    .id();
        }

        private String details(String name, String lifeStage, String origin, LocalDate arrived) {
            return "{\"name\":\"%s\",\"lifeStage\":\"%s\",\"declaredOrigin\":\"%s\",\"arrivedOn\":\"%s\"}"
                    .formatted(name, lifeStage, origin, arrived);
        }

        private Map<String, List<String>> readFindings() {
            JsonNode checklist =
                    keeper.get("/api/v1/checklists/varanid-intake/versions/1").json();
            return StreamSupport.stream(checklist.get("findings").spliterator(), false)
                    .filter(each -> !each.has("measure"))
                    .collect(Collectors.toMap(
                            each -> each.get("id").stringValue(),
                            each -> StreamSupport.stream(each.get("levels").spliterator(), false)
                                    .map(level -> level.get("code").stringValue())
                                    .toList(),
                            (one, other) -> one,
                            TreeMap::new));
        }

        // ---- one write

        /** Does something, and says what and how it was answered. */
        String write() {
            String animal = any(animals);
            String path = "/api/v1/animals/" + animal;
            String room = any(rooms);
            Answer answer;
            String what;
            switch (random.nextInt(21)) {
                case 0, 1 -> {
                    what = "look";
                    answer = keeper.post(path + "/assessments", look(Optional.empty()));
                }
                case 2 -> {
                    what = "corrected look";
                    answer = keeper.post(path + "/assessments", look(oneOf(path + "/assessments")));
                }
                case 3, 4 -> {
                    what = "weighing";
                    answer = keeper.post(path + "/weighings", weighing(Optional.empty()));
                }
                case 5 -> {
                    what = "corrected weighing";
                    answer = keeper.post(path + "/weighings", weighing(oneOf(path + "/weighings")));
                }
                case 6, 7 -> {
                    what = "diary";
                    answer = keeper.post(path + "/diary", diary(path));
                }
                case 8 -> {
                    what = "sample";
                    answer = keeper.post(
                            path + "/samples",
                            "{\"kind\":\"stool\",\"methods\":[\"flotation\"],\"takenAt\":\"%s\",\"freshHours\":2}"
                                    .formatted(moment()));
                }
                case 9 -> {
                    what = "result";
                    answer = result(path);
                }
                case 10 -> {
                    what = "event";
                    answer = keeper.post("/api/v1/rooms/" + room + "/events", event(animal));
                }
                case 11 -> {
                    what = "vet's word";
                    answer = vetsWord(room);
                }
                case 12 -> {
                    what = "placement";
                    answer = keeper.post(
                            path + "/placements",
                            "{\"roomId\":\"%s\",\"on\":\"%s\"%s}"
                                    .formatted(
                                            any(List.of(rooms.get(0), rooms.get(1), rooms.get(1), residents)),
                                            day(-random.nextInt(6)),
                                            random.nextInt(3) == 0
                                                    ? ",\"returned\":true,\"residentAlready\":true,\"reason\":\"is here\""
                                                    : ""));
                }
                case 13, 16 -> {
                    what = "withdrawal";
                    answer = withdrawal(path, room);
                }
                case 14 -> {
                    what = "departure";
                    String because = any(List.of("died", "moved-on", "moved-on", "escaped"));
                    answer = keeper.post(
                            path + "/departures",
                            "{\"because\":\"%s\"%s,\"on\":\"%s\"}"
                                    .formatted(
                                            because,
                                            because.equals("died") ? ",\"explained\":" + random.nextBoolean() : "",
                                            day(-random.nextInt(3))));
                }
                case 15 -> {
                    what = "release";
                    answer = release(path);
                }
                case 18 -> {
                    what = "vet's answer";
                    answer = vet.post(path + "/vet-decisions", vetAnswer(path));
                }
                case 19 -> {
                    what = "reply";
                    answer = reply(path);
                }
                case 20 -> {
                    what = "confirmation";
                    answer = oneItem(path + "/vet-decisions")
                            .map(each -> vet.post(
                                    path + "/vet-decisions/" + each.get("id").stringValue() + "/confirmation", "{}"))
                            .orElseGet(() -> keeper.get(path + "/vet-decisions"));
                }
                default -> {
                    what = "change";
                    answer = change(path, room);
                }
            }
            assertThat(answer.status()).as(what + ": " + answer.body()).isIn(200, 201, 403, 404, 409, 412, 422);
            if (answer.status() < 300) {
                written++;
                kinds.merge(what, 1, Integer::sum);
            }
            return what + " of " + (1 + animals.indexOf(animal)) + " in " + (1 + rooms.indexOf(room)) + ": "
                    + answer.status()
                    + (answer.status() < 300 ? "" : " " + answer.faults());
        }

        private String look(Optional<String> supersedes) {
            String answers = IntStream.range(0, 1 + random.nextInt(8))
                    .mapToObj(number -> any(List.copyOf(findings.keySet())))
                    .distinct()
                    .map(finding ->
                            "\"%s\":\"%s\"".formatted(finding, any(Objects.requireNonNull(findings.get(finding)))))
                    .collect(Collectors.joining(",", "{", "}"));
            return "{\"checklist\":\"varanid-intake\",\"version\":1,\"answers\":%s,\"occurredAt\":\"%s\"%s}"
                    .formatted(answers, moment(), member("supersedes", supersedes));
        }

        private String weighing(Optional<String> supersedes) {
            return "{\"value\":%d,\"unit\":\"g\",\"resolution\":1,\"scale\":\"kitchen\",\"occurredAt\":\"%s\"%s}"
                    .formatted(300 + random.nextInt(200), moment(), member("supersedes", supersedes));
        }

        private String diary(String path) {
            return "{\"demeanour\":\"%s\",\"cleaning\":\"%s\",\"miteCheck\":\"%s\",\"occurredAt\":\"%s\"%s}"
                    .formatted(
                            any(List.of("calm", "dull", "uneasy")),
                            any(List.of("spot-clean", "full-clean")),
                            any(List.of("none-seen", "none-seen", "seen")),
                            moment(),
                            member("supersedes", random.nextInt(4) == 0 ? oneOf(path + "/diary") : Optional.empty()));
        }

        private Answer result(String path) {
            Optional<JsonNode> sample = oneItem(path + "/samples");
            if (sample.isEmpty()) {
                return keeper.get(path + "/samples");
            }
            Optional<String> corrected = random.nextBoolean()
                    ? Optional.empty()
                    : StreamSupport.stream(sample.get().at("/results").spliterator(), false)
                            .map(each -> each.get("id").stringValue())
                            .reduce((one, next) -> next);
            String outcome = any(List.of("negative", "positive", "positive", "equivocal", "unusable"));
            String agent = any(List.of("entamoeba", "coccidia", "cryptosporidium", "pinworm", "mites"));
            return keeper.post(
                    path + "/samples/" + sample.get().get("id").stringValue() + "/results",
                    "{\"method\":\"flotation\",\"outcome\":\"%s\"%s%s%s}"
                            .formatted(
                                    outcome,
                                    outcome.equals("positive") ? ",\"found\":[{\"agent\":\"" + agent + "\"}]" : "",
                                    random.nextBoolean() ? ",\"reportedOn\":\"" + day(-random.nextInt(4)) + "\"" : "",
                                    member("supersedes", corrected)));
        }

        private String event(String animal) {
            String on = ",\"on\":\"" + day(-random.nextInt(9)) + "\"";
            return random.nextInt(4) == 0
                    ? "{\"kind\":\"lengthened\",\"days\":%d,\"reason\":\"to be sure\"%s}"
                            .formatted(1 + random.nextInt(60), on)
                    : "{\"kind\":\"occurred\",\"cause\":\"%s\"%s%s}"
                            .formatted(
                                    any(List.of(
                                            "breach-with-contact",
                                            "breach-without-contact",
                                            "other-sign",
                                            "air-sign",
                                            "mites",
                                            "ticks",
                                            "entamoeba")),
                                    random.nextInt(3) == 0 ? "" : ",\"animalId\":\"" + animal + "\"",
                                    on);
        }

        private Answer vetsWord(String room) {
            String path = "/api/v1/rooms/" + room;
            if (random.nextInt(4) == 0) {
                return vet.post(
                        path + "/events",
                        "{\"kind\":\"vet-decided\",\"days\":%d,\"reason\":\"as I see it\"}"
                                .formatted(random.nextInt(120)));
            }
            JsonNode shown = keeper.get(path + "/clock").json();
            boolean treatment = random.nextBoolean();
            Optional<String> about = StreamSupport.stream(
                            shown.at(treatment ? "/waitingFor" : "/openQuestions")
                                    .spliterator(),
                            false)
                    .map(each -> each.get("event").stringValue())
                    .findFirst();
            return vet.post(
                    path + "/events",
                    treatment
                            ? "{\"kind\":\"treatment-ended\"%s}".formatted(member("about", about))
                            : "{\"kind\":\"vet-spoke\",\"ruling\":\"%s\"%s}"
                                    .formatted(
                                            any(List.of(
                                                    "goes-on", "restarts", "restarts-after-treatment", "was-nothing")),
                                            member("about", about)));
        }

        /** Of a vet who had seen all, or only what was there some days ago. */
        private String vetAnswer(String path) {
            Instant seenUpTo =
                    random.nextInt(3) == 0 ? now().minus(Duration.ofHours(random.nextInt(99))) : clock.instant();
            List<String> said = new ArrayList<>();
            said.add("\"seenUpTo\":\"" + seenUpTo + "\"");
            said.add("\"sawAnimal\":\"" + any(List.of("examined", "heard-of", "read-only")) + "\"");
            said.add("\"writer\":{\"name\":\"A vet\",\"practice\":\"P\",\"licenceStatement\":\"L\"}");
            said.add("\"words\":\"as I see it\"");
            new TreeMap<>(Map.of(
                            "urgency", any(List.of("\"routine\"", "\"urgent\"", "\"asap\"", "\"stat\"")),
                            "isolation", any(List.of("\"standard\"", "\"strict\"")),
                            "quarantineUntil", "\"" + day(random.nextInt(150)) + "\"",
                            "approvesRelease", Boolean.toString(random.nextBoolean()),
                            "nextVisit", "\"" + day(random.nextInt(9)) + "\"",
                            "rulings",
                                    "[{\"cause\":\"%s\",\"ruling\":\"%s\"}]"
                                            .formatted(
                                                    any(List.of("air-sign", "other-sign", "mites", "ticks")),
                                                    any(List.of(
                                                            "goes-on",
                                                            "restarts",
                                                            "restarts-after-treatment",
                                                            "was-nothing")))))
                    .entrySet().stream()
                            .filter(each -> random.nextBoolean())
                            .forEach(each -> said.add("\"" + each.getKey() + "\":" + each.getValue()));
            if (random.nextInt(4) == 0) {
                oneOf(path + "/vet-decisions").ifPresent(id -> said.add("\"supersedes\":\"" + id + "\""));
            }
            return "{" + String.join(",", said) + "}";
        }

        /** By a link of the keeper's: it may only raise. */
        private Answer reply(String path) {
            Answer link = created(keeper.post(path + "/links", "{\"kind\":\"reply\",\"recipient\":\"the vet\"}"));
            JsonNode before = keeper.get(path + "/quarantine").json();
            Answer answer = organisations
                    .nobody()
                    .post(URI.create(link.text("/address")).getPath(), vetAnswer(path));
            if (alone) {
                checkOnlyRaised(before, keeper.get(path + "/quarantine").json());
            }
            return answer;
        }

        private void checkOnlyRaised(JsonNode before, JsonNode after) {
            String both = before + "\n" + after;
            assertThat(rank(after, "/isolation", "standard", "strict"))
                    .as(both)
                    .isGreaterThanOrEqualTo(rank(before, "/isolation", "standard", "strict"));
            assertThat(rank(after, "/urgency", "", "routine", "urgent", "asap", "stat"))
                    .as(both)
                    .isGreaterThanOrEqualTo(rank(before, "/urgency", "", "routine", "urgent", "asap", "stat"));
            assertThat(rank(after, "/clock/standing", "", "empty", "running", "held"))
                    .as(both)
                    .isGreaterThanOrEqualTo(rank(before, "/clock/standing", "", "empty", "running", "held"));
            assertThat(date(after)).as(both).isGreaterThanOrEqualTo(date(before));
            assertThat(events(after)).as(both).containsAll(events(before));
            assertThat(open(after)).as(both).containsAll(open(before));
        }

        private int rank(JsonNode quarantine, String pointer, String... order) {
            return List.of(order).indexOf(quarantine.at(pointer).asString(""));
        }

        private String date(JsonNode quarantine) {
            return quarantine
                    .at("/clock/earliestRelease")
                    .asString(quarantine.at("/clock/notBefore").asString(""));
        }

        private List<String> events(JsonNode quarantine) {
            return StreamSupport.stream(quarantine.at("/ask").spliterator(), false)
                    .map(each -> each.get("event").stringValue())
                    .toList();
        }

        private List<String> open(JsonNode quarantine) {
            return StreamSupport.stream(quarantine.at("/neededForRelease").spliterator(), false)
                    .map(each -> each.get("id").stringValue())
                    .toList();
        }

        private Answer withdrawal(String path, String room) {
            if (random.nextBoolean()) {
                return keeper.post(
                        path + "/placement-withdrawals",
                        "{\"reason\":\"a mistake\"%s}"
                                .formatted(member(
                                        "about",
                                        items(path + "/placements").stream()
                                                .filter(each -> !each.get("kind")
                                                                .stringValue()
                                                                .equals("withdrawn")
                                                        && !each.has("withdrawn"))
                                                .map(each -> each.get("id").stringValue())
                                                .reduce((one, next) -> next))));
            }
            return vet.post(
                    "/api/v1/rooms/" + room + "/events",
                    "{\"kind\":\"withdrawn\",\"reason\":\"a mistake\"%s}"
                            .formatted(member("about", oneOf("/api/v1/rooms/" + room + "/events"))));
        }

        private Answer release(String path) {
            if (random.nextInt(4) == 0) {
                return keeper.post(
                        path + "/legal-holds",
                        "{\"state\":\"%s\",\"authority\":\"A court\"}".formatted(any(List.of("held", "none"))));
            }
            if (random.nextInt(3) == 0) {
                return vet.post(
                        path + "/release-approvals",
                        "{\"approves\":%s,\"note\":\"seen\"}".formatted(random.nextBoolean()));
            }
            return keeper.post(path + "/release-decisions", overrides(path));
        }

        /** A decision in spite of everything that is open. */
        private String overrides(String path) {
            JsonNode review = keeper.get(path + "/release-review").json();
            String overrides = StreamSupport.stream(review.at("/conditions").spliterator(), false)
                    .filter(each -> !each.get("state").stringValue().equals("met"))
                    .map(each -> "\"" + each.get("id").stringValue() + "\":\"for want of room\"")
                    .collect(Collectors.joining(",", "{", "}"));
            return "{\"overrides\":%s%s}"
                    .formatted(overrides, random.nextBoolean() ? "" : ",\"roomId\":\"" + residents + "\"");
        }

        private Answer change(String path, String room) {
            if (random.nextInt(3) == 0) {
                String of = "/api/v1/rooms/" + room;
                return keeper.put(
                        of,
                        "{\"name\":\"Room %d\"}".formatted(random.nextInt(10_000)),
                        "If-Match",
                        keeper.get(of).etag());
            }
            return keeper.put(
                    path,
                    details(
                            any(List.of("Sorrel", "Nettle", "Yarrow", "Burdock")),
                            any(List.of("hatchling", "juvenile", "adult", "unknown")),
                            any(List.of("C", "W", "F", "I", "U")),
                            day(-random.nextInt(50))),
                    "If-Match",
                    keeper.get(path).etag());
        }

        // ---- what holds

        void checkPages(String after) {
            List<String> paths = new ArrayList<>(List.of("/api/v1/worklist"));
            rooms.forEach(room -> paths.add("/api/v1/rooms/" + room + "/clock"));
            animals.forEach(animal -> List.of("quarantine", "release-review", "weight-trend", "demeanour")
                    .forEach(page -> paths.add("/api/v1/animals/" + animal + "/" + page)));
            paths.forEach(path -> {
                Answer page = keeper.get(path);
                assertThat(page.status())
                        .as(path + " " + page.body() + "\n" + after)
                        .isEqualTo(200);
            });
        }

        /** The entries that are kept are those that the records come to now. */
        void checkEntries(String after) {
            new TransactionTemplate(transactions).executeWithoutResult(transaction -> {
                Map<UUID, Entry> kept =
                        rows
                                .listRounds(organisation, Optional.empty(), Optional.empty(), Optional.empty(), 1_000)
                                .stream()
                                .collect(Collectors.toMap(Entry::animalId, Function.identity()));
                Map<UUID, Entry> expected = animals.stream()
                        .map(UUID::fromString)
                        .flatMap(animal ->
                                source.facts(organisation, animal).map(facts -> Entry.of(animal, facts)).stream())
                        .collect(Collectors.toMap(Entry::animalId, Function.identity()));
                for (String animal : animals) {
                    UUID id = UUID.fromString(animal);
                    assertThat(kept.get(id))
                            .as("animal " + (1 + animals.indexOf(animal)) + " after\n" + after)
                            .isEqualTo(expected.get(id));
                }
            });
        }

        // ---- helpers

        private void place(String animal, String room, int day) {
            created(keeper.post(
                    "/api/v1/animals/" + animal + "/placements",
                    "{\"roomId\":\"%s\",\"on\":\"%s\"}".formatted(room, day(day))));
        }

        private <T> T any(List<T> list) {
            return list.get(random.nextInt(list.size()));
        }

        private Optional<String> oneOf(String list) {
            return oneItem(list).map(each -> each.get("id").stringValue());
        }

        private Optional<JsonNode> oneItem(String list) {
            List<JsonNode> all = items(list);
            return all.isEmpty() ? Optional.empty() : Optional.of(any(all));
        }

        private List<JsonNode> items(String list) {
            Answer page = keeper.get(list + "?limit=200");
            assertThat(page.status()).as(page.body()).isEqualTo(200);
            return StreamSupport.stream(page.json().at("/items").spliterator(), false)
                    .toList();
        }

        /** Within the last twelve days. */
        private String moment() {
            return now().minus(Duration.ofMinutes(random.nextInt(12 * 24 * 60))).toString();
        }

        private String member(String name, Optional<String> value) {
            return value.map(text -> ",\"" + name + "\":\"" + text + "\"").orElse("");
        }
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.SECONDS);
    }

    private LocalDate day(int day) {
        return LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC).plusDays(day);
    }

    private static Answer created(Answer answer) {
        assertThat(answer.status()).as(answer.body()).isEqualTo(201);
        return answer;
    }
}
