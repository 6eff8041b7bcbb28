package varanid.intake.quarantine;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import varanid.intake.vet.VetAnswer;

/**
 * The visits that vets' answers ask for. Pure.
 *
 * <p>One is open at a time: it is done when a vet has examined the animal on its day, a little before or later, as a
 * confirmed answer says; a later answer that names another day moves it. Of an answer that is not confirmed only what
 * brings a visit, or brings it nearer, counts.
 */
final class VetVisits {

    private final QuarantinePolicy policy;
    private final ZoneId zone;
    private final LocalDate asOf;
    private final List<Visit> visits = new ArrayList<>();

    private VetVisits(QuarantinePolicy policy, ZoneId zone, LocalDate asOf) {
        this.policy = policy;
        this.zone = zone;
        this.asOf = asOf;
    }

    private record Visit(LocalDate due, Optional<LocalDate> doneOn) {}

    /**
     * All of them, in order.
     *
     * @param answers of one animal, in order
     */
    static List<FollowedTask> list(QuarantinePolicy policy, List<VetAnswer> answers, ZoneId zone, LocalDate asOf) {
        VetVisits all = new VetVisits(policy, zone, asOf);
        answers.stream()
                .filter(answer -> all.isBy(answer.answeredAt()))
                .filter(answer -> answers.stream().noneMatch(other -> all.replaces(other, answer)))
                .forEach(all::take);
        return IntStream.range(0, all.visits.size()).mapToObj(all::task).toList();
    }

    private boolean isBy(Instant at) {
        return !day(at).isAfter(asOf);
    }

    private LocalDate day(Instant at) {
        return LocalDate.ofInstant(at, zone);
    }

    /** Confirmed from the start is so from the day it was given. */
    private boolean isConfirmed(VetAnswer answer) {
        return answer.confirmed()
                && (answer.confirmedBy().isEmpty()
                        || answer.confirmedAt().filter(this::isBy).isPresent());
    }

    private boolean replaces(VetAnswer later, VetAnswer earlier) {
        return isBy(later.answeredAt())
                && isConfirmed(later)
                && later.supersedes().filter(earlier.id()::equals).isPresent();
    }

    private void take(VetAnswer answer) {
        boolean confirmed = isConfirmed(answer);
        LocalDate on = day(answer.answeredAt());
        boolean examined = confirmed && answer.sawAnimal() == VetAnswer.SawAnimal.EXAMINED;
        @Nullable Visit open = open();
        if (open != null
                && examined
                && !on.isBefore(open.due().minusDays(policy.progress().earlyDays()))) {
            visits.set(visits.size() - 1, new Visit(open.due(), Optional.of(on)));
            open = null;
        }
        if (answer.nextVisit().isPresent()) {
            Visit next = new Visit(answer.nextVisit().get(), Optional.empty());
            if (open == null) {
                visits.add(next);
            } else if (confirmed || next.due().isBefore(open.due())) {
                visits.set(visits.size() - 1, next);
            }
        }
    }

    private @Nullable Visit open() {
        @Nullable Visit last = visits.isEmpty() ? null : visits.get(visits.size() - 1);
        return last == null || last.doneOn().isPresent() ? null : last;
    }

    private FollowedTask task(int index) {
        QuarantinePolicy.VetVisit rule = policy.vetVisit();
        Visit visit = visits.get(index);
        Task task = new Task(
                TaskKind.VET_VISIT,
                index + 1,
                visit.due(),
                visit.due().plusDays(rule.windowDays()),
                rule.title(),
                rule.instruction(),
                rule.source());
        FollowedTask.State state = visit.doneOn().isPresent()
                ? FollowedTask.State.DONE
                : task.latest().isBefore(asOf) ? FollowedTask.State.OVERDUE : FollowedTask.State.OPEN;
        return new FollowedTask(task, state, visit.doneOn());
    }
}
