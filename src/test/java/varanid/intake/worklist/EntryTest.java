package varanid.intake.worklist;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import varanid.intake.quarantine.Isolation;
import varanid.intake.quarantine.RoundsOrder;
import varanid.intake.quarantine.Stage;
import varanid.intake.quarantine.WorkPlace;
import varanid.intake.worklist.WorklistFacts.OpenTask;

/** What an entry comes to, and the laws of both orders. */
class EntryTest {

    private static final LocalDate DAY = LocalDate.of(2026, 3, 9);
    private static final UUID ID = new UUID(1, 2);

    @Test
    void aMoreUrgentAnimalNeverRanksLater() {
        for (Urgency more : Urgency.values()) {
            for (Urgency less : Urgency.values()) {
                for (boolean worse : List.of(true, false)) {
                    for (boolean other : List.of(true, false)) {
                        if (more.compareTo(less) < 0) {
                            assertThat(ActRank.of(Optional.of(more), worse))
                                    .isLessThan(ActRank.of(Optional.of(less), other));
                        }
                    }
                }
            }
        }
    }

    @Test
    void gettingWorseNeverRanksLater() {
        for (Urgency urgency : Urgency.values()) {
            assertThat(ActRank.of(Optional.of(urgency), true))
                    .isLessThanOrEqualTo(ActRank.of(Optional.of(urgency), false));
        }
        assertThat(ActRank.of(Optional.of(Urgency.ROUTINE), true)).isEqualTo(ActRank.WORSE);
        assertThat(ActRank.of(Optional.of(Urgency.ROUTINE), false)).isEqualTo(ActRank.REST);
    }

    @Test
    void nobodyHavingLookedCountsAsUrgent() {
        assertThat(ActRank.of(Optional.empty(), false)).isEqualTo(ActRank.URGENT);
    }

    @Test
    void theNumberOfAStopOrdersAsTheRoundsDo() {
        List<RoundsOrder.Stop> stops = new ArrayList<>();
        for (WorkPlace place : WorkPlace.values()) {
            for (Isolation isolation : Isolation.values()) {
                for (Stage stage : Stage.values()) {
                    stops.add(new RoundsOrder.Stop(place, isolation, stage));
                }
            }
        }
        for (RoundsOrder.Stop one : stops) {
            for (RoundsOrder.Stop other : stops) {
                assertThat(Integer.signum(Integer.compare(RoundsRank.of(one), RoundsRank.of(other))))
                        .as("%s against %s", one, other)
                        .isEqualTo(Integer.signum(RoundsOrder.COMPARATOR.compare(one, other)));
            }
        }
    }

    @Test
    void strictComesAfterStandardOfItsPlaceAndHatchlingsBeforeAdults() {
        // domain: residents, newcomers without signs, suspect, sick; hatchlings before adults (common practice)
        assertThat(RoundsRank.of(new RoundsOrder.Stop(WorkPlace.SUSPECT, Isolation.STANDARD, Stage.ADULT)))
                .isLessThan(RoundsRank.of(new RoundsOrder.Stop(WorkPlace.SUSPECT, Isolation.STRICT, Stage.HATCHLING)))
                .isGreaterThan(
                        RoundsRank.of(new RoundsOrder.Stop(WorkPlace.SUSPECT, Isolation.STANDARD, Stage.HATCHLING)))
                .isGreaterThan(RoundsRank.of(
                        new RoundsOrder.Stop(WorkPlace.NEWCOMERS_WITHOUT_SIGNS, Isolation.STRICT, Stage.ADULT)));
    }

    @Test
    void holdsTheEarliestDaysOfAllOpenTasks() {
        Entry entry = Entry.of(
                ID,
                Facts.of("a")
                        .with("weighing", DAY.plusDays(2), DAY.plusDays(3))
                        .with("faecal-sample", DAY, DAY.plusDays(9))
                        .done());
        assertThat(entry.dueFrom()).isEqualTo(DAY);
        assertThat(entry.dueUntil()).isEqualTo(DAY.plusDays(3));
        assertThat(entry.tasks()).extracting(OpenTask::kind).containsExactly("faecal-sample", "weighing");
    }

    @Test
    void theRoomComesBeforeTheStageAndAfterThePlace() {
        for (WorkPlace place : WorkPlace.values()) {
            for (Isolation isolation : Isolation.values()) {
                assertThat(Stream.of(Stage.values())
                                .map(stage ->
                                        RoundsRank.place(RoundsRank.of(new RoundsOrder.Stop(place, isolation, stage))))
                                .distinct())
                        .as("%s, %s: hatchlings and adults of a room are one visit", place, isolation)
                        .containsExactly(place.ordinal() * 10 + isolation.ordinal());
            }
        }
        assertThat(RoundsRank.place(RoundsPlace.BEFORE_ALL.rank())).isNegative();
    }

    @Test
    void whatIsDueSeveralTimesIsToldOnceByItsEarliest() {
        Entry entry = Entry.of(
                ID,
                Facts.of("a")
                        .with("re-look", DAY.plusDays(2), DAY.plusDays(3))
                        .with("weighing", DAY.minusDays(1), DAY)
                        .with("re-look", DAY.minusDays(2), DAY.minusDays(1))
                        .with("re-look", DAY, DAY.plusDays(1))
                        .done());
        assertThat(entry.due(DAY)).extracting(due -> due.earliest().kind()).containsExactly("re-look", "weighing");
        assertThat(entry.due(DAY)).extracting(Entry.Due::times).containsExactly(2, 1);
        assertThat(entry.due(DAY).get(0).earliest().due()).isEqualTo(DAY.minusDays(2));
        assertThat(entry.due(DAY.plusDays(2)).get(0).times()).isEqualTo(3);
        assertThat(entry.due(DAY.minusDays(3))).isEmpty();
    }

    @Test
    void whatIsLongestOverdueComesFirst() {
        Entry entry = Entry.of(
                ID,
                Facts.of("a")
                        .with("faecal-sample", DAY.minusDays(4), DAY.plusDays(1))
                        .with("weighing", DAY.minusDays(1), DAY.minusDays(1))
                        .with("re-look", DAY.minusDays(3), DAY.minusDays(2))
                        .done());
        assertThat(entry.due(DAY))
                .extracting(due -> due.earliest().kind())
                .containsExactly("re-look", "weighing", "faecal-sample");
    }

    @Test
    void twoQuestionsOfOneKindAreTwo() {
        OpenTask mites = new OpenTask("vets-word", 1, "Ask the vet: mites", DAY, DAY);
        OpenTask mouth = new OpenTask("vets-word", 2, "Ask the vet: mouth", DAY, DAY);
        WorklistFacts none = Facts.of("a").done();
        Entry entry = Entry.of(
                ID,
                new WorklistFacts(
                        none.label(),
                        none.room(),
                        none.urgency(),
                        none.headline(),
                        none.worse(),
                        none.comparedLook(),
                        none.reasons(),
                        none.stop(),
                        List.of(mites, mouth)));
        assertThat(entry.due(DAY)).extracting(Entry.Due::earliest).containsExactly(mites, mouth);
    }

    @Test
    void withNothingPlannedItIsNeverDue() {
        Entry entry = Entry.of(ID, Facts.of("a").done());
        assertThat(entry.dueFrom()).isEqualTo(Entry.NEVER);
        assertThat(entry.dueUntil()).isEqualTo(Entry.NEVER);
        assertThat(entry.callsFor(DAY.plusYears(100))).isFalse();
    }

    @Test
    void anOverdueTaskNeverDisappears() {
        Random random = new Random(20261125);
        for (int i = 0; i < 5_000; i++) {
            Facts facts = Facts.of("a").is(Urgency.values()[random.nextInt(4)]);
            for (int task = random.nextInt(30); task > 0; task--) {
                LocalDate due = DAY.plusDays(random.nextInt(120) - 60);
                facts = facts.with("kind-" + random.nextInt(6), due, due.plusDays(random.nextInt(10)));
            }
            Entry entry = Entry.of(ID, facts.done());
            LocalDate asOf = DAY.plusDays(random.nextInt(60));
            for (OpenTask task : facts.tasks()) {
                if (task.latest().isBefore(asOf)) {
                    assertThat(entry.callsFor(asOf)).isTrue();
                    assertThat(entry.dueUntil()).isBefore(asOf);
                    // It is listed, or more is said to be due than is listed.
                    assertThat(entry.tasks().contains(task) || !entry.moreFrom().isAfter(asOf))
                            .isTrue();
                }
            }
            // Time passing takes nobody off the list.
            assertThat(!entry.callsFor(asOf) || entry.callsFor(asOf.plusDays(1)))
                    .isTrue();
        }
    }

    @Test
    void keepsTheFirstTasksAndWhenTheNextOfTheOthersIsDue() {
        Facts facts = Facts.of("a");
        for (int day = 20; day > 0; day--) {
            facts = facts.with("weighing", DAY.plusDays(day), DAY.plusDays(day));
        }
        Entry entry = Entry.of(ID, facts.done());
        assertThat(entry.tasks()).hasSize(Entry.MOST_TASKS);
        assertThat(entry.tasks().get(0).due()).isEqualTo(DAY.plusDays(1));
        assertThat(entry.moreFrom()).isEqualTo(DAY.plusDays(Entry.MOST_TASKS + 1));
    }
}
