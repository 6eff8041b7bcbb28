package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
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
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class ClockIT {

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    Rescue rescue;
    String shed;
    String ada;

    @BeforeEach
    void oneAnimalForFortyDays() {
        rescue = new Rescue(organisations, clock);
        shed = rescue.room("Shed");
        ada = rescue.animal("Ada");
        rescue.place(ada, shed, -40);
    }

    @Test
    void mitesHoldTheDaysUntilTreatmentHasEndedAndSixWeeksMore() {
        String mites = rescue.occur(shed, "mites", -20);
        Answer held = rescue.clock(shed);
        assertThat(held.text("/standing")).isEqualTo("held");
        assertThat(held.text("/waitingFor/0/event")).isEqualTo(mites);
        assertThat(held.json().has("earliestRelease")).isFalse();
        assertThat(held.text("/notBefore")).isEqualTo(rescue.day(90).toString());
        assertThat(held.text("/inWords")).contains("the end of treatment");
        Answer ended = rescue.event(
                rescue.keeper,
                shed,
                "{\"kind\":\"treatment-ended\",\"about\":\"%s\",\"on\":\"%s\"}",
                mites,
                rescue.day(-5));
        assertThat(ended.status()).as(ended.body()).isEqualTo(201);
        assertThat(ended.text("/clock/standing")).isEqualTo("running");
        assertThat(ended.text("/clock/start")).isEqualTo(rescue.day(-5).toString());
        assertThat(ended.text("/clock/earliestRelease"))
                .isEqualTo(rescue.day(85).toString());
        assertThat(rescue.clock(shed, -10).text("/standing")).as("as of then").isEqualTo("held");
        assertThat(rescue.clock(shed, -30).text("/earliestRelease"))
                .as("before that")
                .isEqualTo(rescue.day(20).toString());
    }

    @Test
    void aSignPausesUntilAVetHasSpokenAndOnlyAVetSpeaks() {
        String sign = rescue.occur(shed, "other-sign", -10);
        assertThat(rescue.clock(shed).text("/openQuestions/0/event")).isEqualTo(sign);
        String word = "{\"kind\":\"vet-spoke\",\"about\":\"%s\",\"ruling\":\"goes-on\",\"on\":\"%s\"}";
        assertThat(rescue.event(rescue.keeper, shed, word, sign, rescue.day(-4)).isProblem("forbidden"))
                .isTrue();
        Answer spoken = Rescue.created(rescue.event(rescue.vet, shed, word, sign, rescue.day(-4)));
        assertThat(spoken.text("/event/recordedBy"))
                .isEqualTo(rescue.vet.personId().toString());
        Answer clock = rescue.clock(shed);
        assertThat(clock.json().get("openQuestions")).isEmpty();
        assertThat(clock.text("/earliestRelease"))
                .as("60 days and 6 uncounted")
                .isEqualTo(rescue.day(26).toString());
        assertThat(Rescue.each(clock.json().get("history"), "/did")).containsExactly("started", "paused", "went-on");
        assertThat(clock.text("/inWords")).contains("did not count");
    }

    @Test
    void whatAVetHasConfirmedIsRecordedByAVet() {
        String body = "{\"kind\":\"occurred\",\"cause\":\"air-sign-confirmed\"}";
        assertThat(rescue.event(rescue.keeper, shed, body).isProblem("forbidden"))
                .isTrue();
        assertThat(Rescue.created(rescue.event(rescue.vet, shed, body)).text("/clock/start"))
                .isEqualTo(rescue.day(0).toString());
    }

    @Test
    void theHouseLengthensAndOnlyAVetDecidesOnFewerDays() {
        Rescue.created(rescue.event(
                rescue.keeper, shed, "{\"kind\":\"lengthened\",\"days\":100,\"reason\":\"building work\"}"));
        assertThat(rescue.clock(shed).text("/earliestRelease"))
                .isEqualTo(rescue.day(60).toString());
        String decision = "{\"kind\":\"vet-decided\",\"days\":45,\"reason\":\"three negative rounds\"}";
        assertThat(rescue.event(rescue.keeper, shed, decision).isProblem("forbidden"))
                .isTrue();
        Answer decided = Rescue.created(rescue.event(rescue.vet, shed, decision));
        assertThat(decided.text("/clock/earliestRelease"))
                .isEqualTo(rescue.day(5).toString());
        assertThat(decided.text("/clock/inWords")).contains("three negative rounds");
    }

    @Test
    void whatWasAMistakeIsWithdrawnAndStaysOnRecord() {
        String slip = rescue.occur(shed, "breach-with-contact", -3);
        assertThat(rescue.clock(shed).text("/start")).isEqualTo(rescue.day(-3).toString());
        Rescue.created(rescue.event(
                rescue.keeper, shed, "{\"kind\":\"withdrawn\",\"about\":\"%s\",\"reason\":\"another room\"}", slip));
        Answer clock = rescue.clock(shed);
        assertThat(clock.text("/start")).isEqualTo(rescue.day(-40).toString());
        assertThat(clock.text("/withdrawn/0/event/id")).isEqualTo(slip);
        assertThat(clock.text("/withdrawn/0/because")).isEqualTo("another room");
        assertThat(clock.text("/withdrawn/0/withdrawnBy"))
                .isEqualTo(rescue.keeper.personId().toString());
        assertThat(rescue.event(
                                rescue.keeper,
                                shed,
                                "{\"kind\":\"withdrawn\",\"about\":\"%s\",\"reason\":\"again\"}",
                                slip)
                        .isProblem("conflict"))
                .isTrue();
        Answer events = rescue.keeper.get("/api/v1/rooms/" + shed + "/events");
        assertThat(Rescue.each(events.json().get("items"), "/kind")).containsExactly("placed", "occurred", "withdrawn");
    }

    @Test
    void aVetsWordAboutWhatWasWithdrawnCountsForNothing() {
        String slip = rescue.occur(shed, "other-sign", -10);
        Rescue.created(rescue.event(
                rescue.vet, shed, "{\"kind\":\"vet-spoke\",\"about\":\"%s\",\"ruling\":\"restarts\"}", slip));
        Rescue.created(rescue.event(
                rescue.keeper, shed, "{\"kind\":\"withdrawn\",\"about\":\"%s\",\"reason\":\"a shed\"}", slip));
        Answer clock = rescue.clock(shed);
        assertThat(clock.text("/start")).isEqualTo(rescue.day(-40).toString());
        assertThat(clock.json().get("withdrawn")).hasSize(2);
    }

    @Test
    void keepersDoNotWithdrawWhatAVetSaid() {
        String id = Rescue.created(
                        rescue.event(rescue.vet, shed, "{\"kind\":\"vet-decided\",\"days\":50,\"reason\":\"r\"}"))
                .id();
        String body = "{\"kind\":\"withdrawn\",\"about\":\"%s\",\"reason\":\"r\"}";
        assertThat(rescue.event(rescue.keeper, shed, body, id).isProblem("forbidden"))
                .isTrue();
        assertThat(rescue.event(rescue.vet, shed, body, id).status()).isEqualTo(201);
    }

    @Test
    void refusesEventsThatMakeNoSenseWithEveryFault() {
        assertThat(rescue.event(rescue.keeper, shed, "{\"kind\":\"placed\"}").faults())
                .containsExactly("#/kind");
        assertThat(rescue.event(rescue.keeper, shed, "{\"kind\":\"occurred\",\"days\":4,\"about\":\"%s\"}", shed)
                        .faults())
                .containsExactlyInAnyOrder("#/cause", "#/days", "#/about");
        assertThat(rescue.event(rescue.keeper, shed, "{\"kind\":\"occurred\",\"cause\":\"new-animal\"}")
                        .faults())
                .containsExactly("#/cause");
        assertThat(rescue.event(
                                rescue.keeper,
                                shed,
                                "{\"kind\":\"occurred\",\"cause\":\"mites\",\"on\":\"%s\"}",
                                rescue.day(1))
                        .faults())
                .containsExactly("#/on");
        assertThat(rescue.event(rescue.vet, shed, "{\"kind\":\"vet-spoke\"}").faults())
                .containsExactlyInAnyOrder("#/about", "#/ruling");
        assertThat(rescue.event(rescue.vet, shed, "{\"kind\":\"vet-decided\",\"days\":99999}")
                        .faults())
                .containsExactlyInAnyOrder("#/days", "#/reason");
        String mites = rescue.occur(shed, "mites", -5);
        String end = "{\"kind\":\"treatment-ended\",\"about\":\"%s\",\"on\":\"%s\"}";
        assertThat(rescue.event(rescue.keeper, shed, end, mites, rescue.day(-6)).faults())
                .as("before it occurred")
                .containsExactly("#/about");
        assertThat(rescue.event(rescue.keeper, shed, end, ada, rescue.day(0)).faults())
                .as("no event at all")
                .containsExactly("#/about");
        String garage = rescue.room("Garage");
        assertThat(rescue.event(rescue.keeper, garage, end, mites, rescue.day(0))
                        .faults())
                .as("of another room")
                .containsExactly("#/about");
    }

    @Test
    void anAnimalIsNamedOnlyWhereItStood() {
        String body = "{\"kind\":\"occurred\",\"cause\":\"%s\",\"animalId\":\"%s\",\"on\":\"%s\"}";
        assertThat(rescue.event(rescue.keeper, shed, body, "mites", ada, rescue.day(-41))
                        .faults())
                .containsExactly("#/animalId");
        assertThat(rescue.event(rescue.keeper, shed, body, "unexplained-death", ada, rescue.day(-1))
                        .faults())
                .as("a death is a departure")
                .containsExactly("#/cause");
        assertThat(rescue.event(rescue.keeper, shed, body, "ticks", ada, rescue.day(-1))
                        .status())
                .isEqualTo(201);
    }

    @Test
    void whatWasRecordedByAPlacementIsNotWithdrawnAsAnEvent() {
        String placed = rescue.clock(shed).text("/history/0/event/id");
        assertThat(rescue.event(
                                rescue.keeper,
                                shed,
                                "{\"kind\":\"withdrawn\",\"about\":\"%s\",\"reason\":\"r\"}",
                                placed)
                        .faults())
                .containsExactly("#/about");
    }

    /** When the last animal has left, the clock is done: what was open before is open no more. */
    @Test
    void readsNoFurtherBackThanTheRoomWasLastEmpty() {
        String mites = rescue.occur(shed, "mites", -30);
        rescue.keeper.post(
                "/api/v1/animals/" + ada + "/departures",
                "{\"because\":\"moved-on\",\"on\":\"" + rescue.day(-20) + "\"}");
        rescue.place(rescue.animal("Bo"), shed, -10);
        Answer clock = rescue.clock(shed);
        assertThat(clock.text("/standing")).isEqualTo("running");
        assertThat(clock.json().get("history")).hasSize(1);
        assertThat(rescue.clock(shed, -25).text("/standing")).isEqualTo("held");
        assertThat(rescue.clock(shed, -15).text("/standing")).isEqualTo("empty");
        assertThat(rescue.clock(shed, -15).json().get("history"))
                .as("how it came to be empty")
                .hasSize(3);
        assertThat(rescue.event(rescue.keeper, shed, "{\"kind\":\"treatment-ended\",\"about\":\"%s\"}", mites)
                        .faults())
                .containsExactly("#/about");
    }

    @Test
    void comingAndGoingOnOneDayLeavesTheRoomAsItIsAtTheEnd() {
        String bo = rescue.animal("Bo");
        rescue.place(bo, shed, -5);
        rescue.keeper.post(
                "/api/v1/animals/" + ada + "/departures",
                "{\"because\":\"moved-on\",\"on\":\"" + rescue.day(-5) + "\"}");
        Answer clock = rescue.clock(shed);
        assertThat(Rescue.each(clock.json().get("animals"), "/name")).containsExactly("Bo");
        assertThat(clock.json().get("history"))
                .as("they met, so it is one clock")
                .hasSize(3);
        assertThat(clock.text("/start")).isEqualTo(rescue.day(-5).toString());
    }

    @Test
    void ofTwoEventsRecordedAtOnceBothCount() throws Exception {
        CyclicBarrier together = new CyclicBarrier(2);
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            for (Future<Answer> each :
                    two.invokeAll(List.of(occurring("ticks", together), occurring("mites", together)))) {
                assertThat(each.get().status()).isEqualTo(201);
            }
        } finally {
            two.shutdownNow();
        }
        assertThat(rescue.clock(shed).json().get("waitingFor")).hasSize(2);
    }

    private Callable<Answer> occurring(String cause, CyclicBarrier together) {
        return () -> {
            together.await();
            return rescue.event(rescue.keeper, shed, "{\"kind\":\"occurred\",\"cause\":\"%s\"}", cause);
        };
    }

    @Test
    void aDateThatHasPassedEndsNothing() {
        String garage = rescue.room("Garage");
        rescue.place(rescue.animal("Bo"), garage, -100);
        Answer clock = rescue.clock(garage);
        assertThat(clock.text("/earliestRelease")).isEqualTo(rescue.day(-40).toString());
        assertThat(clock.json().get("animals")).hasSize(1);
    }

    /** The injected clock is moved over midnight: the day is the organisation's. */
    @Test
    void aHeldDateMovesOnWithEveryDay() {
        rescue.occur(shed, "mites", -20);
        assertThat(rescue.clock(shed).text("/notBefore"))
                .isEqualTo(rescue.day(90).toString());
        assertThat(rescue.clock(shed, 7).text("/notBefore"))
                .isEqualTo(rescue.day(97).toString());
        LocalDateTime now = LocalDateTime.ofInstant(clock.instant(), ZoneOffset.UTC);
        Duration toTomorrow =
                Duration.between(now, now.toLocalDate().plusDays(1).atStartOfDay());
        clock.later(
                toTomorrow,
                () -> assertThat(rescue.clock(shed).text("/notBefore"))
                        .isEqualTo(rescue.day(91).toString()));
    }
}
