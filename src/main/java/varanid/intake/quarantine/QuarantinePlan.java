package varanid.intake.quarantine;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What is to be done with one animal until it can be released, on which days.
 *
 * <p>Made anew whenever the clock or the isolation changes; nothing of it is a record of what was done.
 *
 * @param start day 0
 * @param earliestRelease the first day on which a person may end it, as the clock shows it
 * @param stay how long at least, and why
 * @param isolation how strictly apart
 * @param contagion how that which it has or was exposed to travels
 * @param workPlace its place in the rounds
 * @param workOrder the order of the rounds in words
 * @param tools what is kept apart
 * @param hygiene what is done every day
 * @param disinfectants for cleaned surfaces
 * @param cautions what is never done
 * @param tasks by date, all from {@code start} to {@code earliestRelease}
 * @param warning belongs beside the plan
 */
public record QuarantinePlan(
        LocalDate start,
        LocalDate earliestRelease,
        MinimumStay stay,
        Isolation isolation,
        Set<Route> contagion,
        WorkPlace workPlace,
        List<QuarantinePolicy.Place> workOrder,
        List<QuarantinePolicy.Tool> tools,
        List<QuarantinePolicy.Advice> hygiene,
        List<QuarantinePolicy.Disinfectant> disinfectants,
        List<QuarantinePolicy.Advice> cautions,
        List<Task> tasks,
        String warning) {

    public QuarantinePlan {
        contagion = Set.copyOf(contagion);
        workOrder = List.copyOf(workOrder);
        tools = List.copyOf(tools);
        hygiene = List.copyOf(hygiene);
        disinfectants = List.copyOf(disinfectants);
        cautions = List.copyOf(cautions);
        tasks = List.copyOf(tasks);
    }

    /**
     * Makes the plan of one animal.
     *
     * @param newcomer what steers it
     * @param start day 0, as the clock of its space shows it
     * @param earliestRelease as that clock shows it, or the day it is not released before; from {@code start} on
     * @throws IllegalArgumentException where release comes before the start
     */
    public static QuarantinePlan make(
            QuarantinePolicy policy, Newcomer newcomer, LocalDate start, LocalDate earliestRelease) {
        if (earliestRelease.isBefore(start)) {
            throw new IllegalArgumentException("released on " + earliestRelease + ", before its start on " + start);
        }
        return new QuarantinePlan(
                start,
                earliestRelease,
                newcomer.stay(),
                newcomer.isolation(),
                newcomer.contagion(),
                newcomer.workPlace(),
                policy.workOrder().places(),
                policy.tools().stream()
                        .filter(tool -> tool.isolation().contains(newcomer.isolation()))
                        .toList(),
                policy.hygiene(),
                policy.disinfectants(),
                policy.cautions(),
                tasks(policy, newcomer, start, (int) ChronoUnit.DAYS.between(start, earliestRelease)),
                policy.warning());
    }

    private static List<Task> tasks(QuarantinePolicy policy, Newcomer newcomer, LocalDate start, int span) {
        Map<TaskKind, Integer> counts = new EnumMap<>(TaskKind.class);
        List<Task> tasks = new ArrayList<>();
        for (QuarantinePolicy.Schedule schedule : policy.schedules()) {
            if (schedule.stages().contains(newcomer.stage())
                    && schedule.isolation().contains(newcomer.isolation())) {
                for (int day : days(schedule, span)) {
                    tasks.add(new Task(
                            schedule.kind(),
                            counts.merge(schedule.kind(), 1, Integer::sum),
                            start.plusDays(day),
                            start.plusDays(Math.min(span, day + schedule.windowDays())),
                            schedule.title(),
                            schedule.instruction(),
                            schedule.source()));
                }
            }
        }
        QuarantinePolicy.Faecal faecal = policy.faecal();
        for (QuarantinePolicy.DayWindow window : samples(faecal, span)) {
            tasks.add(new Task(
                    TaskKind.FAECAL_SAMPLE,
                    counts.merge(TaskKind.FAECAL_SAMPLE, 1, Integer::sum),
                    start.plusDays(window.fromDay()),
                    start.plusDays(window.toDay()),
                    faecal.title(),
                    faecal.instruction(),
                    faecal.source()));
        }
        tasks.add(new Task(
                TaskKind.RELEASE_REVIEW,
                1,
                start.plusDays(span),
                start.plusDays(span),
                "Go through the conditions of release",
                "Earliest day. A person decides" + (newcomer.stay().vetRelease() ? ", and a vet has to approve." : "."),
                "policy " + policy.id() + " version " + policy.version()));
        tasks.sort(Comparator.comparing(Task::due).thenComparing(Task::kind).thenComparing(Task::ordinal));
        return tasks;
    }

    private static List<Integer> days(QuarantinePolicy.Schedule schedule, int span) {
        List<Integer> days = new ArrayList<>();
        int last = 0;
        for (int day : schedule.days()) {
            if (day <= span) {
                days.add(day);
            }
            last = day;
        }
        for (int day = last + schedule.thenEvery(); day <= span; day += schedule.thenEvery()) {
            days.add(day);
        }
        return days;
    }

    /** The windows of the policy, then repeats; each early enough for the laboratory, if need be earlier. */
    private static List<QuarantinePolicy.DayWindow> samples(QuarantinePolicy.Faecal faecal, int span) {
        int latest = Math.max(0, span - faecal.latestDaysBeforeRelease());
        List<QuarantinePolicy.DayWindow> windows = new ArrayList<>();
        int before = -1;
        for (QuarantinePolicy.DayWindow window : faecal.samples()) {
            int from = Math.min(window.fromDay(), latest);
            if (from > before) {
                windows.add(new QuarantinePolicy.DayWindow(from, Math.min(window.toDay(), latest)));
                before = from;
            }
        }
        for (int day = before + faecal.thenEvery(); day <= latest; day += faecal.thenEvery()) {
            windows.add(new QuarantinePolicy.DayWindow(day, Math.min(day + faecal.windowDays(), latest)));
        }
        return windows;
    }

    /**
     * What steers the plan of one animal.
     *
     * @param stage how grown it is
     * @param isolation how strictly apart
     * @param contagion how that which it has or was exposed to travels; empty where nothing is suspected
     * @param workPlace its place in the rounds
     * @param stay how long at least, the organisation's own days included
     */
    public record Newcomer(
            Stage stage, Isolation isolation, Set<Route> contagion, WorkPlace workPlace, MinimumStay stay) {
        public Newcomer {
            contagion = Set.copyOf(contagion);
        }
    }
}
