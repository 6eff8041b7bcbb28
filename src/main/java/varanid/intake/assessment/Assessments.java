package varanid.intake.assessment;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.animal.AnimalChanged;
import varanid.intake.animal.Animals;
import varanid.intake.checklist.Catalogue;
import varanid.intake.checklist.Edition;
import varanid.intake.enclosure.EnclosureReadings;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Correctable;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;

/** Keeps looks at animals, and what they came to. */
@Service
public class Assessments {

    private static final Correctable ASSESSMENT = new Correctable("assessment", "assessment", "assessments");

    private final AssessmentRows rows;
    private final StoredLooks stored;
    private final ChecklistsInUse checklists;
    private final Animals animals;
    private final Catalogue catalogue;
    private final AnswersFromRecords records;
    private final EnclosureReadings enclosures;
    private final OrganisationLock lock;
    private final ApplicationEventPublisher events;
    private final Ids ids;
    private final Clock clock;

    Assessments(
            AssessmentRows rows,
            StoredLooks stored,
            ChecklistsInUse checklists,
            Animals animals,
            Catalogue catalogue,
            AnswersFromRecords records,
            EnclosureReadings enclosures,
            OrganisationLock lock,
            ApplicationEventPublisher events,
            Ids ids,
            Clock clock) {
        this.rows = rows;
        this.stored = stored;
        this.checklists = checklists;
        this.animals = animals;
        this.catalogue = catalogue;
        this.records = records;
        this.enclosures = enclosures;
        this.lock = lock;
        this.events = events;
        this.ids = ids;
        this.clock = clock;
    }

    /**
     * Reads a look, scores it and keeps it; a look that the same person has sent with the same form before is not kept
     * again.
     *
     * @return its id
     * @throws ProblemException 404 where the organisation has no such animal, 422 with every fault of the look, or where
     *     its form came with something else before, 409 where it corrects what was corrected already
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public UUID keep(Caller caller, UUID animalId, JsonRequest request) {
        return keep(caller, animalId, read(caller, animalId, request)).id();
    }

    /** Reads a look; what it does not say about the animal is taken from the animal's record. */
    NewAssessment read(Caller caller, UUID animalId, JsonRequest request) {
        Animals.Newcomer animal =
                animals.find(caller.organisationId(), animalId).orElseThrow(() -> ProblemException.notFound("animal"));
        Map<String, String> known = Map.of("lifeStage", animal.lifeStage().code(), "origin", animal.steeringOrigin());
        Present present = Present.at(clock, caller.zone());
        return request.read(fields -> NewAssessment.read(
                fields, catalogue, known, present, HexFormat.of().formatHex(request.hash())));
    }

    /** Scores the look as it counts for this animal on that day, and keeps it, unless its form was kept before. */
    @Transactional(propagation = Propagation.MANDATORY)
    AssessmentRow keep(Caller caller, UUID animalId, NewAssessment given) {
        Edition edition = given.look().edition();
        checklists.hold(caller.organisationId(), edition);
        // Or two looks at once could both use up the day's excuse, or both correct the same.
        lock.hold(caller.organisationId());
        Optional<AssessmentRow> before = findSentBefore(caller, animalId, given.form());
        if (before.isPresent()) {
            return before.get();
        }
        if (given.supersedes() != null) {
            mayBeSuperseded(caller, animalId, given.supersedes());
        }
        AnswersFromRecords.Filled filled = records.fill(caller, animalId, given);
        NewAssessment look = filled.look();
        Instant now = clock.instant();
        LocalDate date = LocalDate.ofInstant(look.occurredAt(), caller.zone());
        ScoreView score = ScoreView.at(
                edition.scorer().score(look.look().look(excusedBefore(caller, animalId, look, date))),
                edition,
                look.occurredAt(),
                caller.zone());
        UUID id = ids.next();
        AssessmentView view = new AssessmentView(
                id,
                animalId,
                caller.personId(),
                look.occurredAt(),
                now,
                look.supersedes(),
                look.reason(),
                look.look().attributes(),
                look.look().conditions(),
                AssessmentView.TemperatureView.of(look.skinTemperature()),
                look.look().answersAsGiven(),
                filled.from().isEmpty() ? null : filled.from(),
                lessCertain(caller, animalId, look, date),
                look.note(),
                score);
        AssessmentRow kept = rows.saveAndFlush(new AssessmentRow(
                caller.key(id),
                animalId,
                caller.personId(),
                look.occurredAt(),
                now,
                date,
                score,
                look.supersedes(),
                look.form(),
                CanonicalJson.of(view)));
        events.publishEvent(
                new LookKept(caller.organisationId(), stored.kept(kept), Optional.ofNullable(look.supersedes())));
        events.publishEvent(AnimalChanged.of(caller.organisationId(), animalId));
        return kept;
    }

    private Optional<AssessmentRow> findSentBefore(
            Caller caller, UUID animalId, NewAssessment.@Nullable FormSent form) {
        if (form == null) {
            return Optional.empty();
        }
        Optional<AssessmentRow> before =
                rows.findByForm(caller.organisationId(), animalId, caller.personId(), form.key());
        if (before.isPresent() && !before.get().isOf(form)) {
            throw new ProblemException(
                    ProblemType.KEY_REUSED,
                    "This formKey came with another look of the animal before. Use a new key for a new look.");
        }
        return before;
    }

    private @Nullable List<LessCertain> lessCertain(Caller caller, UUID animalId, NewAssessment look, LocalDate date) {
        return enclosures
                .find(caller.organisationId(), animalId, date)
                .map(surroundings -> LessCertain.of(look.look().answersAsGiven().keySet(), surroundings))
                .filter(answers -> !answers.isEmpty())
                .orElse(null);
    }

    private void mayBeSuperseded(Caller caller, UUID animalId, UUID supersedes) {
        ASSESSMENT.check(
                rows.find(caller.organisationId(), animalId, supersedes).isPresent(),
                () -> rows.findSuccessor(caller.organisationId(), supersedes).map(AssessmentRow::id));
    }

    /** What was excused in an earlier look of the day counts fully now; a look that was or is being corrected does not. */
    private Set<String> excusedBefore(Caller caller, UUID animalId, NewAssessment look, LocalDate date) {
        return rows.listStandingOfDay(caller.organisationId(), animalId, date).stream()
                .filter(earlier -> !earlier.id().equals(look.supersedes()))
                .flatMap(earlier -> earlier.excused().stream())
                .collect(Collectors.toSet());
    }
}
