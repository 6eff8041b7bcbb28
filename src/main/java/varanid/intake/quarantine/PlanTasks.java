package varanid.intake.quarantine;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.animal.Animals;
import varanid.intake.reminder.CalendarTask;
import varanid.intake.reminder.PlannedTask;
import varanid.intake.reminder.TaskSource;
import varanid.intake.vet.Recommendations;

/** Tells calendars the tasks of every quarantine. */
@Component
class PlanTasks implements TaskSource {

    private static final int PAGE = 200;
    /** How long a visit that nobody made is told of, of an animal that is not in quarantine. */
    private static final int VISITS_OF_DAYS = 60;

    private static final int PRIORITY = 5;
    private static final int PRIORITY_OF_PEOPLE = 3;

    private final FollowUps followUps;
    private final Recommendations recommendations;
    private final Animals animals;

    PlanTasks(FollowUps followUps, Recommendations recommendations, Animals animals) {
        this.followUps = followUps;
        this.recommendations = recommendations;
        this.animals = animals;
    }

    @Override
    @Transactional(readOnly = true)
    public List<PlannedTask> tasks(UUID organisationId, ZoneId zone, Optional<UUID> animalId, LocalDate asOf) {
        Names names = new Names(animals, organisationId);
        return animals(organisationId, animalId, asOf).stream()
                .flatMap(animal -> followUps.find(organisationId, zone, animal, asOf).stream())
                .flatMap(followUp -> tasks(followUp, names))
                .toList();
    }

    private List<UUID> animals(UUID organisationId, Optional<UUID> animalId, LocalDate asOf) {
        if (animalId.isPresent()) {
            return List.of(animalId.get());
        }
        Set<UUID> all =
                new TreeSet<>(recommendations.listAnimalsToVisit(organisationId, asOf.minusDays(VISITS_OF_DAYS)));
        UUID after = new UUID(0, 0);
        List<UUID> page;
        do {
            page = followUps.listAnimals(organisationId, after, Limit.of(PAGE));
            all.addAll(page);
            after = page.isEmpty() ? after : page.get(page.size() - 1);
        } while (page.size() == PAGE);
        return List.copyOf(all);
    }

    /** A task that was let pass is told no more: the next of its kind is done instead. */
    private static Stream<PlannedTask> tasks(FollowUp followUp, Names names) {
        return followUp.tasks().stream()
                .filter(each -> each.state() != FollowedTask.State.LET_PASS)
                .map(each -> new PlannedTask(
                        followUp.animalId(),
                        task(
                                caseOf(followUp, each.task()),
                                each.task(),
                                Optional.ofNullable(names.find(followUp.animalId()))),
                        each.state() == FollowedTask.State.DONE));
    }

    /** A vet's visit outlasts a quarantine, and residents have some too: it is the animal's. */
    private static UUID caseOf(FollowUp followUp, Task task) {
        return task.kind() == TaskKind.VET_VISIT
                ? followUp.animalId()
                : followUp.caseId().orElseThrow();
    }

    private static CalendarTask task(UUID caseId, Task task, Optional<String> name) {
        return new CalendarTask(
                caseId,
                task.kind().code(),
                task.ordinal(),
                task.due(),
                task.latest(),
                name.map(called -> task.title() + ": " + called).orElse(task.title()),
                task.instruction(),
                task.kind() == TaskKind.RELEASE_REVIEW || task.kind() == TaskKind.VET_VISIT
                        ? PRIORITY_OF_PEOPLE
                        : PRIORITY);
    }
}
