package varanid.intake.assessment;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.checklist.Edition;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;

/** Keeps looks at animals, and what they came to. */
@Service
class Assessments {

    private final AssessmentRows rows;
    private final ChecklistsInUse checklists;
    private final JdbcClient jdbc;
    private final Ids ids;
    private final Clock clock;

    Assessments(AssessmentRows rows, ChecklistsInUse checklists, JdbcClient jdbc, Ids ids, Clock clock) {
        this.rows = rows;
        this.checklists = checklists;
        this.jdbc = jdbc;
        this.ids = ids;
        this.clock = clock;
    }

    /** Scores the look as it counts for this animal on that day, and keeps it. */
    @Transactional(propagation = Propagation.MANDATORY)
    public AssessmentRow keep(Caller caller, UUID animalId, NewAssessment look) {
        Edition edition = look.look().edition();
        checklists.hold(caller.organisationId(), edition);
        // One look at an animal at a time, or two at once could both use up the day's excuse, or both correct the same.
        jdbc.sql("SELECT pg_advisory_xact_lock(hashtextextended(?, 0))")
                .param(caller.organisationId() + "/" + animalId)
                .query((row, number) -> number)
                .list();
        if (look.supersedes() != null) {
            mayBeSuperseded(caller, animalId, look.supersedes());
        }
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
                look.look().attributes(),
                look.look().conditions(),
                AssessmentView.TemperatureView.of(look.skinTemperature()),
                look.look().answersAsGiven(),
                look.note(),
                score);
        return rows.saveAndFlush(new AssessmentRow(
                caller.key(id),
                animalId,
                caller.personId(),
                look.occurredAt(),
                now,
                date,
                score,
                look.supersedes(),
                CanonicalJson.of(view)));
    }

    private void mayBeSuperseded(Caller caller, UUID animalId, UUID supersedes) {
        if (rows.find(caller.organisationId(), animalId, supersedes).isEmpty()) {
            throw new ProblemException(
                    ProblemType.INVALID_REQUEST,
                    "The assessment that is to be superseded is not one of this animal.",
                    List.of(Fault.at(
                            "#/supersedes", "is no assessment of this animal", "the id of one of its assessments")));
        }
        rows.findSuccessor(caller.organisationId(), supersedes).ifPresent(successor -> {
            throw new ProblemException(
                    ProblemType.CONFLICT,
                    "That assessment was superseded already, by " + successor.id() + ". Supersede that one.");
        });
    }

    /** What was excused in an earlier look of the day counts fully now; a look that is corrected does not count twice. */
    private Set<String> excusedBefore(Caller caller, UUID animalId, NewAssessment look, LocalDate date) {
        List<AssessmentRow> day = rows.listOfDay(caller.organisationId(), animalId, date);
        Set<UUID> corrected =
                rows
                        .listSuccessors(
                                caller.organisationId(),
                                day.stream().map(AssessmentRow::id).toList())
                        .stream()
                        .map(successor -> Objects.requireNonNull(successor.supersedes()))
                        .collect(Collectors.toSet());
        return day.stream()
                .filter(earlier -> !earlier.id().equals(look.supersedes()) && !corrected.contains(earlier.id()))
                .flatMap(earlier -> earlier.excused().stream())
                .collect(Collectors.toSet());
    }
}
