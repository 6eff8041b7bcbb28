package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;
import static varanid.intake.quarantine.Room.POLICY;
import static varanid.intake.quarantine.Room.day;
import static varanid.intake.quarantine.Room.id;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import varanid.intake.quarantine.FollowedTask.State;
import varanid.intake.vet.VetAnswer;
import varanid.intake.vet.VetAnswer.SawAnimal;

class VetVisitsTest {

    private final List<VetAnswer> answers = new ArrayList<>();

    private UUID answer(int on, SawAnimal saw, boolean confirmed, OptionalInt nextVisit, Optional<UUID> supersedes) {
        Instant at = day(on).atTime(10, 0).toInstant(ZoneOffset.UTC);
        UUID id = id("answer " + answers.size());
        answers.add(new VetAnswer(
                id,
                id("Ada"),
                at,
                at,
                at,
                saw,
                Optional.empty(),
                Optional.empty(),
                List.of(),
                List.of(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                nextVisit.isPresent() ? Optional.of(day(nextVisit.getAsInt())) : Optional.empty(),
                Optional.of("as I see it"),
                new VetAnswer.Writer("A vet", "P", "L", Optional.empty()),
                confirmed,
                confirmed ? Optional.of(at) : Optional.empty(),
                Optional.empty(),
                supersedes,
                confirmed ? Optional.of(id("clinician")) : Optional.empty(),
                confirmed ? Optional.empty() : Optional.of(id("link"))));
        return id;
    }

    private UUID plans(int on, int visit) {
        return answer(on, SawAnimal.READ_ONLY, true, OptionalInt.of(visit), Optional.empty());
    }

    private void examines(int on) {
        answer(on, SawAnimal.EXAMINED, true, OptionalInt.empty(), Optional.empty());
    }

    private void unconfirmed(int on, SawAnimal saw, int visit) {
        answer(on, saw, false, OptionalInt.of(visit), Optional.empty());
    }

    private List<FollowedTask> visits(int asOf) {
        return VetVisits.list(POLICY, answers, ZoneOffset.UTC, day(asOf));
    }

    private void isOne(int asOf, int due, State state) {
        assertThat(visits(asOf)).singleElement().satisfies(visit -> {
            assertThat(visit.task().due()).isEqualTo(day(due));
            assertThat(visit.task().ordinal()).isEqualTo(1);
            assertThat(visit.state()).isEqualTo(state);
        });
    }

    @Test
    void aVisitIsOpenUntilItsDayAndOverdueAfterIt() {
        plans(1, 5);
        assertThat(visits(0)).isEmpty();
        isOne(5, 5, State.OPEN);
        isOne(6, 5, State.OVERDUE);
    }

    @Test
    void isDoneWhenAVetHasExaminedTheAnimalOnItsDayOrADayEarlyOrLater() {
        for (int on : List.of(4, 5, 9)) {
            answers.clear();
            plans(1, 5);
            examines(on);
            isOne(9, 5, State.DONE);
            assertThat(visits(9).get(0).doneOn()).contains(day(on));
        }
    }

    @Test
    void anEmergencyBeforeItIsNotThatVisit() {
        plans(1, 20);
        examines(3);
        isOne(9, 20, State.OPEN);
    }

    @Test
    void aLaterAnswerMovesIt() {
        plans(1, 5);
        plans(2, 9);
        isOne(2, 9, State.OPEN);
    }

    @Test
    void afterTheFirstTheNextHasANumberOfItsOwn() {
        plans(1, 5);
        answer(5, SawAnimal.EXAMINED, true, OptionalInt.of(30), Optional.empty());
        assertThat(visits(9)).extracting(each -> each.task().ordinal()).containsExactly(1, 2);
        assertThat(visits(9)).extracting(FollowedTask::state).containsExactly(State.DONE, State.OPEN);
    }

    @Test
    void whoIsNotConfirmedBringsItNearerAndNeverPutsItOffOrMakesIt() {
        plans(1, 9);
        unconfirmed(2, SawAnimal.READ_ONLY, 12);
        isOne(3, 9, State.OPEN);
        unconfirmed(3, SawAnimal.READ_ONLY, 6);
        isOne(3, 6, State.OPEN);
        unconfirmed(6, SawAnimal.EXAMINED, 40);
        isOne(6, 6, State.OPEN);
    }

    @Test
    void anAnswerThatTakesThePlaceOfAnotherTakesItsVisitAway() {
        UUID first = plans(1, 5);
        answer(2, SawAnimal.READ_ONLY, false, OptionalInt.empty(), Optional.of(first));
        isOne(3, 5, State.OPEN);
        answers.remove(1);
        answer(2, SawAnimal.READ_ONLY, true, OptionalInt.empty(), Optional.of(first));
        assertThat(visits(3)).isEmpty();
        LocalDate before = day(1);
        assertThat(VetVisits.list(POLICY, answers, ZoneOffset.UTC, before)).hasSize(1);
    }
}
