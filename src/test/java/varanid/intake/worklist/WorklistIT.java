package varanid.intake.worklist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.JsonNode;
import varanid.intake.animal.AnimalChanged;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.quarantine.Isolation;
import varanid.intake.quarantine.Stage;
import varanid.intake.quarantine.WorkPlace;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;
import varanid.intake.worklist.WorklistFacts.Room;

/** The two lists over HTTP. The days are meant from tomorrow on, so that no midnight can come between. */
@ServiceTest
class WorklistIT {

    private static final String ACT_NOW = "/api/v1/worklist/act-now";
    private static final String ROUNDS = "/api/v1/worklist/rounds";
    private static final Room NORTH = new Room(new UUID(1, 1), "North");
    private static final Room SOUTH = new Room(new UUID(1, 2), "South");

    @Autowired
    Organisations organisations;

    @Autowired
    ToldFacts told;

    @Autowired
    MovableClock clock;

    @Autowired
    ApplicationEventPublisher events;

    @Autowired
    PlatformTransactionManager transactions;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    WorklistKeeper keeper;

    @Autowired
    OrganisationLock lock;

    private Organisations.Organisation organisation;
    private Client client;
    private LocalDate day;

    @BeforeEach
    void anOrganisationOfItsOwn() {
        organisation = organisations.create();
        client = organisation.keeper();
        told.speakFor(organisation.id());
        day = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC).plusDays(1);
    }

    @Test
    void listsTheMostUrgentFirstAndThenWhatIsDueFirst() {
        add(Facts.of("routine, due later").with("weighing", day.plusDays(1), day.plusDays(2)));
        add(Facts.of("routine, due").with("weighing", day, day.plusDays(1)));
        add(Facts.of("routine, long overdue").with("weighing", day.minusDays(9), day.minusDays(8)));
        add(Facts.of("worse, nothing planned").isWorse());
        add(Facts.of("worse, due").isWorse().with("re-look", day, day));
        add(Facts.of("never looked at").is(null));
        add(Facts.of("urgent, due").is(Urgency.URGENT).with("re-look", day, day));
        add(Facts.of("within a day").is(Urgency.ASAP).isWorse());
        add(Facts.of("now").is(Urgency.STAT));
        add(Facts.of("routine, nothing planned"));
        assertThat(labels(get(ACT_NOW)))
                .containsExactly(
                        "now",
                        "within a day",
                        "urgent, due",
                        "never looked at",
                        "worse, due",
                        "worse, nothing planned",
                        "routine, long overdue",
                        "routine, due");
    }

    @Test
    void saysWhyAndWhatIsDueAndHowLateAndWhereToLook() {
        UUID id = add(Facts.of("Pebble")
                .in(NORTH)
                .is(Urgency.ASAP)
                .isWorse()
                .with("weighing", day.minusDays(4), day.minusDays(3))
                .with("re-look", day, day.plusDays(1))
                .with("faecal-sample", day.plusDays(5), day.plusDays(7)));
        JsonNode item = get(ACT_NOW).json().at("/items/0");
        assertThat(item.at("/asOf").asString()).isEqualTo(day.toString());
        assertThat(item.at("/animal/id").asString()).isEqualTo(id.toString());
        assertThat(item.at("/animal/label").asString()).isEqualTo("Pebble");
        assertThat(item.at("/room/name").asString()).isEqualTo("North");
        assertThat(item.at("/urgency").asString()).isEqualTo("asap");
        assertThat(item.at("/headline").asString()).isEqualTo("headline of Pebble");
        assertThat(item.at("/worse").asBoolean()).isTrue();
        assertThat(item.at("/because/0/code").asString()).isEqualTo("dull");
        assertThat(item.at("/because/0/words").asString()).isEqualTo("Slow, eyes half shut in the day");
        assertThat(item.at("/due")).hasSize(2);
        assertThat(item.at("/due/0/state").asString()).isEqualTo("overdue");
        assertThat(item.at("/due/0/daysLate").asInt()).isEqualTo(3);
        assertThat(item.at("/due/0/latest").asString())
                .isEqualTo(day.minusDays(3).toString());
        assertThat(item.at("/due/1/state").asString()).isEqualTo("due");
        assertThat(item.at("/due/1/daysLate").asInt()).isZero();
        assertThat(item.at("/moreDue").asBoolean()).isFalse();
        assertThat(item.at("/next/kind").asString()).isEqualTo("faecal-sample");
        String animal = "/api/v1/animals/" + id;
        assertThat(item.at("/links/animal").asString()).isEqualTo(animal);
        assertThat(client.get(animal).status()).isEqualTo(200);
        assertThat(item.at("/links/quarantine").asString()).isEqualTo(animal + "/quarantine");
        assertThat(item.at("/links/comparison").asString())
                .isEqualTo(animal + "/assessments/" + new UUID(7, 7) + "/comparison");
    }

    @Test
    void saysThatNobodyHasLooked() {
        add(Facts.of("new").is(null));
        JsonNode item = get(ACT_NOW).json().at("/items/0");
        assertThat(item.at("/urgency").isNull() || item.at("/urgency").isMissingNode())
                .isTrue();
        assertThat(item.at("/because/0/code").asString()).isEqualTo("not-looked-at");
        assertThat(item.at("/headline").asString()).isNotEmpty();
    }

    @Test
    void becomesDueAndOverdueByTimePassingAlone() {
        add(Facts.of("a").with("weighing", day.plusDays(10), day.plusDays(11)));
        assertThat(labels(get(ACT_NOW))).isEmpty();
        assertThat(labels(ask(ACT_NOW + "?asOf=" + day.plusDays(10)))).containsExactly("a");
        clock.later(Duration.ofDays(21), () -> {
            // A token made then: the others have expired.
            Answer then = organisation.keeper().get(ACT_NOW + "?asOf=" + day.plusDays(21));
            assertThat(then.text("/items/0/due/0/state")).isEqualTo("overdue");
            assertThat(then.json().at("/items/0/due/0/daysLate").asInt()).isEqualTo(10);
        });
    }

    @Test
    void narrowsToWhatIsDueOverdueWorseOrUrgent() {
        add(Facts.of("due").with("weighing", day, day.plusDays(3)));
        add(Facts.of("waited longest").with("weighing", day.minusDays(3), day.minusDays(2)));
        // Due earlier, but with more time to do it.
        add(Facts.of("waited less").with("faecal-sample", day.minusDays(9), day.minusDays(1)));
        add(Facts.of("worse").isWorse());
        add(Facts.of("urgent and overdue").is(Urgency.URGENT).with("re-look", day.minusDays(1), day.minusDays(1)));
        add(Facts.of("now, and worse").is(Urgency.STAT).isWorse());
        assertThat(labels(get(ACT_NOW + "?only=due")))
                .containsExactly("urgent and overdue", "waited less", "waited longest", "due");
        assertThat(labels(get(ACT_NOW + "?only=overdue")))
                .containsExactly("urgent and overdue", "waited longest", "waited less");
        assertThat(labels(get(ACT_NOW + "?only=worse"))).containsExactly("now, and worse", "worse");
        assertThat(labels(get(ACT_NOW + "?only=urgent"))).containsExactly("now, and worse", "urgent and overdue");
        assertThat(client.get(ACT_NOW + "?only=sick").faults()).containsExactly("only");
    }

    @Test
    void narrowsToARoom() {
        add(Facts.of("north").in(NORTH).is(Urgency.STAT));
        add(Facts.of("south").in(SOUTH).is(Urgency.STAT).with("weighing", day.minusDays(2), day.minusDays(1)));
        add(Facts.of("nowhere").is(Urgency.STAT).isWorse());
        assertThat(labels(get(ACT_NOW + "?room=" + NORTH.id()))).containsExactly("north");
        assertThat(labels(get(ACT_NOW + "?only=overdue&room=" + SOUTH.id()))).containsExactly("south");
        assertThat(labels(get(ACT_NOW + "?only=worse&room=" + SOUTH.id()))).isEmpty();
        assertThat(labels(get(ROUNDS + "?room=" + SOUTH.id()))).containsExactly("south");
        assertThat(labels(get(ROUNDS + "?room=" + new UUID(9, 9)))).isEmpty();
    }

    @Test
    void walksFromResidentsToTheSickAndNeverZigzag() {
        add(Facts.of("sick").in(NORTH).at(WorkPlace.SICK, Isolation.STANDARD, Stage.HATCHLING));
        add(Facts.of("suspect").in(NORTH).at(WorkPlace.SUSPECT, Isolation.STANDARD, Stage.ADULT));
        add(Facts.of("strict newcomer")
                .in(NORTH)
                .at(WorkPlace.NEWCOMERS_WITHOUT_SIGNS, Isolation.STRICT, Stage.HATCHLING));
        Facts adult = Facts.of("").at(WorkPlace.NEWCOMERS_WITHOUT_SIGNS, Isolation.STANDARD, Stage.ADULT);
        add(adult.named("adult south").in(SOUTH));
        add(adult.named("adult north").in(NORTH));
        add(adult.named("second adult south").in(SOUTH));
        add(adult.named("second adult north").in(NORTH));
        add(Facts.of("hatchling").in(SOUTH).at(WorkPlace.NEWCOMERS_WITHOUT_SIGNS, Isolation.STANDARD, Stage.HATCHLING));
        add(Facts.of("resident").at(WorkPlace.RESIDENTS, Isolation.STANDARD, Stage.ADULT));
        Answer answer = get(ROUNDS);
        assertThat(labels(answer))
                .containsExactly(
                        "resident",
                        "adult north",
                        "second adult north",
                        "hatchling",
                        "adult south",
                        "second adult south",
                        "strict newcomer",
                        "suspect",
                        "sick");
        JsonNode sick = answer.json().at("/items/8");
        assertThat(sick.at("/workPlace").asString()).isEqualTo("sick");
        assertThat(sick.at("/isolation").asString()).isEqualTo("standard");
        assertThat(sick.at("/stage").asString()).isEqualTo("hatchling");
        assertThat(sick.at("/reminder").asString()).contains("shower");
    }

    @Test
    void walksOnlyWhereSomethingIsDueWhereAskedTo() {
        add(Facts.of("due").with("weighing", day, day));
        add(Facts.of("later").with("weighing", day.plusDays(1), day.plusDays(1)));
        assertThat(labels(get(ROUNDS + "?due=true"))).containsExactly("due");
        assertThat(labels(get(ROUNDS + "?due=false"))).containsExactly("due", "later");
        assertThat(labels(ask(ROUNDS + "?due=true&asOf=" + day.plusDays(1)))).containsExactly("due", "later");
        assertThat(client.get(ROUNDS + "?due=yes").faults()).containsExactly("due");
    }

    @ParameterizedTest
    @ValueSource(strings = {ACT_NOW, ACT_NOW + "?only=due", ACT_NOW + "?only=overdue", ROUNDS, ROUNDS + "?due=true"})
    void pagesGiveEveryAnimalOnce(String list) {
        List<String> all = new ArrayList<>();
        for (int i = 0; i < 11; i++) {
            all.add("animal " + i);
            add(Facts.of("animal " + i)
                    .in(i % 2 == 0 ? NORTH : SOUTH)
                    .is(Urgency.values()[i % 4])
                    .with("weighing", day.minusDays(3 + i % 3), day.minusDays(2)));
        }
        List<String> once = labels(get(list));
        assertThat(once).containsExactlyInAnyOrderElementsOf(all);
        assertThat(paged(list + (list.contains("?") ? "&" : "?") + "limit=3", () -> {}))
                .containsExactlyElementsOf(once);
        String room = list + (list.contains("?") ? "&" : "?") + "limit=2&room=" + NORTH.id();
        assertThat(paged(room, () -> {})).hasSize(6).doesNotHaveDuplicates();
    }

    @Test
    void whatStaysIsNeitherSkippedNorRepeatedWhileOthersMove() {
        List<UUID> moving = new ArrayList<>();
        List<String> staying = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            Facts facts = Facts.of("animal " + i).with("weighing", day.minusDays(30 - i), day.minusDays(30 - i));
            UUID id = add(facts);
            if (i % 3 == 0) {
                moving.add(id);
            } else {
                staying.add("animal " + i);
            }
        }
        List<String> seen = paged(ACT_NOW + "?limit=3", new Runnable() {
            private int turn;

            @Override
            public void run() {
                UUID id = moving.get(turn % moving.size());
                switch (turn++ % 3) {
                    // To the front, to the end, away.
                    case 0 -> change(id, Facts.of("moved").is(Urgency.STAT));
                    case 1 -> change(id, Facts.of("moved").with("weighing", day, day));
                    default -> leave(id);
                }
                add(Facts.of("new").is(Urgency.STAT));
            }
        });
        assertThat(seen.stream().filter(staying::contains)).containsExactlyElementsOf(staying);
    }

    @Test
    void showsNothingToAnotherOrganisation() {
        add(Facts.of("ours").in(NORTH).is(Urgency.STAT).with("weighing", day, day));
        Organisations.Organisation other = organisations.create();
        told.speakFor(other.id());
        Client stranger = other.keeper();
        for (String list : List.of(ACT_NOW, ROUNDS, ACT_NOW + "?room=" + NORTH.id(), ROUNDS + "?room=" + NORTH.id())) {
            assertThat(stranger.get(list).json().get("items")).isEmpty();
        }
        assertThat(organisations.nobody().get(ACT_NOW).status()).isEqualTo(401);
    }

    @Test
    void givesAHostileLabelBackAsItWasAndPagesPastIt() {
        String hostile = "\"><script>alert(1)</script>' OR '1'='1 \\u0000 \u202Etxt.exe \uD83E\uDD8E ${x}";
        Room room = new Room(new UUID(3, 3), "a\",\"b\\ \u202E; rel=\"next\" \uD83E\uDD8E" + "x".repeat(80));
        add(Facts.of(hostile).in(room).is(Urgency.STAT));
        add(Facts.of("after").in(room).is(Urgency.STAT));
        assertThat(paged(ACT_NOW + "?limit=1", () -> {})).containsExactly(hostile, "after");
        assertThat(paged(ROUNDS + "?limit=1", () -> {})).containsExactly(hostile, "after");
    }

    @Test
    void isAskedForTodayOrLaterAndSaysWhy() {
        LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
        for (String list : List.of(ACT_NOW, ROUNDS)) {
            Answer past = client.get(list + "?asOf=" + today.minusDays(1));
            assertThat(past.isProblem("invalid-request")).isTrue();
            assertThat(past.faults()).containsExactly("asOf");
            assertThat(past.text("/faults/0/wrong")).contains("past");
            assertThat(client.get(list + "?asOf=" + today.plusDays(366)).status())
                    .isEqualTo(200);
            assertThat(client.get(list + "?asOf=" + today.plusDays(368)).faults())
                    .containsExactly("asOf");
            assertThat(client.get(list + "?asOf=2026-02-30").faults()).containsExactly("asOf");
        }
    }

    @Test
    void todayIsTheOrganisationsOwn() {
        Organisations.Organisation east = organisations.create(ZoneId.of("Pacific/Kiritimati"));
        Organisations.Organisation west = organisations.create(ZoneId.of("Pacific/Pago_Pago"));
        // They are 25 hours apart: never on the same day.
        for (Organisations.Organisation each : List.of(east, west)) {
            told.speakFor(each.id());
        }
        LocalDate there = LocalDate.ofInstant(clock.instant(), ZoneId.of("Pacific/Pago_Pago"));
        assertThat(west.keeper().get(ACT_NOW + "?asOf=" + there.plusDays(1)).status())
                .isEqualTo(200);
        assertThat(east.keeper().get(ACT_NOW + "?asOf=" + there).faults()).containsExactly("asOf");
    }

    @Test
    void anAnimalThatLeavesIsOnNoListAndComesBackWithItsReturn() {
        UUID id = add(Facts.of("a").is(Urgency.STAT));
        leave(id);
        assertThat(labels(get(ACT_NOW))).isEmpty();
        assertThat(labels(get(ROUNDS))).isEmpty();
        change(id, Facts.of("a").is(Urgency.ASAP));
        assertThat(labels(get(ACT_NOW))).containsExactly("a");
    }

    @Test
    void aChangeThatIsRolledBackLeavesTheListAsItWas() {
        UUID id = add(Facts.of("before").is(Urgency.STAT));
        told.tell(organisation.id(), id, Facts.of("after").is(Urgency.STAT).done());
        assertThatThrownBy(() -> transaction().executeWithoutResult(status -> {
                    events.publishEvent(AnimalChanged.of(organisation.id(), id));
                    throw new IllegalStateException("something else went wrong");
                }))
                .hasMessage("something else went wrong");
        assertThat(labels(get(ACT_NOW))).containsExactly("before");
    }

    @Test
    void recordingAnAnimalAndChangingItKeepsItsEntry() {
        Answer made = client.post("/api/v1/animals", "{\"name\":\"Reed\"}");
        UUID id = UUID.fromString(made.id());
        assertThat(labels(get(ROUNDS))).isEmpty();
        told.tell(organisation.id(), id, Facts.of("Reed").done());
        assertThat(client.put("/api/v1/animals/" + id, "{\"name\":\"Reed\"}", "If-Match", made.etag())
                        .status())
                .isEqualTo(200);
        assertThat(labels(get(ROUNDS))).containsExactly("Reed");
    }

    @Test
    void animalsThatWereThereBeforeGetTheirEntriesBatchByBatchAndEachOnce() {
        List<UUID> before = new ArrayList<>();
        for (int i = 0; i < WorklistFill.BATCH * 2 + 7; i++) {
            UUID id = insertAnimal();
            before.add(id);
            told.tell(organisation.id(), id, Facts.of("animal").is(Urgency.STAT).done());
        }
        UUID gone = insertAnimal();
        // Before it is complete it is refused: a list with somebody missing would be worse than none.
        Answer first = client.get(ACT_NOW);
        assertThat(first.isProblem("worklist-not-ready")).isTrue();
        assertThat(first.header("Retry-After")).contains("1");
        // Another process goes on where the first one was.
        WorklistFill restarted = new WorklistFill(keeper, lock, jdbc, transactions);
        assertThat(restarted.fill(organisation.id())).isFalse();
        assertThat(restarted.fill(organisation.id())).isTrue();
        assertThat(paged(ACT_NOW + "?limit=40", () -> {})).hasSize(before.size());
        assertThat(before).allSatisfy(id -> assertThat(told.timesAskedAbout(id)).isEqualTo(1));
        // Complete is complete: nobody is asked about again, not even those who have no entry.
        WorklistFill again = new WorklistFill(keeper, lock, jdbc, transactions);
        assertThat(again.fill(organisation.id())).isTrue();
        assertThat(told.timesAskedAbout(gone)).isEqualTo(1);
    }

    static Stream<String> strangeCursors() {
        return Stream.of(
                "x",
                "AAAA",
                written("[]"),
                written("null"),
                written("[\"due_from\"]"),
                written("[\"due_until\",\"0\",\"2026-03-09\",\"" + new UUID(1, 1) + "\"]"),
                written("[\"due_from\",\"9\",\"2026-03-09\",\"" + new UUID(1, 1) + "\"]"),
                written("[\"due_from\",\"0\",\"+999999999-12-31\",\"" + new UUID(1, 1) + "\"]"),
                written("[\"due_from\",\"0\",\"2026-03-09\",\"1-1-1-1-1\"]"),
                written("[\"due_from\",\"0\",\"2026-03-09\",null]"),
                written("[\"rounds\",\"0\",\"a\\u0000b\",\"" + new UUID(1, 1) + "\"]"),
                written("[\"rounds\",\"99999999999\",\"a\",\"" + new UUID(1, 1) + "\"]"));
    }

    @ParameterizedTest
    @MethodSource("strangeCursors")
    void refusesACursorThatItNeverGaveOut(String cursor) {
        assertThat(client.get(ACT_NOW + "?cursor=" + cursor).faults()).containsExactly("cursor");
        assertThat(client.get(ROUNDS + "?cursor=" + cursor).faults()).containsExactly("cursor");
    }

    private static String written(String json) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(json.getBytes(StandardCharsets.UTF_8));
    }

    private UUID add(Facts facts) {
        UUID id = UUID.fromString(client.post("/api/v1/animals", "{}").id());
        change(id, facts);
        return id;
    }

    private void change(UUID animalId, Facts facts) {
        told.tell(organisation.id(), animalId, facts.done());
        publish(animalId);
    }

    private void leave(UUID animalId) {
        told.left(organisation.id(), animalId);
        publish(animalId);
    }

    private void publish(UUID animalId) {
        transaction()
                .executeWithoutResult(status -> events.publishEvent(AnimalChanged.of(organisation.id(), animalId)));
    }

    private TransactionTemplate transaction() {
        return new TransactionTemplate(transactions);
    }

    /** As it was before there was a work list. */
    private UUID insertAnimal() {
        return jdbc.sql("""
                        INSERT INTO animal (organisation_id, id, version, life_stage, sex, evidence, papers,
                            first_weights, first_lengths, recorded_by, recorded_at)
                        VALUES (?, gen_random_uuid(), 0, 'adult', 'unknown', '{}', '[]', '[]', '[]', ?, now())
                        RETURNING id""")
                .param(organisation.id())
                .param(client.personId())
                .query(UUID.class)
                .single();
    }

    /** As of tomorrow. */
    private Answer get(String list) {
        return ask(list + (list.contains("?") ? "&" : "?") + "asOf=" + day);
    }

    private Answer ask(String path) {
        Answer answer = client.get(path);
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return answer;
    }

    private List<String> paged(String list, Runnable meanwhile) {
        List<String> seen = new ArrayList<>();
        Optional<String> next = Optional.of(list + "&asOf=" + day);
        while (next.isPresent()) {
            Answer page = ask(next.get());
            seen.addAll(labels(page));
            assertThat(page.link("first")).isPresent();
            next = page.link("next");
            meanwhile.run();
        }
        return seen;
    }

    private static List<String> labels(Answer answer) {
        return StreamSupport.stream(answer.json().get("items").spliterator(), false)
                .map(item -> item.at("/animal/label").asString())
                .toList();
    }
}
