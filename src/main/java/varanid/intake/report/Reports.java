package varanid.intake.report;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.animal.AnimalChanged;
import varanid.intake.animal.Animals;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Correctable;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;

/** Keeps reports, and says what they come to. */
@Service
public class Reports {

    private static final Correctable REPORT = new Correctable("report", "report", "reports");

    private final ReportRows rows;
    private final ReportPeople people;
    private final ReportWords words;
    private final Animals animals;
    private final OrganisationLock lock;
    private final ApplicationEventPublisher events;
    private final JsonMapper json;
    private final Ids ids;
    private final Clock clock;

    Reports(
            ReportRows rows,
            ReportPeople people,
            ReportWords words,
            Animals animals,
            OrganisationLock lock,
            ApplicationEventPublisher events,
            JsonMapper json,
            Ids ids,
            Clock clock) {
        this.rows = rows;
        this.people = people;
        this.words = words;
        this.animals = animals;
        this.lock = lock;
        this.events = events;
        this.json = json;
        this.ids = ids;
        this.clock = clock;
    }

    /** What the standing reports of the animal say; of an animal that is not there, nothing. */
    @Transactional(readOnly = true)
    public Standing find(UUID organisationId, UUID animalId) {
        return Standing.of(views(organisationId, rows.listStanding(organisationId, animalId)).stream()
                .map(each -> new Standing.Kept(
                        each.id(), each.occurredAt(), each.localDate(), each.recordedBy(), each.told()))
                .toList());
    }

    /**
     * Reads a report and keeps it.
     *
     * @return its id
     * @throws ProblemException 404 where the organisation has no such animal, 422 with every fault of the request, 409
     *     where it corrects what was corrected already
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public UUID keep(Caller caller, UUID animalId, JsonRequest request) {
        requireAnimal(caller, animalId);
        return keep(caller, animalId, read(caller, request)).id();
    }

    NewReport read(Caller caller, JsonRequest request) {
        Present present = Present.at(clock, caller.zone());
        return request.read(fields -> NewReport.read(fields, words, present));
    }

    @Transactional(propagation = Propagation.MANDATORY)
    ReportView keep(Caller caller, UUID animalId, NewReport report) {
        lock.hold(caller.organisationId());
        UUID organisation = caller.organisationId();
        @Nullable UUID supersedes = report.supersedes();
        if (supersedes != null) {
            REPORT.check(
                    rows.find(organisation, animalId, supersedes).isPresent(),
                    () -> rows.listSuccessors(organisation, List.of(supersedes)).stream()
                            .map(ReportRow::id)
                            .findFirst());
        }
        ReportRow kept = rows.saveAndFlush(new ReportRow(
                caller.key(ids.next()),
                animalId,
                caller.personId(),
                report.occurredAt(),
                clock.instant(),
                LocalDate.ofInstant(report.occurredAt(), caller.zone()),
                supersedes,
                json.writeValueAsString(report.told().with(Told.People.NOBODY))));
        if (!report.told().people().saysNothing()) {
            people.keep(organisation, kept.id(), report.told().people());
        }
        events.publishEvent(AnimalChanged.of(organisation, animalId));
        return views(organisation, List.of(kept)).get(0);
    }

    @Transactional(readOnly = true)
    List<ReportView> list(Caller caller, UUID animalId, Page page) {
        requireAnimal(caller, animalId);
        return views(caller.organisationId(), rows.list(caller.organisationId(), animalId, page.after(), page.fetch()));
    }

    @Transactional(readOnly = true)
    Optional<ReportView> find(Caller caller, UUID animalId, UUID id) {
        return rows.find(caller.organisationId(), animalId, id)
                .map(row -> views(caller.organisationId(), List.of(row)).get(0));
    }

    /**
     * Removes who is in a report, for good. What was told of the animal stays.
     *
     * @throws ProblemException 404 where the animal has no such report
     */
    @Transactional(propagation = Propagation.MANDATORY)
    ReportView removePeople(Caller caller, UUID animalId, UUID id) {
        lock.hold(caller.organisationId());
        ReportRow row =
                rows.find(caller.organisationId(), animalId, id).orElseThrow(() -> ProblemException.notFound("report"));
        people.remove(caller, id, clock.instant());
        events.publishEvent(AnimalChanged.of(caller.organisationId(), animalId));
        return views(caller.organisationId(), List.of(row)).get(0);
    }

    void requireAnimal(Caller caller, UUID animalId) {
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
    }

    private List<ReportView> views(UUID organisationId, List<ReportRow> reports) {
        if (reports.isEmpty()) {
            return List.of();
        }
        List<UUID> all = reports.stream().map(ReportRow::id).toList();
        Map<UUID, ReportPeople.Found> found = people.list(organisationId, all);
        Map<UUID, UUID> successors = rows.listSuccessors(organisationId, all).stream()
                .collect(Collectors.toMap(each -> Objects.requireNonNull(each.supersedes()), ReportRow::id));
        return reports.stream()
                .map(row -> {
                    ReportPeople.Found its = found.getOrDefault(row.id(), ReportPeople.Found.NOBODY);
                    ReportPeople.@Nullable Removed removed = its.removed();
                    return new ReportView(
                            row.id(),
                            row.animalId(),
                            row.recordedBy(),
                            row.occurredAt(),
                            row.recordedAt(),
                            row.localDate(),
                            row.supersedes(),
                            successors.get(row.id()),
                            removed == null ? null : new ReportView.PeopleRemoved(removed.at(), removed.by()),
                            json.readValue(row.told(), Told.class).with(its.people()));
                })
                .toList();
    }
}
