package varanid.intake.sample;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.animal.AnimalChanged;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;

/** Keeps samples, steps and results, and finds them again. Works within the caller's transaction. */
@Component
class SampleStore {

    private static final TypeReference<List<Found>> FOUND = new TypeReference<>() {};

    private final SampleRows samples;
    private final SampleStepRows steps;
    private final SampleResultRows results;
    private final OrganisationLock lock;
    private final ApplicationEventPublisher events;
    private final JsonMapper json;
    private final Ids ids;
    private final Clock clock;

    SampleStore(
            SampleRows samples,
            SampleStepRows steps,
            SampleResultRows results,
            OrganisationLock lock,
            ApplicationEventPublisher events,
            JsonMapper json,
            Ids ids,
            Clock clock) {
        this.samples = samples;
        this.steps = steps;
        this.results = results;
        this.lock = lock;
        this.events = events;
        this.json = json;
        this.ids = ids;
        this.clock = clock;
    }

    Optional<SampleRow> find(UUID organisationId, UUID animalId, UUID id) {
        return samples.find(organisationId, animalId, id);
    }

    Optional<UUID> findSuccessor(UUID organisationId, UUID id) {
        return samples.findSuccessor(organisationId, id).map(SampleRow::id);
    }

    /** Which of them were corrected, and by which. */
    Map<UUID, UUID> successors(UUID organisationId, List<UUID> ids) {
        if (ids.isEmpty()) {
            return Map.of();
        }
        return samples.listSuccessors(organisationId, ids).stream()
                .collect(Collectors.toMap(
                        row -> Optional.ofNullable(row.supersedes()).orElseThrow(), SampleRow::id));
    }

    SampleFile open(UUID organisationId, SampleRow row) {
        return open(organisationId, row.animalId(), List.of(row)).get(0);
    }

    List<SampleFile> list(UUID organisationId, UUID animalId, Page page) {
        return open(organisationId, animalId, samples.list(organisationId, animalId, page.after(), page.fetch()));
    }

    /** Those that nothing has corrected. */
    List<SampleFile> listStanding(UUID organisationId, UUID animalId) {
        return open(organisationId, animalId, samples.listStanding(organisationId, animalId));
    }

    private List<SampleFile> open(UUID organisationId, UUID animalId, List<SampleRow> rows) {
        if (rows.isEmpty()) {
            return List.of();
        }
        List<UUID> firsts = rows.stream().map(SampleRow::firstId).distinct().toList();
        Map<UUID, List<SampleStepRow>> stepsOf = steps.list(organisationId, animalId, firsts).stream()
                .collect(Collectors.groupingBy(SampleStepRow::sampleId));
        Map<UUID, List<SampleFile.Result>> resultsOf = results.list(organisationId, animalId, firsts).stream()
                .map(row -> new SampleFile.Result(row, json.readValue(row.found(), FOUND)))
                .collect(Collectors.groupingBy(result -> result.row().sampleId()));
        return rows.stream()
                .map(row -> new SampleFile(
                        row,
                        stepsOf.getOrDefault(row.firstId(), List.of()),
                        resultsOf.getOrDefault(row.firstId(), List.of())))
                .toList();
    }

    /** @throws ProblemException 422 or 409 where it may not correct what it says it corrects */
    SampleFile add(Caller caller, UUID animalId, NewSample sample) {
        lock.hold(caller.organisationId());
        LocalDate takenOn = LocalDate.ofInstant(sample.takenAt(), caller.zone());
        UUID id = ids.next();
        UUID firstId = id;
        if (sample.supersedes() != null) {
            SampleRow corrected = samples.find(caller.organisationId(), animalId, sample.supersedes())
                    .orElseThrow(() -> notSuch("sample", "animal"));
            mustStand(caller, corrected);
            mustFit(open(caller.organisationId(), corrected), sample, takenOn);
            firstId = corrected.firstId();
        }
        SampleRow row = samples.saveAndFlush(new SampleRow(
                caller.key(id),
                animalId,
                firstId,
                sample.kind().code(),
                sample.takenAt(),
                takenOn,
                sample.passedAt(),
                sample.freshHours(),
                sample.methods(),
                sample.laboratory(),
                sample.storage() == null ? null : sample.storage().code(),
                sample.note(),
                sample.supersedes(),
                caller.personId(),
                clock.instant()));
        changed(caller, animalId);
        return open(caller.organisationId(), row);
    }

    /** @throws ProblemException 422 or 409 where it may not correct what it says it corrects */
    SampleStepRow add(Caller caller, SampleRow sample, NewStep step) {
        lock.hold(caller.organisationId());
        mustStand(caller, sample);
        SampleFile file = open(caller.organisationId(), sample);
        mayBeSuperseded("step", step.supersedes(), file.steps(), SampleStepRow::id, SampleStepRow::supersedes);
        SampleStepRow row = steps.saveAndFlush(new SampleStepRow(
                caller.key(ids.next()),
                sample.animalId(),
                sample.firstId(),
                step.step().code(),
                step.occurredAt(),
                LocalDate.ofInstant(step.occurredAt(), caller.zone()),
                step.laboratory(),
                step.note(),
                step.supersedes(),
                caller.personId(),
                clock.instant()));
        changed(caller, sample.animalId());
        return row;
    }

    /** @throws ProblemException 422 or 409 where it may not correct what it says it corrects */
    SampleFile.Result add(Caller caller, SampleRow sample, NewResult result) {
        lock.hold(caller.organisationId());
        mustStand(caller, sample);
        SampleFile file = open(caller.organisationId(), sample);
        mayBeSuperseded(
                "result",
                result.supersedes(),
                file.results(),
                each -> each.row().id(),
                each -> each.row().supersedes());
        SampleResultRow row = results.saveAndFlush(new SampleResultRow(
                caller.key(ids.next()),
                sample.animalId(),
                sample.firstId(),
                result.method(),
                result.outcome().code(),
                json.writeValueAsString(result.found()),
                result.reportedOn(),
                result.laboratory(),
                result.report(),
                result.supersedes(),
                caller.personId(),
                clock.instant()));
        if (result.supersedes() != null) {
            events.publishEvent(new ResultCorrected(caller.organisationId(), sample.animalId(), result.supersedes()));
        }
        if (result.outcome() == Outcome.POSITIVE) {
            for (Found found : result.found()) {
                events.publishEvent(new AgentFound(
                        caller.organisationId(),
                        sample.animalId(),
                        row.id(),
                        found.agent(),
                        Boolean.TRUE.equals(found.significant()),
                        result.reportedOn(),
                        sample.localDate()));
            }
        }
        changed(caller, sample.animalId());
        return new SampleFile.Result(row, result.found());
    }

    private void changed(Caller caller, UUID animalId) {
        events.publishEvent(AnimalChanged.of(caller.organisationId(), animalId));
    }

    private void mustStand(Caller caller, SampleRow sample) {
        findSuccessor(caller.organisationId(), sample.id()).ifPresent(successor -> {
            throw superseded("sample", successor);
        });
    }

    /** What was recorded of a sample cannot have come before it was taken. */
    private static void mustFit(SampleFile file, NewSample sample, LocalDate takenOn) {
        Optional<LocalDate> reported = file.standingResults().stream()
                .map(each -> each.row().reportedOn())
                .min(Comparator.naturalOrder());
        boolean afterStep =
                file.standingSteps().stream().anyMatch(step -> step.occurredAt().isBefore(sample.takenAt()));
        if (afterStep || reported.isPresent() && reported.get().isBefore(takenOn)) {
            throw new ProblemException(
                    ProblemType.INVALID_REQUEST,
                    "The sample has steps or results that are older.",
                    List.of(Fault.at(
                            "#/takenAt",
                            "is later than a step or result of the sample",
                            "a moment before them, or correct them first")));
        }
    }

    private static <T> void mayBeSuperseded(
            String what,
            @Nullable UUID wanted,
            List<T> all,
            Function<T, UUID> id,
            Function<T, @Nullable UUID> supersedes) {
        if (wanted == null) {
            return;
        }
        if (all.stream().map(id).noneMatch(wanted::equals)) {
            throw notSuch(what, "sample");
        }
        Stream<T> successors = all.stream().filter(each -> wanted.equals(supersedes.apply(each)));
        successors.findFirst().ifPresent(successor -> {
            throw superseded(what, id.apply(successor));
        });
    }

    private static ProblemException notSuch(String what, String of) {
        return new ProblemException(
                ProblemType.INVALID_REQUEST,
                "The " + what + " that is to be superseded is not one of this " + of + ".",
                List.of(Fault.at(
                        "#/supersedes", "is no " + what + " of this " + of, "the id of one of its " + what + "s")));
    }

    private static ProblemException superseded(String what, UUID by) {
        return new ProblemException(
                ProblemType.CONFLICT, "That " + what + " was superseded already, by " + by + ". Use that one.");
    }
}
