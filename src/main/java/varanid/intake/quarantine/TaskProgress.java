package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What became of the tasks of one animal's quarantine, across restarts and changes of isolation: each task is matched
 * with the days on which such a thing was recorded. Pure.
 *
 * <p>A record is the first task that is not done and that it may be: from a day before the task's first day to the day
 * before the next of its kind. What was done keeps its number for ever; what was not done before a restart is moved: the
 * new plan's tasks are counted on from the last one done. So a kind and an ordinal always mean the same task, whose dates
 * may move while it is not done.
 */
final class TaskProgress {

    private final QuarantinePolicy policy;
    private final LocalDate asOf;

    private TaskProgress(QuarantinePolicy policy, LocalDate asOf) {
        this.policy = policy;
        this.asOf = asOf;
    }

    /**
     * A time in which one plan held.
     *
     * @param from its first day
     * @param start day 0 of the clock in it
     * @param earliestRelease as the clock showed it on the first day, for the last span on the day of asking; while days
     *     waited, as though they had not
     * @param dated whether that is a date, and not only the day before which there is no release
     * @param lookOn the day it is looked at again whatever the schedule says, where a look or what was found calls for it
     * @param newcomer what steered the plan
     */
    record Span(
            LocalDate from,
            LocalDate start,
            LocalDate earliestRelease,
            boolean dated,
            Optional<LocalDate> lookOn,
            QuarantinePlan.Newcomer newcomer) {}

    /**
     * All tasks, by date.
     *
     * @param spans by their first day; at least one
     * @param records the days on which something of the kind was recorded; later ones than {@code asOf} are left out
     */
    static List<FollowedTask> list(
            QuarantinePolicy policy, List<Span> spans, Map<TaskKind, List<LocalDate>> records, LocalDate asOf) {
        TaskProgress progress = new TaskProgress(policy, asOf);
        List<FollowedTask> tasks = new ArrayList<>();
        for (TaskKind kind : TaskKind.values()) {
            tasks.addAll(
                    kind == TaskKind.RELEASE_REVIEW
                            ? progress.releaseReview(spans.get(spans.size() - 1))
                            : progress.ofKind(kind, spans, records.getOrDefault(kind, List.of())));
        }
        tasks.sort(Comparator.comparing((FollowedTask each) -> each.task().due())
                .thenComparing(each -> each.task().kind())
                .thenComparing(each -> each.task().ordinal()));
        return tasks;
    }

    /** It is done by a decision, which ends the quarantine. While the days wait there is no date for it. */
    private List<FollowedTask> releaseReview(Span last) {
        return tasks(TaskKind.RELEASE_REVIEW, last, last.earliestRelease()).stream()
                .filter(task -> last.dated())
                .map(task -> new FollowedTask(task, FollowedTask.State.OPEN, Optional.empty()))
                .toList();
    }

    private List<FollowedTask> ofKind(TaskKind kind, List<Span> spans, List<LocalDate> days) {
        List<Span> held = ofOnePlan(kind, spans);
        List<FollowedTask> all = new ArrayList<>();
        int done = 0;
        for (int i = 0; i < held.size(); i++) {
            Span span = held.get(i);
            boolean last = i + 1 == held.size();
            LocalDate until = last ? asOf : held.get(i + 1).from();
            List<FollowedTask> followed =
                    match(planned(kind, span, until, done), recorded(days, span.from(), until), until);
            int doneIn = followed.stream()
                    .filter(each -> each.state() == FollowedTask.State.DONE)
                    .mapToInt(each -> each.task().ordinal())
                    .max()
                    .orElse(done);
            followed.stream()
                    .filter(each -> last || each.task().ordinal() <= doneIn)
                    .forEach(all::add);
            done = doneIn;
        }
        return all;
    }

    /** Spans in which tasks of the kind fall on the same days are one. */
    private List<Span> ofOnePlan(TaskKind kind, List<Span> spans) {
        List<Span> held = new ArrayList<>();
        for (Span span : spans) {
            @Nullable Span before = held.isEmpty() ? null : held.get(held.size() - 1);
            if (before != null
                    && before.start().equals(span.start())
                    && (kind != TaskKind.RE_LOOK || before.lookOn().equals(span.lookOn()))
                    && schedule(kind, before).equals(schedule(kind, span))) {
                held.set(
                        held.size() - 1,
                        new Span(
                                before.from(),
                                span.start(),
                                span.earliestRelease(),
                                span.dated(),
                                span.lookOn(),
                                span.newcomer()));
            } else {
                held.add(span);
            }
        }
        return held;
    }

    private List<QuarantinePolicy.Schedule> schedule(TaskKind kind, Span span) {
        return policy.schedules().stream()
                .filter(schedule -> schedule.kind() == kind
                        && schedule.stages().contains(span.newcomer().stage())
                        && schedule.isolation().contains(span.newcomer().isolation()))
                .toList();
    }

    /** The tasks of a span that begin in it, counted on; a look that is called for comes before those of the schedule. */
    private List<Task> planned(TaskKind kind, Span span, LocalDate until, int done) {
        LocalDate ahead = until.plusDays(policy.progress().aheadDays());
        // Weighing and looking go on until somebody ends the quarantine. Samples end with the plan.
        boolean goesOn =
                kind != TaskKind.FAECAL_SAMPLE && !span.earliestRelease().isAfter(until);
        Optional<LocalDate> lookOn = kind == TaskKind.RE_LOOK ? span.lookOn() : Optional.empty();
        Stream<Task> scheduled = tasks(kind, span, goesOn ? ahead : span.earliestRelease()).stream()
                .filter(task -> !span.from().isAfter(span.start()) || task.due().isAfter(span.from()))
                .filter(task -> lookOn.map(day -> task.due().isAfter(day)).orElse(true));
        List<Task> planned = new ArrayList<>();
        Stream.concat(lookOn.map(this::lookAgain).stream(), scheduled)
                .forEach(task -> planned.add(new Task(
                        kind,
                        done + planned.size() + 1,
                        task.due(),
                        task.latest(),
                        task.title(),
                        task.instruction(),
                        task.source())));
        return planned;
    }

    private Task lookAgain(LocalDate day) {
        QuarantinePolicy.LookAgain rule = policy.lookAgain();
        return new Task(
                TaskKind.RE_LOOK,
                1,
                day,
                day.plusDays(rule.windowDays()),
                rule.title(),
                rule.instruction(),
                rule.source());
    }

    /**
     * Those that fall due up to a day. Samples end with the plan, days for the laboratory included; of all else the days
     * that are good do not, or they would move as the end does.
     */
    private List<Task> tasks(TaskKind kind, Span span, LocalDate end) {
        LocalDate planned = kind == TaskKind.FAECAL_SAMPLE || kind == TaskKind.RELEASE_REVIEW
                ? end
                : end.plusDays(schedule(kind, span).stream()
                        .mapToInt(QuarantinePolicy.Schedule::windowDays)
                        .max()
                        .orElse(0));
        return QuarantinePlan.make(policy, span.newcomer(), span.start(), planned).tasks().stream()
                .filter(task -> task.kind() == kind && !task.due().isAfter(end))
                .toList();
    }

    /** What was recorded on the first day of a span was done before it: on arrival, or before the restart was known. */
    private List<LocalDate> recorded(List<LocalDate> days, LocalDate from, LocalDate until) {
        return new TreeSet<>(days)
                .stream()
                        .filter(day -> day.isAfter(from) && !day.isAfter(until) && !day.isAfter(asOf))
                        .toList();
    }

    private List<FollowedTask> match(List<Task> tasks, List<LocalDate> days, LocalDate on) {
        List<@Nullable LocalDate> doneOn = new ArrayList<>();
        tasks.forEach(task -> doneOn.add(null));
        int first = 0;
        for (LocalDate day : days) {
            // Records come in order, so what an earlier one could not be any more, a later one cannot be either.
            while (first < tasks.size()
                    && (doneOn.get(first) != null
                            || (first + 1 < tasks.size()
                                    && !day.isBefore(tasks.get(first + 1).due())))) {
                first++;
            }
            if (first < tasks.size()
                    && !day.isBefore(
                            tasks.get(first).due().minusDays(policy.progress().earlyDays()))) {
                doneOn.set(first, day);
            }
        }
        List<FollowedTask> followed = new ArrayList<>();
        for (int i = 0; i < tasks.size(); i++) {
            Task task = tasks.get(i);
            @Nullable LocalDate done = doneOn.get(i);
            boolean nextHasCome =
                    i + 1 < tasks.size() && !tasks.get(i + 1).due().isAfter(on);
            FollowedTask.State state = done != null
                    ? FollowedTask.State.DONE
                    : nextHasCome
                            ? FollowedTask.State.LET_PASS
                            : task.latest().isBefore(on) ? FollowedTask.State.OVERDUE : FollowedTask.State.OPEN;
            followed.add(new FollowedTask(task, state, Optional.ofNullable(done)));
        }
        return followed;
    }
}
