package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.StreamSupport;
import tools.jackson.databind.JsonNode;
import varanid.intake.platform.web.Role;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;

/** An organisation in UTC that keeps newcomers apart, for tests over HTTP. Days are counted from today: 0 is today. */
final class Rescue {

    static final String CAPTIVE_SINGLE_SOURCE = """
            {"name": "%s", "declaredOrigin": "C", "lifeStage": "juvenile",
             "evidence": {"parents-known": "yes", "breeder-reachable": "yes", "hatch-date-known": "yes"}}""";
    static final String CAPTIVE = """
            {"name": "%s", "declaredOrigin": "C", "lifeStage": "juvenile",
             "evidence": {"photographs-in-egg": "yes", "breeder-reachable": "yes"}}""";
    static final String WILD = """
            {"name": "%s", "declaredOrigin": "W", "lifeStage": "juvenile"}""";

    final Client keeper;
    final Client vet;
    final LocalDate today;

    Rescue(Organisations organisations, MovableClock clock) {
        Organisations.Organisation organisation = organisations.create();
        keeper = organisation.person("Keeper", Duration.ofDays(200), Role.KEEPER);
        vet = organisation.clinician();
        today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    }

    LocalDate day(int day) {
        return today.plusDays(day);
    }

    String room(String name) {
        return created(keeper.post("/api/v1/rooms", "{\"name\":\"" + name + "\"}"))
                .id();
    }

    String residentsRoom(String name) {
        return created(keeper.post("/api/v1/rooms", "{\"name\":\"" + name + "\",\"kind\":\"residents\"}"))
                .id();
    }

    /** Of a captive origin with one known source, so that 60 days are the least. */
    String animal(String name) {
        return animal(name, CAPTIVE_SINGLE_SOURCE);
    }

    String animal(String name, String body) {
        return created(keeper.post("/api/v1/animals", body.formatted(name))).id();
    }

    Answer place(String animal, String room, int day) {
        return created(tryToPlace(animal, room, day));
    }

    Answer tryToPlace(String animal, String room, int day) {
        return keeper.post(
                "/api/v1/animals/" + animal + "/placements",
                "{\"roomId\":\"" + room + "\",\"on\":\"" + day(day) + "\"}");
    }

    /** Records an occurrence and gives its id. */
    String occur(String room, String cause, int day) {
        return created(event(keeper, room, "{\"kind\":\"occurred\",\"cause\":\"%s\",\"on\":\"%s\"}", cause, day(day)))
                .id();
    }

    Answer event(Client who, String room, String body, Object... values) {
        return who.post("/api/v1/rooms/" + room + "/events", body.formatted(values));
    }

    Answer clock(String room) {
        return ok(keeper.get("/api/v1/rooms/" + room + "/clock"));
    }

    Answer clock(String room, int day) {
        return ok(keeper.get("/api/v1/rooms/" + room + "/clock?asOf=" + day(day)));
    }

    /** A look with these answers, at noon of the day; for today, now. */
    Answer look(String animal, int day, String answers) {
        return look(animal, day, answers, "");
    }

    Answer look(String animal, int day, String answers, String more) {
        String when = day == 0 ? "" : ",\"occurredAt\":\"" + day(day) + "T12:00:00Z\"";
        return created(keeper.post(
                "/api/v1/animals/" + animal + "/assessments",
                "{\"checklist\":\"varanid-intake\",\"answers\":" + answers + when + more + "}"));
    }

    static Answer created(Answer answer) {
        assertThat(answer.status()).as(answer.body()).isEqualTo(201);
        return answer;
    }

    static Answer ok(Answer answer) {
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return answer;
    }

    /** A member of each object of a list. */
    static List<String> each(JsonNode list, String pointer) {
        return StreamSupport.stream(list.spliterator(), false)
                .map(item -> item.at(pointer).asString())
                .toList();
    }
}
