package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static varanid.intake.quarantine.Room.day;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class QuarantinePlanTest {

    private static QuarantinePlan plan(Isolation isolation, Stage stage, int span) {
        MinimumStay stay = Room.POLICY.minimumStay(Origin.WILD, isolation, Set.of());
        return QuarantinePlan.make(
                Room.POLICY,
                new QuarantinePlan.Newcomer(stage, isolation, Set.of(), WorkPlace.NEWCOMERS_WITHOUT_SIGNS, stay),
                day(0),
                day(span));
    }

    private static List<Task> tasks(QuarantinePlan plan, TaskKind kind) {
        return plan.tasks().stream().filter(task -> task.kind() == kind).toList();
    }

    /** About days 3 to 7, 30, and 60 or later: proposed by us. */
    @Test
    void samplesStoolThreeTimesInNinetyDays() {
        List<Task> samples = tasks(plan(Isolation.STANDARD, Stage.ADULT, 90), TaskKind.FAECAL_SAMPLE);
        assertThat(samples).extracting(Task::due).containsExactly(day(3), day(30), day(60));
        assertThat(samples).extracting(Task::latest).containsExactly(day(7), day(37), day(67));
        assertThat(samples).extracting(Task::ordinal).containsExactly(1, 2, 3);
    }

    @Test
    void inSixtyDaysTheLastSampleLeavesTimeForTheLaboratory() {
        List<Task> samples = tasks(plan(Isolation.STANDARD, Stage.ADULT, 60), TaskKind.FAECAL_SAMPLE);
        assertThat(samples).extracting(Task::due).containsExactly(day(3), day(30), day(50));
        assertThat(samples.get(2).due()).isAfterOrEqualTo(samples.get(1).due().plusDays(14));
    }

    @Test
    void inALongerQuarantineItGoesOnSampling() {
        assertThat(tasks(plan(Isolation.STANDARD, Stage.ADULT, 180), TaskKind.FAECAL_SAMPLE))
                .extracting(Task::due)
                .containsExactly(day(3), day(30), day(60), day(120));
    }

    @Test
    void weighsTheYoungWeekly() {
        assertThat(tasks(plan(Isolation.STANDARD, Stage.HATCHLING, 30), TaskKind.WEIGHING))
                .extracting(Task::due)
                .containsExactly(day(1), day(7), day(14), day(21), day(28));
        assertThat(tasks(plan(Isolation.STANDARD, Stage.ADULT, 30), TaskKind.WEIGHING))
                .extracting(Task::due)
                .containsExactly(day(1), day(7), day(14), day(28));
        assertThat(tasks(plan(Isolation.STANDARD, Stage.UNKNOWN, 30), TaskKind.WEIGHING))
                .hasSize(5);
    }

    @Test
    void looksMoreOftenWhereIsolationIsStrict() {
        assertThat(tasks(plan(Isolation.STRICT, Stage.JUVENILE, 90), TaskKind.RE_LOOK))
                .hasSizeGreaterThan(tasks(plan(Isolation.STANDARD, Stage.JUVENILE, 90), TaskKind.RE_LOOK)
                        .size());
        assertThat(plan(Isolation.STRICT, Stage.JUVENILE, 90).tools())
                .hasSizeGreaterThan(
                        plan(Isolation.STANDARD, Stage.JUVENILE, 90).tools().size());
    }

    @Test
    void endsWithAReviewByAPersonAndAVetWhereThePolicyAsks() {
        QuarantinePlan plan = plan(Isolation.STANDARD, Stage.JUVENILE, 90);
        Task last = plan.tasks().get(plan.tasks().size() - 1);
        assertThat(last.kind()).isEqualTo(TaskKind.RELEASE_REVIEW);
        assertThat(last.due()).isEqualTo(day(90));
        assertThat(last.instruction()).contains("A person decides").contains("a vet has to approve");
    }

    @Test
    void neverShowsDisinfectantsWithoutCautions() {
        QuarantinePlan plan = plan(Isolation.STANDARD, Stage.JUVENILE, 90);
        assertThat(plan.disinfectants()).isNotEmpty();
        assertThat(plan.cautions()).extracting(QuarantinePolicy.Advice::text).anyMatch(text -> text.contains("bleach"));
        assertThat(plan.warning()).contains("a person does");
    }

    @Test
    void refusesAReleaseBeforeTheStart() {
        assertThatIllegalArgumentException().isThrownBy(() -> plan(Isolation.STRICT, Stage.ADULT, -1));
        assertThat(plan(Isolation.STRICT, Stage.ADULT, 0).tasks()).isNotEmpty();
    }

    /** Residents, newcomers without signs, suspect, sick; hatchlings before adults: the order hygiene asks for. */
    @Test
    void goesFromTheCleanToTheSick() {
        var resident = new RoundsOrder.Stop(WorkPlace.RESIDENTS, Isolation.STANDARD, Stage.ADULT);
        var hatchling = new RoundsOrder.Stop(WorkPlace.NEWCOMERS_WITHOUT_SIGNS, Isolation.STANDARD, Stage.HATCHLING);
        var adult = new RoundsOrder.Stop(WorkPlace.NEWCOMERS_WITHOUT_SIGNS, Isolation.STANDARD, Stage.ADULT);
        var strict = new RoundsOrder.Stop(WorkPlace.NEWCOMERS_WITHOUT_SIGNS, Isolation.STRICT, Stage.HATCHLING);
        var suspect = new RoundsOrder.Stop(WorkPlace.SUSPECT, Isolation.STANDARD, Stage.HATCHLING);
        var sick = new RoundsOrder.Stop(WorkPlace.SICK, Isolation.STANDARD, Stage.HATCHLING);
        assertThat(List.of(sick, strict, suspect, adult, resident, hatchling).stream()
                        .sorted(RoundsOrder.COMPARATOR))
                .containsExactly(resident, hatchling, adult, strict, suspect, sick);
    }
}
