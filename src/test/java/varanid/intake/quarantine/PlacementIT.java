package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class PlacementIT {

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    Rescue rescue;
    String shed;

    @BeforeEach
    void arrive() {
        rescue = new Rescue(organisations, clock);
        shed = rescue.room("Shed");
    }

    /** 60 days for one known source: own proposal; 30 days at least: AZA 2007 (second-hand). */
    @Test
    void aClockStartsWithTheFirstAnimal() {
        String ada = rescue.animal("Ada");
        Answer placed = rescue.place(ada, shed, -10);
        assertThat(placed.json().at("/arrival/minimumStay/days").intValue())
                .isEqualTo(60)
                .isGreaterThanOrEqualTo(30);
        assertThat(placed.json().at("/arrival/delays")).isEmpty();
        Answer clock = rescue.clock(shed);
        assertThat(clock.text("/standing")).isEqualTo("running");
        assertThat(clock.text("/start")).isEqualTo(rescue.day(-10).toString());
        assertThat(clock.text("/earliestRelease")).isEqualTo(rescue.day(50).toString());
        assertThat(clock.text("/animals/0/name")).isEqualTo("Ada");
        assertThat(clock.text("/inWords")).startsWith("Earliest release on ").contains("because", "A person decides");
        assertThat(clock.text("/history/0/did")).isEqualTo("started");
    }

    /** 90 days: Pasmans et al. 2008 (from the abstract of a review). */
    @Test
    void aWildAnimalNeedsNinetyDaysAndAVet() {
        Answer placed = rescue.place(rescue.animal("Ada", Rescue.WILD), shed, 0);
        assertThat(placed.json().at("/arrival/minimumStay/days").intValue()).isEqualTo(90);
        assertThat(rescue.clock(shed).json().at("/vetRelease").booleanValue()).isTrue();
    }

    @Test
    void saysWhomANewcomerDelaysBeforeItIsPlacedAndAfter() {
        String ada = rescue.animal("Ada");
        rescue.place(ada, shed, -20);
        String bo = rescue.animal("Bo", Rescue.CAPTIVE);
        Answer preview =
                rescue.keeper.post("/api/v1/rooms/" + shed + "/placement-preview", "{\"animalId\":\"" + bo + "\"}");
        assertThat(preview.status()).as(preview.body()).isEqualTo(200);
        assertThat(preview.text("/delays/0/animal/name")).isEqualTo("Ada");
        assertThat(preview.text("/delays/0/from")).isEqualTo(rescue.day(40).toString());
        assertThat(preview.text("/delays/0/until")).isEqualTo(rescue.day(90).toString());
        assertThat(preview.json().at("/delays/0/days").intValue()).isEqualTo(50);
        assertThat(preview.text("/because")).contains("a new animal in the same air or tools");
        assertThat(rescue.clock(shed).json().get("animals")).hasSize(1);

        Answer placed = rescue.place(bo, shed, 0);
        assertThat(placed.json().at("/arrival/delays")).isEqualTo(preview.json().at("/delays"));
        assertThat(rescue.clock(shed).text("/earliestRelease"))
                .isEqualTo(rescue.day(90).toString());
        assertThat(rescue.clock(shed, -1).text("/earliestRelease"))
                .isEqualTo(rescue.day(40).toString());
    }

    @Test
    void theDayOfAPreviewMayLieAhead() {
        rescue.place(rescue.animal("Ada"), shed, 0);
        String bo = rescue.animal("Bo");
        Answer preview = rescue.keeper.post(
                "/api/v1/rooms/" + shed + "/placement-preview",
                "{\"animalId\":\"%s\",\"on\":\"%s\"}".formatted(bo, rescue.day(7)));
        assertThat(preview.json().at("/delays/0/days").intValue()).isEqualTo(7);
        assertThat(rescue.tryToPlace(bo, shed, 1).faults()).containsExactly("#/on");
    }

    @Test
    void leavesTheOldRoomForTheNewOne() {
        String ada = rescue.animal("Ada");
        String garage = rescue.room("Garage");
        rescue.place(ada, shed, -20);
        Answer moved = rescue.place(ada, garage, -5);
        assertThat(moved.text("/fromRoomId")).isEqualTo(shed);
        assertThat(rescue.clock(shed).text("/standing")).isEqualTo("empty");
        assertThat(rescue.clock(shed, -6).json().get("animals")).hasSize(1);
        assertThat(rescue.clock(garage).text("/start")).isEqualTo(rescue.day(-5).toString());
        Answer list = rescue.keeper.get("/api/v1/animals/" + ada + "/placements");
        assertThat(Rescue.each(list.json().get("items"), "/roomName")).containsExactly("Shed", "Garage");
    }

    @Test
    void refusesWhatMakesNoSense() {
        String ada = rescue.animal("Ada");
        rescue.place(ada, shed, -5);
        assertThat(rescue.tryToPlace(ada, shed, 0).faults()).containsExactly("#/roomId");
        assertThat(rescue.tryToPlace(ada, rescue.room("Garage"), -6).faults()).containsExactly("#/on");
        String nowhere = organisations
                .create()
                .keeper()
                .post("/api/v1/rooms", "{\"name\":\"x\"}")
                .id();
        assertThat(rescue.tryToPlace(ada, nowhere, 0).faults()).containsExactly("#/roomId");
        assertThat(rescue.tryToPlace(ada, shed, -9).faults()).containsExactlyInAnyOrder("#/roomId", "#/on");
        String path = "/api/v1/animals/" + ada + "/placements";
        assertThat(rescue.keeper
                        .post(path, "{\"on\":\"never\",\"returned\":1,\"to\":2}")
                        .faults())
                .containsExactlyInAnyOrder("#/roomId", "#/on", "#/returned", "#/to");
        assertThat(rescue.vet.post(path, "{}").isProblem("forbidden")).isTrue();
        assertThat(rescue.keeper
                        .post("/api/v1/rooms/" + shed + "/placement-preview", "{\"animalId\":\"" + nowhere + "\"}")
                        .faults())
                .containsExactly("#/animalId");
    }

    @Test
    void noAnimalBecomesAResidentByBeingMoved() {
        String residents = rescue.residentsRoom("Hall");
        String ada = rescue.animal("Ada");
        assertThat(rescue.tryToPlace(ada, residents, 0).faults()).containsExactly("#/residentAlready");
        rescue.place(ada, shed, 0);
        assertThat(rescue.tryToPlace(ada, residents, 0).faults()).containsExactly("#/roomId");
        String old = rescue.animal("Old", Rescue.WILD);
        Rescue.created(rescue.keeper.post(
                "/api/v1/animals/" + old + "/placements",
                "{\"roomId\":\"%s\",\"residentAlready\":true,\"reason\":\"here for years\"}".formatted(residents)));
        assertThat(rescue.clock(residents).text("/inWords")).contains("residents");
    }

    @Test
    void aDeathNobodyCanExplainBeginsTheDaysOfTheOthersAgain() {
        String ada = rescue.animal("Ada");
        String bo = rescue.animal("Bo");
        rescue.place(ada, shed, -30);
        rescue.place(bo, shed, -30);
        Answer died = Rescue.created(rescue.keeper.post(
                "/api/v1/animals/" + bo + "/departures",
                "{\"because\":\"died\",\"explained\":false,\"on\":\"" + rescue.day(-2) + "\"}"));
        assertThat(died.text("/because")).isEqualTo("died");
        Answer clock = rescue.clock(shed);
        assertThat(clock.text("/start")).isEqualTo(rescue.day(-2).toString());
        assertThat(clock.text("/earliestRelease")).isEqualTo(rescue.day(88).toString());
        assertThat(Rescue.each(clock.json().get("animals"), "/name")).containsExactly("Ada");
        assertThat(rescue.tryToPlace(bo, rescue.room("Garage"), 0).faults()).contains("#");
    }

    @Test
    void anExplainedDeathAsksForAVetsWord() {
        String ada = rescue.animal("Ada");
        rescue.place(ada, shed, -30);
        String bo = rescue.animal("Bo");
        rescue.place(bo, shed, -30);
        rescue.keeper.post("/api/v1/animals/" + bo + "/departures", "{\"because\":\"died\",\"explained\":true}");
        Answer clock = rescue.clock(shed);
        assertThat(clock.text("/start")).isEqualTo(rescue.day(-30).toString());
        assertThat(clock.text("/openQuestions/0/cause")).isEqualTo("explained-death");
        assertThat(clock.text("/openQuestions/0/animal/name")).isEqualTo("Bo");
    }

    @Test
    void aDeathConcernsAllThatCameTogether() {
        String consignment = rescue.keeper
                .post("/api/v1/consignments", "{\"name\":\"Three from a fair\"}")
                .id();
        String body = "{\"name\":\"%s\",\"consignmentId\":\"" + consignment + "\"}";
        String ada = rescue.animal("Ada", body);
        String bo = rescue.animal("Bo", body);
        rescue.place(ada, shed, -3);
        Answer died = Rescue.created(rescue.keeper.post(
                "/api/v1/animals/" + bo + "/departures", "{\"because\":\"died\",\"explained\":true}"));
        assertThat(died.json().at("/cohort/deaths").intValue()).isEqualTo(1);
        assertThat(died.json().at("/cohort").has("urgency")).isFalse();
        assertThat(died.text("/cohort/others/0/name")).isEqualTo("Ada");
        assertThat(died.text("/cohort/others/0/roomName")).isEqualTo("Shed");
        String cy = rescue.animal("Cy", body);
        Answer second = Rescue.created(rescue.keeper.post(
                "/api/v1/animals/" + cy + "/departures", "{\"because\":\"died\",\"explained\":true}"));
        assertThat(second.text("/cohort/urgency")).isEqualTo("asap");
        assertThat(second.text("/cohort/advice/0")).contains("24 hours");
    }

    @Test
    void anAnimalThatLeftIsPlacedAgainOnlyWhereThatIsSaid() {
        String ada = rescue.animal("Ada");
        rescue.place(ada, shed, -30);
        String path = "/api/v1/animals/" + ada;
        assertThat(rescue.keeper
                        .post(path + "/departures", "{\"because\":\"released\"}")
                        .faults())
                .containsExactly("#/because");
        assertThat(rescue.keeper
                        .post(path + "/departures", "{\"because\":\"moved-on\",\"explained\":true}")
                        .faults())
                .containsExactly("#/explained");
        Rescue.created(rescue.keeper.post(path + "/departures", "{\"because\":\"moved-on\"}"));
        assertThat(rescue.keeper
                        .post(path + "/departures", "{\"because\":\"moved-on\"}")
                        .faults())
                .containsExactly("#");
        assertThat(rescue.tryToPlace(ada, shed, 0).faults()).containsExactly("#/returned");
        assertThat(rescue.keeper
                        .post(path + "/placements", "{\"roomId\":\"" + shed + "\",\"returned\":true}")
                        .faults())
                .containsExactly("#/reason");
        Rescue.created(rescue.keeper.post(
                path + "/placements", "{\"roomId\":\"" + shed + "\",\"returned\":true,\"reason\":\"brought back\"}"));
    }

    @Test
    void aMoveThatWasAMistakeCountsForNothingAndStaysOnRecord() {
        String ada = rescue.animal("Ada");
        String bo = rescue.animal("Bo");
        String garage = rescue.room("Garage");
        rescue.place(ada, shed, -20);
        rescue.place(bo, garage, -15);
        Answer wrong = rescue.place(bo, shed, -1);
        assertThat(rescue.clock(shed).text("/start")).isEqualTo(rescue.day(-1).toString());
        String path = "/api/v1/animals/" + bo;
        String body = "{\"about\":\"%s\",\"reason\":\"the wrong animal\"}".formatted(wrong.id());
        Rescue.created(rescue.keeper.post(path + "/placement-withdrawals", body));
        Answer clock = rescue.clock(shed);
        assertThat(clock.text("/start")).isEqualTo(rescue.day(-20).toString());
        assertThat(clock.text("/withdrawn/0/because")).isEqualTo("the wrong animal");
        assertThat(rescue.clock(garage).text("/start"))
                .isEqualTo(rescue.day(-15).toString());
        assertThat(rescue.clock(garage).text("/animals/0/name")).isEqualTo("Bo");
        assertThat(rescue.keeper.post(path + "/placement-withdrawals", body).faults())
                .containsExactly("#/about");
        Answer list = rescue.keeper.get(path + "/placements");
        assertThat(Rescue.each(list.json().get("items"), "/kind")).containsExactly("placed", "placed", "withdrawn");
        assertThat(list.text("/items/1/withdrawn/because")).isEqualTo("the wrong animal");
    }

    @Test
    void ofTwoPlacedAtOnceEachKnowsOfTheOther() throws Exception {
        String ada = rescue.animal("Ada");
        String bo = rescue.animal("Bo");
        CyclicBarrier together = new CyclicBarrier(2);
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<Future<Answer>> placed = two.invokeAll(List.of(placing(ada, together), placing(bo, together)));
            List<Integer> delays = List.of(
                    placed.get(0).get().json().at("/arrival/delays").size()
                            + placed.get(0).get().json().at("/arrival/after").size(),
                    placed.get(1).get().json().at("/arrival/after").size());
            assertThat(delays).doesNotContain(0);
        } finally {
            two.shutdownNow();
        }
        Answer clock = rescue.clock(shed);
        assertThat(clock.json().get("animals")).hasSize(2);
        assertThat(Rescue.each(clock.json().get("history"), "/did")).containsExactly("started", "restarted");
    }

    private Callable<Answer> placing(String animal, CyclicBarrier together) {
        return () -> {
            together.await();
            return rescue.place(animal, shed, 0);
        };
    }

    @Test
    void isRecordedOncePerKey() {
        String ada = rescue.animal("Ada");
        Client keeper = rescue.keeper;
        String body = "{\"roomId\":\"" + shed + "\"}";
        Answer first = keeper.post("/api/v1/animals/" + ada + "/placements", body, "Idempotency-Key", "a");
        Answer again = keeper.post("/api/v1/animals/" + ada + "/placements", body, "Idempotency-Key", "a");
        assertThat(again.body()).isEqualTo(first.body());
        assertThat(rescue.clock(shed).json().get("history")).hasSize(1);
    }
}
