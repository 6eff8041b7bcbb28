package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.data.domain.Limit;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;
import varanid.intake.reminder.PlannedTask;
import varanid.intake.reminder.TaskSource;
import varanid.intake.service.Answer;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class QuarantineIT {

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    @Autowired
    FollowUps followUps;

    @Autowired
    List<TaskSource> sources;

    @Autowired
    JdbcClient jdbc;

    Rescue rescue;
    String shed;
    String ada;

    @BeforeEach
    void arrive() {
        rescue = new Rescue(organisations, clock);
        shed = rescue.room("Shed");
        ada = rescue.animal("Ada");
    }

    private Answer quarantine(String animal) {
        return Rescue.ok(rescue.keeper.get("/api/v1/animals/" + animal + "/quarantine"));
    }

    private Answer quarantine(String animal, int day) {
        return Rescue.ok(rescue.keeper.get("/api/v1/animals/" + animal + "/quarantine?asOf=" + rescue.day(day)));
    }

    private static List<JsonNode> tasks(Answer quarantine, String kind) {
        return StreamSupport.stream(quarantine.json().at("/plan/tasks").spliterator(), false)
                .filter(task -> task.get("kind").stringValue().equals(kind))
                .toList();
    }

    private static String state(JsonNode task) {
        return task.get("ordinal") + " " + task.get("state").stringValue();
    }

    private void weigh(int day) {
        Rescue.created(rescue.keeper.post(
                "/api/v1/animals/" + ada + "/weighings",
                "{\"value\":200,\"unit\":\"g\",\"occurredAt\":\"" + rescue.day(day) + "T08:00:00Z\"}"));
    }

    @Test
    void anAnimalInNoRoomIsToldWhatToDo() {
        Answer quarantine = quarantine(ada);
        assertThat(quarantine.text("/where")).isEqualTo("not-placed");
        assertThat(quarantine.text("/note")).contains("Record the room");
        assertThat(quarantine.json().has("plan")).isFalse();
        assertThat(quarantine.text("/workPlace/place")).as("nobody looked yet").isEqualTo("suspect");
    }

    @Test
    void aPlanSaysWhatToDoTomorrowMorning() {
        rescue.place(ada, shed, 0);
        rescue.look(ada, 0, "{}");
        Answer quarantine = quarantine(ada);
        assertThat(quarantine.text("/clock/earliestRelease"))
                .isEqualTo(rescue.day(60).toString());
        List<String> tomorrow = StreamSupport.stream(
                        quarantine.json().get("next").spliterator(), false)
                .filter(task ->
                        task.get("due").stringValue().equals(rescue.day(1).toString()))
                .map(task -> task.get("kind").stringValue())
                .toList();
        assertThat(tomorrow).containsExactlyInAnyOrder("weighing", "re-look", "mite-check");
        assertThat(Rescue.each(quarantine.json().at("/plan/tools"), "/source")).doesNotContain("");
        assertThat(quarantine.json().at("/plan/workOrder")).hasSize(4);
        assertThat(quarantine.json().at("/plan/cautions")).isNotEmpty();
        assertThat(quarantine.text("/warning")).contains("a person does");
        assertThat(Rescue.each(quarantine.json().get("neededForRelease"), "/id"))
                .contains("minimum-stay", "stool-negative");
        List<JsonNode> review = tasks(quarantine, "release-review");
        assertThat(review.get(0).get("due").stringValue())
                .isEqualTo(rescue.day(60).toString());
    }

    /** Half a US cup per US gallon is 0.16 %, 1590 ppm; one part in ten of 5.25 % is 0.53 %, 5250 ppm: published. */
    @Test
    void disinfectantsAreMixedAsPublished() {
        rescue.place(ada, shed, 0);
        JsonNode disinfectants = quarantine(ada).json().at("/plan/disinfectants");
        assertThat(disinfectants.at("/0/percent").decimalValue()).isEqualByComparingTo("0.16");
        assertThat(disinfectants.at("/0/partsPerMillion").decimalValue()).isEqualByComparingTo("1590");
        assertThat(disinfectants.at("/1/percent").decimalValue()).isEqualByComparingTo("0.53");
        assertThat(disinfectants.at("/1/partsPerMillion").decimalValue()).isEqualByComparingTo("5250");
    }

    @Test
    void recordsOfOtherKindsAreTheTasks() {
        rescue.place(ada, shed, -9);
        weigh(-8);
        rescue.look(ada, -8, "{\"mites\":\"absent\",\"ticks\":\"none\"}");
        rescue.keeper.post(
                "/api/v1/animals/" + ada + "/diary",
                "{\"cleaning\":\"full-clean\",\"occurredAt\":\"" + rescue.day(-2) + "T09:00:00Z\"}");
        rescue.keeper.post(
                "/api/v1/animals/" + ada + "/samples",
                "{\"kind\":\"stool\",\"takenAt\":\"" + rescue.day(-4) + "T09:00:00Z\"}");
        Answer quarantine = quarantine(ada);
        assertThat(state(tasks(quarantine, "weighing").get(0))).isEqualTo("1 done");
        assertThat(state(tasks(quarantine, "weighing").get(1)))
                .as("day 7, and a day of grace")
                .isEqualTo("2 overdue");
        assertThat(state(tasks(quarantine, "mite-check").get(0))).isEqualTo("1 done");
        assertThat(state(tasks(quarantine, "full-clean").get(0))).isEqualTo("1 done");
        assertThat(state(tasks(quarantine, "faecal-sample").get(0))).isEqualTo("1 done");
        assertThat(quarantine.text("/next/0/state")).isEqualTo("overdue");
        assertThat(state(tasks(quarantine(ada, -8), "full-clean").get(0)))
                .as("as of then")
                .isEqualTo("1 open");
    }

    @Test
    void whatWasDoneBeforeARestartStaysDone() {
        rescue.place(ada, shed, -20);
        weigh(-19);
        weigh(-13);
        rescue.place(rescue.animal("Bo"), shed, -10);
        List<JsonNode> weighings = tasks(quarantine(ada), "weighing");
        assertThat(weighings.stream().map(QuarantineIT::state)).startsWith("1 done", "2 done", "3 let-pass");
        assertThat(weighings.get(2).get("due").stringValue())
                .isEqualTo(rescue.day(-9).toString());
    }

    @Test
    void aStrictAnimalIsSuspectAndSeenToOften() {
        rescue.place(ada, shed, -2);
        rescue.look(ada, -1, "{\"nasal-discharge\":\"clear\"}");
        Answer quarantine = quarantine(ada);
        assertThat(quarantine.text("/isolation")).isEqualTo("strict");
        assertThat(quarantine.text("/contagionRoutes/0")).isEqualTo("air");
        assertThat(quarantine.text("/workPlace/place")).isIn("suspect", "sick");
        assertThat(quarantine.text("/clock/standing")).isEqualTo("held");
        assertThat(tasks(quarantine, "release-review")).as("no date").isEmpty();
        assertThat(Rescue.each(quarantine.json().at("/plan/tools"), "/text"))
                .anyMatch(text -> text.contains("Own room"));
        rescue.look(ada, 0, "{\"nasal-discharge\":\"absent\"}");
        assertThat(quarantine(ada).text("/isolation"))
                .as("a vet has still to speak")
                .isEqualTo("strict");
    }

    @Test
    void roommatesOfOneThatIsWaitedForAreSuspect() {
        String bo = rescue.animal("Bo");
        rescue.place(ada, shed, -2);
        rescue.place(bo, shed, -2);
        rescue.look(bo, -1, "{}");
        rescue.look(ada, -1, "{\"mites\":\"few\"}");
        assertThat(quarantine(bo).text("/workPlace/place")).isEqualTo("suspect");
    }

    /** 60 days, the third stool sample ten before their end: the end moves by waiting, the sample does not. */
    @Test
    void whileTheRoomWaitsTheDateMovesAndNoTaskDoes() {
        rescue.place(ada, shed, -45);
        rescue.occur(shed, "other-sign", -10);
        Map<String, String> today = datesOnDay(0, 60 - 45 + 10);
        assertThat(today.get("faecal-sample 3")).isEqualTo(rescue.day(5) + " to " + rescue.day(5));
        // What began to wait without a look at it is looked at the next morning.
        assertThat(today).containsValue(rescue.day(-9) + " to " + rescue.day(-9));
        for (int day : List.of(1, 2, 5, 20)) {
            assertThat(datesOnDay(day, 60 - 45 + 10 + day)).as("day " + day).containsAllEntriesOf(today);
        }
    }

    private Map<String, String> datesOnDay(int day, int notBefore) {
        Map<String, String> dates = new TreeMap<>();
        clock.later(Duration.ofDays(day), () -> {
            Answer quarantine = quarantine(ada);
            assertThat(quarantine.text("/clock/notBefore"))
                    .isEqualTo(rescue.day(notBefore).toString());
            quarantine
                    .json()
                    .at("/plan/tasks")
                    .forEach(task -> dates.put(
                            task.get("kind").stringValue() + " " + task.get("ordinal"),
                            task.get("due").stringValue() + " to "
                                    + task.get("latest").stringValue()));
        });
        return dates;
    }

    @Test
    void goesOnWhereTheDateHasPassedAndNobodyEndedIt() {
        rescue.place(ada, shed, -90);
        Answer quarantine = quarantine(ada);
        assertThat(quarantine.text("/where")).isEqualTo("in-quarantine");
        assertThat(quarantine.text("/clock/earliestRelease"))
                .isEqualTo(rescue.day(-30).toString());
        List<JsonNode> weighings = tasks(quarantine, "weighing");
        assertThat(weighings.get(weighings.size() - 1).get("due").stringValue()).isGreaterThan(rescue.today.toString());
    }

    @Test
    void aMoveToAnotherQuarantineRoomIsTheSameCase() {
        rescue.place(ada, shed, -20);
        weigh(-19);
        rescue.place(ada, rescue.room("Garage"), -10);
        List<JsonNode> weighings = tasks(quarantine(ada), "weighing");
        assertThat(state(weighings.get(0))).isEqualTo("1 done");
        assertThat(weighings.get(1).get("ordinal").intValue()).isEqualTo(2);
    }

    @Test
    void tellsCalendarsEachTaskOnceAndListsWhoIsFollowed() {
        rescue.place(ada, shed, -9);
        weigh(-8);
        UUID organisation = organisationOf(ada);
        List<PlannedTask> told = sources.stream()
                .flatMap(source -> source.tasks(organisation, ZoneOffset.UTC, Optional.empty(), rescue.today).stream())
                .toList();
        assertThat(told).extracting(task -> task.task().uid()).doesNotHaveDuplicates();
        assertThat(told).allSatisfy(task -> assertThat(task.animalId()).isEqualTo(UUID.fromString(ada)));
        assertThat(told.stream().filter(PlannedTask::done)).hasSize(1);
        assertThat(told).anySatisfy(task -> assertThat(task.task().summary()).isEqualTo("Weigh: Ada"));
        assertThat(followUps.listAnimals(organisation, new UUID(0, 0), Limit.of(10)))
                .containsExactly(UUID.fromString(ada));
        rescue.keeper.post("/api/v1/animals/" + ada + "/departures", "{\"because\":\"moved-on\"}");
        assertThat(followUps.listAnimals(organisation, new UUID(0, 0), Limit.of(10)))
                .isEmpty();
        assertThat(quarantine(ada).text("/where")).isEqualTo("gone");
    }

    private UUID organisationOf(String animal) {
        return jdbc.sql("SELECT organisation_id FROM animal WHERE id = ?")
                .param(UUID.fromString(animal))
                .query(UUID.class)
                .single();
    }
}
