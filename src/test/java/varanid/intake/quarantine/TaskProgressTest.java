package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;
import static varanid.intake.quarantine.Room.POLICY;
import static varanid.intake.quarantine.Room.day;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import varanid.intake.quarantine.FollowedTask.State;

/** Days of an adult's weighings are 1, 7, 14, 28 and every 14 from then on; of a juvenile's 1, 7 and every 7. */
class TaskProgressTest {

    private static final int SEED = 20_261_125;

    private static TaskProgress.Span span(int from, int start, Stage stage, Isolation isolation) {
        return new TaskProgress.Span(
                day(from),
                day(start),
                day(start + 90),
                true,
                Optional.empty(),
                new QuarantinePlan.Newcomer(
                        stage, isolation, Set.of(), WorkPlace.NEWCOMERS_WITHOUT_SIGNS, Room.ninety()));
    }

    private static TaskProgress.Span looking(int from, int start, Isolation isolation, int lookOn) {
        TaskProgress.Span span = span(from, start, Stage.JUVENILE, isolation);
        return new TaskProgress.Span(
                span.from(),
                span.start(),
                span.earliestRelease(),
                span.dated(),
                Optional.of(day(lookOn)),
                span.newcomer());
    }

    private static List<FollowedTask> tasks(
            TaskKind kind, int asOf, List<TaskProgress.Span> spans, Integer... recorded) {
        return TaskProgress.list(POLICY, spans, Map.of(kind, days(recorded)), day(asOf)).stream()
                .filter(each -> each.task().kind() == kind)
                .toList();
    }

    private static List<FollowedTask> weighings(int asOf, Integer... recorded) {
        return tasks(TaskKind.WEIGHING, asOf, List.of(span(0, 0, Stage.JUVENILE, Isolation.STANDARD)), recorded);
    }

    private static List<LocalDate> days(Integer... days) {
        return List.of(days).stream().map(Room::day).toList();
    }

    private static FollowedTask done(FollowedTask each, int day) {
        return new FollowedTask(each.task(), State.DONE, Optional.of(day(day)));
    }

    @Test
    void whatIsAheadIsOpen() {
        assertThat(weighings(0)).extracting(FollowedTask::state).containsOnly(State.OPEN);
        assertThat(weighings(0).get(0).task().due()).isEqualTo(day(1));
    }

    @Test
    void aRecordWithinItsDaysIsTheTask() {
        FollowedTask first = weighings(3, 1).get(0);
        assertThat(first).isEqualTo(done(first, 1));
    }

    @Test
    void aDayEarlyAndAnyDayUpToTheNextStillIsTheTask() {
        assertThat(weighings(20, 1, 6, 19))
                .extracting(FollowedTask::doneOn)
                .startsWith(Optional.of(day(1)), Optional.of(day(6)), Optional.of(day(19)));
        assertThat(weighings(20, 1, 5).get(1).state()).isEqualTo(State.LET_PASS);
    }

    @Test
    void whatWasNotDoneIsOverdueUntilTheNextComes() {
        assertThat(weighings(8, 1).get(1).state())
                .as("day 7, and a day of grace")
                .isEqualTo(State.OPEN);
        assertThat(weighings(9, 1).get(1).state()).isEqualTo(State.OVERDUE);
        assertThat(weighings(13, 1).get(1).state()).isEqualTo(State.OVERDUE);
        assertThat(weighings(14, 1).get(1).state()).isEqualTo(State.LET_PASS);
        assertThat(weighings(14, 1).get(2).state()).isEqualTo(State.OPEN);
    }

    @Test
    void theWeighingOfTheArrivalIsNotThatOfTheFirstDay() {
        assertThat(weighings(1, 0).get(0).state()).isEqualTo(State.OPEN);
    }

    @Test
    void afterARestartWhatWasDoneKeepsItsNumberAndTheRestIsMoved() {
        List<FollowedTask> tasks = tasks(
                TaskKind.FAECAL_SAMPLE,
                40,
                List.of(span(0, 0, Stage.ADULT, Isolation.STANDARD), span(35, 35, Stage.ADULT, Isolation.STANDARD)),
                4,
                31);
        assertThat(tasks).extracting(each -> each.task().ordinal()).containsExactly(1, 2, 3, 4, 5);
        assertThat(tasks)
                .extracting(FollowedTask::state)
                .containsExactly(State.DONE, State.DONE, State.OPEN, State.OPEN, State.OPEN);
        assertThat(tasks.get(2).task().due()).isEqualTo(day(35 + 3));
    }

    @Test
    void whatWasDoneOnTheDayOfTheRestartWasDoneBeforeIt() {
        List<FollowedTask> tasks = tasks(
                TaskKind.WEIGHING,
                8,
                List.of(span(0, 0, Stage.JUVENILE, Isolation.STANDARD), span(7, 7, Stage.JUVENILE, Isolation.STANDARD)),
                1,
                7);
        assertThat(tasks.get(1)).isEqualTo(done(tasks.get(1), 7));
        assertThat(tasks.get(2).task().due()).isEqualTo(day(8));
        assertThat(tasks.get(2).task().ordinal()).isEqualTo(3);
    }

    /** Strictly isolated animals are looked at more often; their weighings stay as they are. */
    @Test
    void aChangeOfIsolationMovesOnlyWhatItConcerns() {
        List<TaskProgress.Span> spans =
                List.of(span(0, 0, Stage.JUVENILE, Isolation.STANDARD), span(8, 0, Stage.JUVENILE, Isolation.STRICT));
        List<FollowedTask> weighings = tasks(TaskKind.WEIGHING, 10, spans, 1);
        assertThat(weighings.get(1).state()).isEqualTo(State.OVERDUE);
        assertThat(weighings.get(1).task().due()).isEqualTo(day(7));
        List<FollowedTask> looks = tasks(TaskKind.RE_LOOK, 10, spans, 1, 3, 8);
        assertThat(looks).extracting(each -> each.task().ordinal()).startsWith(1, 2, 3, 4);
        assertThat(looks.get(2)).isEqualTo(done(looks.get(2), 8));
        assertThat(looks.get(3).task().due()).isEqualTo(day(11));
    }

    @Test
    void whereNobodyEndsItTheCareGoesOnAndTheSamplesEnd() {
        List<TaskProgress.Span> spans = List.of(span(0, 0, Stage.ADULT, Isolation.STANDARD));
        List<FollowedTask> weighings = tasks(TaskKind.WEIGHING, 120, spans);
        assertThat(weighings.get(weighings.size() - 1).task().due()).isAfter(day(120));
        List<FollowedTask> samples = tasks(TaskKind.FAECAL_SAMPLE, 120, spans);
        assertThat(samples).hasSize(3);
        assertThat(samples.get(2).state()).isEqualTo(State.OVERDUE);
    }

    /** By the schedule an animal in standard isolation is looked at on days 1, 3, 7 and every 7 from then on. */
    @Test
    void aLookThatIsCalledForComesBeforeThoseOfTheScheduleAndTakesTheNextNumber() {
        List<TaskProgress.Span> spans =
                List.of(span(0, 0, Stage.JUVENILE, Isolation.STANDARD), looking(8, 0, Isolation.STANDARD, 9));
        List<FollowedTask> looks = tasks(TaskKind.RE_LOOK, 8, spans, 1, 3, 8);
        assertThat(looks.get(2)).isEqualTo(done(looks.get(2), 8));
        assertThat(looks.get(3).task().ordinal()).isEqualTo(4);
        assertThat(looks.get(3).task().due()).isEqualTo(day(9));
        assertThat(looks.get(3).task().latest()).isEqualTo(day(9));
        assertThat(looks.get(4).task().due()).isEqualTo(day(14));
        assertThat(tasks(TaskKind.WEIGHING, 8, spans, 1).get(1).task().due()).isEqualTo(day(7));
    }

    @Test
    void aCalledLookThatNobodyTookKeepsItsDateAndNumberThroughAChangeOfIsolation() {
        TaskProgress.Span before = looking(8, 0, Isolation.STANDARD, 9);
        List<TaskProgress.Span> spans =
                List.of(span(0, 0, Stage.JUVENILE, Isolation.STANDARD), before, looking(10, 0, Isolation.STRICT, 9));
        FollowedTask called = tasks(TaskKind.RE_LOOK, 10, spans, 1, 3, 8).get(3);
        assertThat(called.task().ordinal()).isEqualTo(4);
        assertThat(called.task().due()).isEqualTo(day(9));
        assertThat(called.state()).isEqualTo(State.OVERDUE);
        // Day 11 is one of the schedule for strict isolation.
        assertThat(tasks(TaskKind.RE_LOOK, 11, spans, 1, 3, 8))
                .extracting(FollowedTask::state)
                .contains(State.LET_PASS);
    }

    @Test
    void wherePlanAndCallFallOnOneDayItIsOneLook() {
        List<FollowedTask> looks = tasks(
                TaskKind.RE_LOOK,
                13,
                List.of(span(0, 0, Stage.JUVENILE, Isolation.STANDARD), looking(13, 0, Isolation.STANDARD, 14)),
                1,
                3,
                8);
        assertThat(looks.stream().filter(each -> each.task().due().equals(day(14))))
                .hasSize(1);
    }

    /** Whoever waits moves nothing: not while a date is ahead, nor when it has passed. */
    @Test
    void theSameRecordsGiveTheSameDatesOnEveryDay() {
        List<TaskProgress.Span> spans =
                List.of(span(0, 0, Stage.JUVENILE, Isolation.STANDARD), looking(40, 0, Isolation.STRICT, 41));
        for (TaskKind kind : TaskKind.values()) {
            List<Task> first = tasks(kind, 50, spans, 1, 7, 14, 40).stream()
                    .map(FollowedTask::task)
                    .toList();
            for (int asOf = 51; asOf < 140; asOf++) {
                assertThat(tasks(kind, asOf, spans, 1, 7, 14, 40))
                        .extracting(FollowedTask::task)
                        .as(kind + " on day " + asOf)
                        .startsWith(first.toArray(Task[]::new));
            }
        }
    }

    @Test
    void noReleaseIsPlannedWhileTheDaysWait() {
        TaskProgress.Span running = span(0, 0, Stage.ADULT, Isolation.STANDARD);
        assertThat(tasks(TaskKind.RELEASE_REVIEW, 5, List.of(running))).hasSize(1);
        TaskProgress.Span held = new TaskProgress.Span(
                running.from(),
                running.start(),
                running.earliestRelease(),
                false,
                Optional.empty(),
                running.newcomer());
        assertThat(tasks(TaskKind.RELEASE_REVIEW, 5, List.of(held))).isEmpty();
    }

    /** Whatever happens, and whatever is recorded: seeded, so that a failure can be seen again. */
    @Test
    void keepsItsLaws() {
        Random random = new Random(SEED);
        for (int round = 0; round < 3_000; round++) {
            List<TaskProgress.Span> spans = randomSpans(random);
            Map<TaskKind, List<LocalDate>> records = new EnumMap<>(TaskKind.class);
            for (TaskKind kind : TaskKind.values()) {
                records.put(
                        kind,
                        IntStream.range(0, random.nextInt(20))
                                .mapToObj(i -> day(random.nextInt(120)))
                                .toList());
            }
            int early = random.nextInt(120);
            int late = early + random.nextInt(120 - early);
            List<FollowedTask> before = TaskProgress.list(POLICY, upTo(spans, early), records, day(early));
            List<FollowedTask> after = TaskProgress.list(POLICY, upTo(spans, late), records, day(late));
            String what = "round " + round + ", days " + early + " and " + late;
            assertThat(List.of(before, after)).as(what).allSatisfy(tasks -> checkOne(tasks, records));
            assertThat(doneOnes(after))
                    .as(what + ": done stays done, under its number")
                    .containsAll(doneOnes(before));
        }
    }

    private static void checkOne(List<FollowedTask> tasks, Map<TaskKind, List<LocalDate>> records) {
        Set<String> numbers = new HashSet<>();
        Set<String> used = new HashSet<>();
        Map<TaskKind, Integer> overdue = new EnumMap<>(TaskKind.class);
        for (FollowedTask each : tasks) {
            TaskKind kind = each.task().kind();
            assertThat(numbers.add(kind + " " + each.task().ordinal()))
                    .as("%s once", each.task())
                    .isTrue();
            each.doneOn().ifPresent(on -> {
                assertThat(records.get(kind)).contains(on);
                assertThat(used.add(kind + " " + on)).as("one record, one task").isTrue();
            });
            if (each.state() == State.OVERDUE) {
                assertThat(overdue.merge(kind, 1, Integer::sum)).isEqualTo(1);
            }
        }
    }

    private static Set<String> doneOnes(List<FollowedTask> tasks) {
        Set<String> done = new HashSet<>();
        tasks.stream()
                .filter(each -> each.state() == State.DONE)
                .forEach(each -> done.add(each.task().kind() + " " + each.task().ordinal() + " " + each.doneOn()));
        return done;
    }

    private static List<TaskProgress.Span> randomSpans(Random random) {
        Stage stage = Stage.values()[random.nextInt(Stage.values().length)];
        List<TaskProgress.Span> spans = new ArrayList<>();
        int start = 0;
        for (int from = 0; from < 120; from += 1 + random.nextInt(40)) {
            if (random.nextBoolean()) {
                start = from;
            }
            TaskProgress.Span span =
                    span(from, start, stage, random.nextBoolean() ? Isolation.STRICT : Isolation.STANDARD);
            spans.add(new TaskProgress.Span(
                    span.from(),
                    span.start(),
                    span.earliestRelease(),
                    span.dated(),
                    random.nextInt(3) == 0 ? Optional.of(day(from + 1 - random.nextInt(4))) : Optional.empty(),
                    span.newcomer()));
        }
        return spans;
    }

    private static List<TaskProgress.Span> upTo(List<TaskProgress.Span> spans, int day) {
        return spans.stream().filter(span -> !span.from().isAfter(day(day))).toList();
    }
}
