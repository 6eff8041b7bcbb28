package varanid.intake.followup;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import biweekly.component.VEvent;
import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import tools.jackson.databind.JsonNode;
import varanid.intake.platform.web.Role;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;

/**
 * A rescue followed day by day over HTTP. Day 0 is tomorrow, so that a day never ends while the test works on it; the
 * service's clock is moved to each day, and nothing is recorded ahead.
 */
final class Story {

    /** How old a stool sample was where nobody wrote it down. */
    static final int UNKNOWN = -1;

    private static final DateTimeFormatter IN_WORDS = DateTimeFormatter.ofPattern("EEEE d MMMM uuuu", Locale.ENGLISH);
    private static final Duration LONG = Duration.ofDays(400);

    final Client keeper;
    final Client vet;

    private final Client program;
    private final MovableClock clock;
    private final LocalDate first;
    private final Map<String, String> fine = new LinkedHashMap<>();
    private int now;

    Story(Organisations organisations, MovableClock clock) {
        Organisations.Organisation rescue = organisations.create();
        this.keeper = rescue.person("Kim Keeper", LONG, Role.KEEPER);
        this.vet = rescue.person("Vera Vet", LONG, Role.CLINICIAN);
        this.program = organisations.nobody();
        this.clock = clock;
        this.first = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC).plusDays(1);
        readWhatIsFine();
    }

    /** Everything that a look asks for, but the weight, answered by the first level: nothing is wrong. */
    private void readWhatIsFine() {
        JsonNode checklist =
                ok(keeper.get("/api/v1/checklists/varanid-intake/versions/1")).json();
        checklist.get("findings").forEach(finding -> {
            String id = finding.get("id").stringValue();
            if (!Set.of("weight-trend", "days-food-refused").contains(id)) {
                fine.put(id, "\"" + finding.at("/levels/0/code").stringValue() + "\"");
            }
        });
        fine.put("days-food-refused", "0");
    }

    // ---- days

    /** At ten in the morning of that day. */
    void day(int day, Runnable what) {
        at(day, LocalTime.of(10, 0), what);
    }

    void evening(int day, Runnable what) {
        at(day, LocalTime.of(20, 0), what);
    }

    private void at(int day, LocalTime time, Runnable what) {
        now = day;
        Instant then = date(day).atTime(time).toInstant(ZoneOffset.UTC);
        clock.later(Duration.between(clock.instant(), then), what);
    }

    LocalDate date(int day) {
        return first.plusDays(day);
    }

    String iso(int day) {
        return date(day).toString();
    }

    String words(int day) {
        return IN_WORDS.format(date(day));
    }

    // ---- what people do

    String room(String name, String kind) {
        return created(keeper.post("/api/v1/rooms", "{\"name\":\"%s\",\"kind\":\"%s\"}".formatted(name, kind)))
                .id();
    }

    String animal(String name, String origin, String evidence) {
        return created(keeper.post(
                        "/api/v1/animals",
                        "{\"name\":\"%s\",\"species\":{\"name\":\"Varanus salvator\"},\"lifeStage\":\"juvenile\",\"declaredOrigin\":\"%s\",\"evidence\":%s}"
                                .formatted(name, origin, evidence)))
                .id();
    }

    Answer preview(String animal, String room) {
        return ok(keeper.post("/api/v1/rooms/" + room + "/placement-preview", "{\"animalId\":\"" + animal + "\"}"));
    }

    Answer place(String animal, String room) {
        return created(keeper.post(of(animal) + "/placements", "{\"roomId\":\"" + room + "\"}"));
    }

    /** A look where nothing is wrong but these. */
    Answer look(String animal, String... findingAndLevel) {
        Map<String, String> answers = new LinkedHashMap<>(fine);
        for (int i = 0; i < findingAndLevel.length; i += 2) {
            answers.put(findingAndLevel[i], "\"" + findingAndLevel[i + 1] + "\"");
        }
        String all = answers.entrySet().stream()
                .map(each -> "\"" + each.getKey() + "\":" + each.getValue())
                .collect(Collectors.joining(",", "{", "}"));
        return created(
                keeper.post(of(animal) + "/assessments", "{\"checklist\":\"varanid-intake\",\"answers\":" + all + "}"));
    }

    /** Before food, four days after the last. */
    Answer weigh(String animal, String grams, String scale, String resolution) {
        return created(keeper.post(
                of(animal) + "/weighings",
                "{\"value\":%s,\"unit\":\"g\",\"scale\":\"%s\",\"resolution\":%s,\"lastMealAt\":\"%sT08:00:00Z\"}"
                        .formatted(grams, scale, resolution, date(now - 4))));
    }

    Answer diary(String animal, String entry) {
        return created(keeper.post(of(animal) + "/diary", entry));
    }

    /** Gives the path of the sample. */
    String stool(String animal, int freshHours) {
        String fresh = freshHours == UNKNOWN ? "" : ",\"freshHours\":" + freshHours;
        return created(keeper.post(
                        of(animal) + "/samples", "{\"kind\":\"stool\",\"methods\":[\"flotation\"]" + fresh + "}"))
                .header("Location")
                .orElseThrow();
    }

    Answer negative(String sample) {
        return created(keeper.post(sample + "/results", "{\"method\":\"flotation\",\"outcome\":\"negative\"}"));
    }

    Answer positive(String sample, String agent) {
        return created(keeper.post(
                sample + "/results",
                "{\"method\":\"flotation\",\"outcome\":\"positive\",\"found\":[{\"agent\":\"" + agent + "\"}]}"));
    }

    Answer event(Client who, String room, String body) {
        return who.post("/api/v1/rooms/" + room + "/events", body);
    }

    Answer vetSays(String room, String about, String ruling, String reason) {
        return created(event(
                vet,
                room,
                "{\"kind\":\"vet-spoke\",\"about\":\"%s\",\"ruling\":\"%s\",\"reason\":\"%s\"}"
                        .formatted(about, ruling, reason)));
    }

    /** By the clinician's account. */
    Answer vetAnswers(String animal, String fields) {
        return created(vet.post(of(animal) + "/vet-decisions", answer(fields)));
    }

    /** By a link that the keeper gave out: nobody knows who wrote it. */
    Answer somebodyReplies(String animal, String fields) {
        String address = created(keeper.post(of(animal) + "/links", "{\"kind\":\"reply\",\"recipient\":\"a vet\"}"))
                .text("/address");
        return created(program.post(URI.create(address).getPath(), answer(fields)));
    }

    private String answer(String fields) {
        return "{\"seenUpTo\":\"%s\",%s,\"writer\":{\"name\":\"Vera Vet\",\"practice\":\"Pond Street\",\"licenceStatement\":\"Register 12\"}}"
                .formatted(clock.instant(), fields);
    }

    // ---- what people read

    Answer clock(String room) {
        return ok(keeper.get("/api/v1/rooms/" + room + "/clock"));
    }

    Answer quarantine(String animal) {
        return ok(keeper.get(of(animal) + "/quarantine"));
    }

    Answer trend(String animal) {
        return ok(keeper.get(of(animal) + "/weight-trend"));
    }

    Answer review(String animal) {
        return ok(keeper.get(of(animal) + "/release-review"));
    }

    Map<String, String> states(String animal) {
        Map<String, String> states = new TreeMap<>();
        review(animal)
                .json()
                .get("conditions")
                .forEach(each -> states.put(
                        each.get("id").stringValue(), each.get("state").stringValue()));
        return states;
    }

    /** The names of the animals on the list of what to do now, in its order. */
    List<String> actNow() {
        return each(ok(keeper.get("/api/v1/worklist/act-now")).json().get("items"), "/animal/label");
    }

    /** When the work list says that the animal is looked at next. */
    String worklistLook(String name) {
        return StreamSupport.stream(
                        ok(keeper.get("/api/v1/worklist/act-now"))
                                .json()
                                .get("items")
                                .spliterator(),
                        false)
                .filter(item -> item.at("/animal/label").stringValue().equals(name))
                .flatMap(item -> Stream.concat(
                        StreamSupport.stream(item.get("due").spliterator(), false), Stream.of(item.path("next"))))
                .filter(task -> task.path("kind").asString().equals("re-look"))
                .map(task -> task.get("due").stringValue())
                .findFirst()
                .orElseThrow();
    }

    /** Why the first on that list is there, the weightiest first. */
    List<String> whyFirst() {
        return each(ok(keeper.get("/api/v1/worklist/act-now")).json().at("/items/0/because"), "/words");
    }

    /** What a condition of release says is missing or to be found out. */
    String open(String animal, String condition) {
        return StreamSupport.stream(review(animal).json().get("conditions").spliterator(), false)
                .filter(each -> each.get("id").stringValue().equals(condition))
                .map(each -> each.has("missing") ? each.get("missing") : each.get("findOut"))
                .map(JsonNode::stringValue)
                .findFirst()
                .orElseThrow();
    }

    /** What the room waits for, by cause: the occurrence. */
    String waiting(String room, String cause) {
        Answer clock = clock(room);
        return StreamSupport.stream(clock.json().get("openQuestions").spliterator(), false)
                .filter(each -> each.get("cause").stringValue().equals(cause))
                .map(each -> each.get("event").stringValue())
                .findFirst()
                .or(() -> StreamSupport.stream(clock.json().get("waitingFor").spliterator(), false)
                        .filter(each -> each.get("cause").stringValue().equals(cause))
                        .map(each -> each.get("event").stringValue())
                        .findFirst())
                .orElseThrow(() -> new AssertionError(clock.body()));
    }

    /** The date, the same date at the animal, and each of these in the sentence that says why. */
    void runsUntil(int day, String animal, String room, String... why) {
        Answer shown = clock(room);
        assertThat(shown.text("/standing")).as(shown.body()).isEqualTo("running");
        assertThat(shown.text("/earliestRelease")).as(shown.text("/inWords")).isEqualTo(iso(day));
        assertThat(shown.text("/inWords"))
                .startsWith("Earliest release on " + words(day) + ", because ")
                .contains(why)
                .endsWith("A person decides.");
        Answer quarantine = quarantine(animal);
        assertThat(quarantine.text("/clock/earliestRelease")).isEqualTo(iso(day));
        assertThat(quarantine.text("/clock/inWords")).isEqualTo(shown.text("/inWords"));
    }

    void waitsNotBefore(int day, String animal, String room, String... why) {
        Answer shown = clock(room);
        assertThat(shown.text("/standing")).as(shown.body()).isEqualTo("held");
        assertThat(shown.json().has("earliestRelease")).isFalse();
        assertThat(shown.text("/notBefore")).as(shown.text("/inWords")).isEqualTo(iso(day));
        assertThat(shown.text("/inWords"))
                .startsWith("No date yet, and not before " + words(day) + ", because ")
                .contains(why);
        Answer quarantine = quarantine(animal);
        assertThat(quarantine.text("/clock/notBefore")).isEqualTo(iso(day));
        assertThat(quarantine.json().get("ask")).as(quarantine.body()).isNotEmpty();
    }

    // ---- the calendar

    String subscribe(String animal) {
        return created(keeper.post("/api/v1/calendars", "{\"label\":\"Phone\",\"animalId\":\"" + animal + "\"}"))
                .text("/address");
    }

    /** The entries of a feed by their UID, as an independent reader reads them. */
    Map<String, VEvent> feed(String address) {
        Answer feed = ok(program.get(address));
        return Biweekly.parse(feed.body()).first().getEvents().stream()
                .collect(Collectors.toMap(event -> event.getUid().getValue(), Function.identity()));
    }

    // ----

    String of(String animal) {
        return "/api/v1/animals/" + animal;
    }

    static Answer created(Answer answer) {
        assertThat(answer.status()).as(answer.body()).isEqualTo(201);
        return answer;
    }

    static Answer ok(Answer answer) {
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return answer;
    }

    static List<String> each(JsonNode list, String pointer) {
        return StreamSupport.stream(list.spliterator(), false)
                .map(item -> item.at(pointer).asString())
                .toList();
    }
}
