package varanid.intake.reminder;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import biweekly.component.VAlarm;
import biweekly.component.VEvent;
import biweekly.component.VTodo;
import biweekly.parameter.Related;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.Organisations.Organisation;
import varanid.intake.service.ServiceTest;

/** Reminders as a calendar program gets them. The independent reader is biweekly 0.6.8. */
@ServiceTest
class CalendarIT {

    private static final String CALENDARS = "/api/v1/calendars";
    private static final LocalDate DAY = LocalDate.of(2027, 3, 4);

    @Autowired
    Organisations organisations;

    @Autowired
    ToldTasks plans;

    @Autowired
    MovableClock clock;

    @Autowired
    JdbcClient jdbc;

    private Organisation rescue;
    private Client keeper;
    private Client program;
    private UUID ada;
    private UUID bo;

    @BeforeEach
    void takeInTwo() {
        rescue = organisations.create();
        keeper = rescue.keeper();
        program = organisations.nobody();
        ada = UUID.fromString(
                keeper.post("/api/v1/animals", "{\"name\":\"Ada\"}").id());
        bo = UUID.fromString(keeper.post("/api/v1/animals", "{\"name\":\"Bo\"}").id());
    }

    @Test
    void givesACalendarProgramWhatIsPlannedWithoutAToken() {
        plan(open(weighing(ada, 1, DAY, "Weigh Ada")));
        Answer feed = program.get(address(keeper, "{\"label\":\"My phone\"}"));
        assertThat(feed.status()).isEqualTo(200);
        assertThat(feed.header("Content-Type")).contains("text/calendar;charset=UTF-8");
        assertThat(feed.body()).contains("\r\nNAME:My phone\r\n");
        VEvent event = get(events(feed), uid(ada, 1));
        assertThat(event.getSummary().getValue()).isEqualTo("Weigh Ada");
        assertThat(event.getDateStart().getValue().getRawComponents().toString())
                .startsWith("20270304");
        assertThat(event.getDateEnd().getValue().getRawComponents().toString()).startsWith("20270306");
        assertThat(event.getSequence().getValue()).isZero();
        VAlarm alarm = event.getAlarms().get(0);
        assertThat(alarm.getAction().isDisplay()).isTrue();
        assertThat(alarm.getTrigger().getRelated()).isEqualTo(Related.START);
        assertThat(alarm.getTrigger().getDuration().toMillis())
                .isEqualTo(Duration.ofHours(8).toMillis());
    }

    @Test
    void givesTodosToWhoAskedForThem() {
        plan(open(weighing(ada, 1, DAY, "Weigh Ada")), done(weighing(ada, 2, DAY, "Weigh Ada")));
        Map<String, VTodo> todos = Biweekly.parse(fetch(address(keeper, "{\"label\":\"x\",\"form\":\"todos\"}"))
                        .body())
                .first()
                .getTodos()
                .stream()
                .collect(Collectors.toMap(todo -> todo.getUid().getValue(), Function.identity()));
        assertThat(get(todos, uid(ada, 1)).getStatus().isNeedsAction()).isTrue();
        assertThat(get(todos, uid(ada, 1)).getAlarms().get(0).getTrigger().getRelated())
                .isEqualTo(Related.END);
        assertThat(get(todos, uid(ada, 2)).getStatus().isCompleted()).isTrue();
        assertThat(get(todos, uid(ada, 2)).getAlarms()).isEmpty();
    }

    @Test
    void asksForPlansAsOfTodayInTheOrganisationsZone() {
        rescue = organisations.create(ZoneId.of("Pacific/Kiritimati"));
        plan();
        String address = address(rescue.keeper(), "{\"label\":\"x\"}");
        // At eight in the evening in UTC it is ten in the morning of the next day there.
        Instant now = clock.instant();
        Instant evening =
                now.truncatedTo(ChronoUnit.DAYS).plus(3, ChronoUnit.DAYS).plus(20, ChronoUnit.HOURS);
        clock.later(Duration.between(now, evening), () -> fetch(address));
        assertThat(plans.lastAsOf(rescue.id()))
                .isEqualTo(LocalDate.ofInstant(evening, ZoneOffset.UTC).plusDays(1));
    }

    @Test
    void givesWhoSendsATokenTheCalendarOfOneAnimal() {
        plan(open(weighing(ada, 1, DAY, "Weigh Ada")), open(weighing(bo, 1, DAY, "Weigh Bo")));
        Answer file = keeper.get("/api/v1/animals/" + ada + "/calendar");
        assertThat(file.header("Content-Type")).contains("text/calendar;charset=UTF-8");
        assertThat(events(file)).containsOnlyKeys(uid(ada, 1));
        Answer todos = keeper.get("/api/v1/animals/" + ada + "/calendar?form=todos");
        assertThat(Biweekly.parse(todos.body()).first().getTodos()).hasSize(1);
        assertThat(program.get("/api/v1/animals/" + ada + "/calendar").status()).isEqualTo(401);
        assertThat(keeper.get("/api/v1/animals/" + ada + "/calendar?form=poem").status())
                .isEqualTo(422);
    }

    @Test
    void isAnEmptyCalendarWhereNothingIsPlanned() {
        Answer feed = fetch(address(keeper, "{\"label\":\"x\"}"));
        assertThat(Biweekly.parse(feed.body()).first().getEvents()).isEmpty();
    }

    @Test
    void keepsTheUidAndRaisesTheSequenceWhenATaskIsMoved() {
        String address = address(keeper, "{\"label\":\"x\"}");
        plan(open(weighing(ada, 1, DAY, "Weigh Ada")), open(weighing(ada, 2, DAY.plusDays(7), "Weigh Ada")));
        Map<String, VEvent> first = events(fetch(address));
        plan(open(weighing(ada, 1, DAY, "Weigh Ada")), open(weighing(ada, 2, DAY.plusDays(9), "Weigh Ada")));
        Map<String, VEvent> second = events(fetch(address));
        assertThat(second.keySet()).isEqualTo(first.keySet());
        assertThat(sequences(second)).isEqualTo(Map.of(uid(ada, 1), 0, uid(ada, 2), 1));
        assertThat(get(second, uid(ada, 2))
                        .getDateStart()
                        .getValue()
                        .getRawComponents()
                        .toString())
                .startsWith("20270313");
        plan(open(weighing(ada, 1, DAY, "Weigh Ada, dry")), open(weighing(ada, 2, DAY.plusDays(9), "Weigh Ada")));
        assertThat(sequences(events(fetch(address)))).isEqualTo(Map.of(uid(ada, 1), 1, uid(ada, 2), 1));
    }

    @Test
    void cancelsWhatIsPlannedNoMoreAndTellsSoForSixtyDays() {
        String address = address(keeper, "{\"label\":\"x\"}");
        plan(open(weighing(ada, 1, DAY, "Weigh Ada")));
        fetch(address);
        plan();
        VEvent cancelled = get(events(fetch(address)), uid(ada, 1));
        assertThat(cancelled.getStatus().isCancelled()).isTrue();
        assertThat(cancelled.getSequence().getValue()).isEqualTo(1);
        assertThat(cancelled.getAlarms()).isEmpty();
        clock.later(
                Feeds.TOLD_AFTER_ITS_END.minusHours(1),
                () -> assertThat(events(fetch(address))).containsKey(uid(ada, 1)));
        clock.later(
                Feeds.TOLD_AFTER_ITS_END.plusHours(1),
                () -> assertThat(events(fetch(address))).isEmpty());
        plan(open(weighing(ada, 1, DAY, "Weigh Ada")));
        clock.later(Feeds.TOLD_AFTER_ITS_END.plusHours(2), () -> {
            VEvent again = get(events(fetch(address)), uid(ada, 1));
            assertThat(again.getStatus().isCancelled()).isFalse();
            assertThat(again.getSequence().getValue()).isEqualTo(2);
        });
    }

    @Test
    void tellsWhatIsDoneAsDoneAndNotAsCancelled() {
        String address = address(keeper, "{\"label\":\"x\",\"form\":\"todos\"}");
        plan(open(weighing(ada, 1, DAY, "Weigh Ada")));
        fetch(address);
        plan(done(weighing(ada, 1, DAY, "Weigh Ada")));
        VTodo todo = Biweekly.parse(fetch(address).body()).first().getTodos().get(0);
        assertThat(todo.getStatus().isCompleted()).isTrue();
        assertThat(todo.getSequence().getValue()).isEqualTo(1);
        plan();
        assertThat(Biweekly.parse(fetch(address).body())
                        .first()
                        .getTodos()
                        .get(0)
                        .getStatus()
                        .isCompleted())
                .isTrue();
    }

    @Test
    void aCalendarOfOneAnimalLeavesTheRemindersOfOthersAlone() {
        String ofAll = address(keeper, "{\"label\":\"x\"}");
        String ofAda = address(keeper, "{\"label\":\"x\",\"animalId\":\"" + ada + "\"}");
        plan(open(weighing(ada, 1, DAY, "Weigh Ada")), open(weighing(bo, 1, DAY, "Weigh Bo")));
        assertThat(events(fetch(ofAll))).containsOnlyKeys(uid(ada, 1), uid(bo, 1));
        assertThat(events(fetch(ofAda))).containsOnlyKeys(uid(ada, 1));
        Map<String, VEvent> all = events(fetch(ofAll));
        assertThat(sequences(all)).isEqualTo(Map.of(uid(ada, 1), 0, uid(bo, 1), 0));
        assertThat(get(all, uid(bo, 1)).getStatus().isCancelled()).isFalse();
    }

    @Test
    void writesNothingWhereNothingChanged() {
        String address = address(keeper, "{\"label\":\"x\"}");
        plan(open(weighing(ada, 1, DAY, "Weigh Ada")), open(weighing(bo, 1, DAY, "Weigh Bo")));
        fetch(address);
        List<String> before = rows();
        fetch(address);
        assertThat(rows()).isEqualTo(before);
        plan(open(weighing(ada, 1, DAY, "Weigh Ada")), open(weighing(bo, 1, DAY.plusDays(1), "Weigh Bo")));
        fetch(address);
        Set<String> changed = new HashSet<>(rows());
        assertThat(changed).hasSize(before.size());
        changed.removeAll(before);
        assertThat(changed).hasSize(1);
    }

    @Test
    void answersNotModifiedUntilSomethingChanges() {
        String address = address(keeper, "{\"label\":\"x\"}");
        plan(open(weighing(ada, 1, DAY, "Weigh Ada")));
        Answer first = fetch(address);
        clock.later(Duration.ofHours(5), () -> {
            Answer second = program.get(address, "If-None-Match", first.etag());
            assertThat(second.status()).isEqualTo(304);
            assertThat(second.body()).isEmpty();
            assertThat(second.etag()).isEqualTo(first.etag());
        });
        plan(open(weighing(ada, 1, DAY.plusDays(1), "Weigh Ada")));
        Answer third = program.get(address, "If-None-Match", first.etag());
        assertThat(third.status()).isEqualTo(200);
        assertThat(third.etag()).isNotEqualTo(first.etag());
    }

    @Test
    void answersHeadWithTheSameHeadersAndNoBody() {
        String address = address(keeper, "{\"label\":\"x\"}");
        plan(open(weighing(ada, 1, DAY, "Weigh Ada")));
        Answer get = fetch(address);
        Answer head = program.send("HEAD", address, BodyPublishers.noBody());
        assertThat(head.status()).isEqualTo(200);
        assertThat(head.body()).isEmpty();
        assertThat(headers(head)).isEqualTo(headers(get));
    }

    @Test
    void asksThatTheAddressBeKeptPrivate() {
        Answer feed = fetch(address(keeper, "{\"label\":\"x\"}"));
        assertThat(feed.header("Cache-Control").orElseThrow().split(", "))
                .containsExactlyInAnyOrder("private", "no-cache");
        assertThat(feed.header("Referrer-Policy")).contains("no-referrer");
        assertThat(feed.header("X-Robots-Tag")).contains("noindex");
        assertThat(feed.header("X-Content-Type-Options")).contains("nosniff");
        assertThat(feed.header("Content-Disposition")).contains("inline; filename=\"reminders.ics\"");
    }

    @Test
    void opensWithAndWithoutTheEndingAndWhateverAuthorizationComesAlong() {
        String address = address(keeper, "{\"label\":\"x\"}");
        assertThat(address).endsWith(".ics");
        String bare = address.substring(0, address.length() - 4);
        assertThat(fetch(bare).body()).isEqualTo(fetch(address).body());
        assertThat(program.get(address, "Authorization", "Basic YTpi").status()).isEqualTo(200);
        assertThat(program.get(address, "Accept", "application/json").status()).isEqualTo(200);
    }

    @Test
    void unknownMalformedAndRevokedAreTheSameToTheByte() {
        Answer made = make(keeper, "{\"label\":\"x\"}");
        String address = made.text("/address");
        fetch(address);
        Answer revoked = keeper.post(CALENDARS + "/" + made.id() + "/revocation", "{}");
        assertThat(revoked.status()).isEqualTo(200);
        Answer first = program.get(address);
        assertThat(first.isProblem("not-found")).isTrue();
        String[] parts = address.split("\\.");
        String[] others =
                address(organisations.create().keeper(), "{\"label\":\"x\"}").split("\\.");
        for (String other : List.of(
                parts[0] + "." + parts[1] + "." + "A".repeat(43) + ".ics",
                // the organisation of one link, the secret of another
                parts[0] + "." + others[1] + "." + parts[2] + ".ics",
                "/calendar/vc1." + "A".repeat(22) + "." + "A".repeat(43),
                "/calendar/" + keeper.token(),
                "/calendar/x",
                "/calendar/.ics",
                "/calendar/%27%20OR%201=1%20--",
                "/calendar/" + "x".repeat(4000))) {
            Answer answer = program.get(other);
            assertThat(answer.body()).isEqualTo(first.body());
            assertThat(headers(answer)).isEqualTo(headers(first));
            assertThat(answer.status()).isEqualTo(404);
        }
        assertThat(first.body()).doesNotContain(parts[2]);
    }

    @Test
    void closesWhenThePersonIsNotActiveAnyMore() {
        String address = address(keeper, "{\"label\":\"x\"}");
        fetch(address);
        String path = "/api/v1/people/" + keeper.personId();
        rescue.administrator().put(path, "{\"name\":\"K\",\"roles\":[\"keeper\"],\"active\":false}", "If-Match", "*");
        assertThat(program.get(address).status()).isEqualTo(404);
    }

    @Test
    void isFetchedOnlySoOften() {
        String address = address(keeper, "{\"label\":\"x\"}");
        String another = address(keeper, "{\"label\":\"y\"}");
        // A day ahead, so that no other test's requests count here.
        clock.later(Duration.ofDays(1), () -> {
            Answer last = lastOf(address);
            assertThat(last.isProblem("too-many-requests")).isTrue();
            assertThat(Integer.parseInt(last.header("Retry-After").orElseThrow()))
                    .isBetween(1, 60);
            assertThat(program.get(another).status()).isEqualTo(200);
        });
        clock.later(
                Duration.ofDays(1).plusMinutes(2),
                () -> assertThat(program.get(address).status()).isEqualTo(200));
    }

    @Test
    void wrongSecretsAreAnsweredOnlySoOftenAndShutOutNobodyElse() {
        String address = address(keeper, "{\"label\":\"x\"}");
        clock.later(Duration.ofDays(2), () -> {
            Answer last = lastOf("/calendar/x");
            assertThat(last.isProblem("too-many-requests")).isTrue();
            assertThat(Integer.parseInt(last.header("Retry-After").orElseThrow()))
                    .isBetween(1, 10);
            assertThat(program.get(address).status()).isEqualTo(200);
        });
    }

    @Test
    void nothingElseIsOpen() {
        String address = address(keeper, "{\"label\":\"x\"}");
        for (String method : List.of("POST", "PUT", "DELETE", "PATCH")) {
            assertThat(program.sendJson(method, address, "{}").status())
                    .as(method)
                    .isEqualTo(401);
        }
        assertThat(program.get("/calendar/a/b").status()).isEqualTo(401);
        assertThat(program.get("/calendar").status()).isEqualTo(401);
        assertThat(program.get(CALENDARS).status()).isEqualTo(401);
    }

    @Test
    void foldsAndEscapesHostileText() {
        String summary =
                "Wäge 🦎🦎🦎🦎🦎🦎🦎🦎🦎🦎🦎🦎🦎🦎🦎🦎🦎🦎🦎; \\n, \\\r\nATTACH:http://example.org/\r\nEND:VEVENT";
        String description = "„Ädä“ — ".repeat(60) + "\nBEGIN:VALARM\n;,\\";
        plan(open(new CalendarTask(ada, "weighing", 1, DAY, DAY, summary, description, 1)));
        String label = "Ä;,\\\\ BEGIN:VEVENT \\\" 🦎 " + "ö".repeat(60);
        Answer feed = fetch(address(keeper, "{\"label\":\"" + label + "\"}"));
        assertThat(feed.body().split("\r\n"))
                .allSatisfy(line ->
                        assertThat(line.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(75))
                .noneMatch(line -> line.startsWith("ATTACH"))
                .noneMatch(line -> line.contains("\n") || line.contains("\r") || line.contains("\uFFFD"));
        List<VEvent> read = Biweekly.parse(feed.body()).first().getEvents();
        assertThat(read).hasSize(1);
        assertThat(lines(read.get(0).getSummary().getValue())).isEqualTo(lines(summary));
        assertThat(lines(read.get(0).getDescription().getValue())).isEqualTo(lines(description));
        assertThat(read.get(0).getAlarms()).hasSize(1);
        assertThat(Biweekly.parse(feed.body()).first().getNames().get(0).getValue())
                .isEqualTo("Ä;,\\ BEGIN:VEVENT \" 🦎 " + "ö".repeat(60));
    }

    @Test
    void showsTheAddressOnceAndStoresItsHashOnly() {
        Answer made = make(keeper, "{\"label\":\"x\",\"animalId\":\"" + ada + "\"}");
        assertThat(made.header("Location")).contains(CALENDARS + "/" + made.id());
        String address = made.text("/address");
        assertThat(address).matches("/calendar/vc1\\.[A-Za-z0-9_-]{22}\\.[A-Za-z0-9_-]{43}\\.ics");
        String secret = address.split("\\.")[2];
        Answer one = keeper.get(CALENDARS + "/" + made.id());
        assertThat(one.text("/animalId")).isEqualTo(ada.toString());
        assertThat(one.json().has("lastFetchedOn")).isFalse();
        assertThat(one.body() + keeper.get(CALENDARS).body())
                .contains(made.id())
                .doesNotContain(secret);
        String row = jdbc.sql("SELECT row_to_json(l)::text FROM calendar_link l WHERE organisation_id = ?")
                .param(rescue.id())
                .query(String.class)
                .single();
        assertThat(row).doesNotContain(secret.substring(8));
        fetch(address);
        assertThat(keeper.get(CALENDARS + "/" + made.id()).text("/lastFetchedOn"))
                .matches("\\d{4}-\\d\\d-\\d\\d");
    }

    @Test
    void aPersonSeesAndRevokesTheirOwnAndAnAdministratorAll() {
        Client clinician = rescue.clinician();
        Answer made = make(clinician, "{\"label\":\"x\"}");
        String revocation = CALENDARS + "/" + made.id() + "/revocation";
        Client stranger = organisations.create().administrator();
        for (Client other : List.of(keeper, stranger)) {
            assertThat(other.get(CALENDARS).body()).doesNotContain(made.id());
            assertThat(other.get(CALENDARS + "/" + made.id()).isProblem("not-found"))
                    .isTrue();
            assertThat(other.post(revocation, "{}").isProblem("not-found")).isTrue();
        }
        fetch(made.text("/address"));
        assertThat(clinician.get(CALENDARS).body()).contains(made.id());
        Client administrator = rescue.administrator();
        assertThat(administrator.get(CALENDARS).body()).contains(made.id());
        Answer revoked = administrator.send("POST", revocation, BodyPublishers.noBody());
        assertThat(revoked.text("/revokedAt")).isNotBlank();
        assertThat(program.get(made.text("/address")).status()).isEqualTo(404);
        assertThat(clinician.post(revocation, "{}").text("/revokedAt")).isEqualTo(revoked.text("/revokedAt"));
    }

    @Test
    void namesEveryFaultOfARequest() {
        UUID ofOthers = UUID.fromString(
                organisations.create().keeper().post("/api/v1/animals", "{}").id());
        assertThat(keeper.post(CALENDARS, "{\"animalId\":\"" + ofOthers + "\",\"form\":\"journal\",\"secret\":\"x\"}")
                        .faults())
                .containsExactlyInAnyOrder("#/animalId", "#/form", "#/label", "#/secret");
        assertThat(keeper.get(CALENDARS).json().get("items")).isEmpty();
    }

    private void plan(PlannedTask... tasks) {
        plans.tell(rescue.id(), tasks);
    }

    private static CalendarTask weighing(UUID animal, int ordinal, LocalDate day, String summary) {
        return new CalendarTask(animal, "weighing", ordinal, day, day.plusDays(1), summary, "", 5);
    }

    private static String uid(UUID animal, int ordinal) {
        return weighing(animal, ordinal, DAY, "").uid();
    }

    private static PlannedTask open(CalendarTask task) {
        return new PlannedTask(task.caseId(), task, false);
    }

    private static PlannedTask done(CalendarTask task) {
        return new PlannedTask(task.caseId(), task, true);
    }

    private static Answer make(Client person, String body) {
        Answer made = person.post(CALENDARS, body);
        assertThat(made.status()).as(made.body()).isEqualTo(201);
        return made;
    }

    private static String address(Client person, String body) {
        return make(person, body).text("/address");
    }

    private Answer fetch(String address) {
        Answer feed = program.get(address);
        assertThat(feed.status()).as(feed.body()).isEqualTo(200);
        return feed;
    }

    /** The answer to one request more than the first refusal would come at, at the latest. */
    private Answer lastOf(String address) {
        Answer answer = program.get(address);
        for (int i = 0; i < 40 && answer.status() != 429; i++) {
            answer = program.get(address);
        }
        return answer;
    }

    private static <T> T get(Map<String, T> entries, String uid) {
        return Objects.requireNonNull(entries.get(uid), uid);
    }

    private static Map<String, VEvent> events(Answer feed) {
        return Biweekly.parse(feed.body()).first().getEvents().stream()
                .collect(Collectors.toMap(event -> event.getUid().getValue(), Function.identity()));
    }

    private static Map<String, Integer> sequences(Map<String, VEvent> events) {
        return events.entrySet().stream()
                .collect(Collectors.toMap(
                        Map.Entry::getKey,
                        entry -> entry.getValue().getSequence().getValue()));
    }

    /** The rows with where they lie: a row that is written anew lies elsewhere, even if it says the same. */
    private List<String> rows() {
        return jdbc.sql("""
                        SELECT r.ctid || row_to_json(r)::text FROM calendar_reminder r WHERE organisation_id = ?
                        UNION ALL
                        SELECT l.ctid || row_to_json(l)::text FROM calendar_link l WHERE organisation_id = ?""")
                .params(rescue.id(), rescue.id())
                .query(String.class)
                .list();
    }

    /** All but the time of day, and whether the connection is kept for another request. */
    private static Map<String, List<String>> headers(Answer answer) {
        Map<String, List<String>> headers = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        answer.headers().forEach(headers::put);
        headers.remove("Date");
        headers.remove("Connection");
        return headers;
    }

    private static String lines(String text) {
        return text.replace("\r\n", "\n");
    }
}
