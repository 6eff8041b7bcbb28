package varanid.intake.assessment;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface AssessmentRows extends Repository<AssessmentRow, RowKey> {

    AssessmentRow saveAndFlush(AssessmentRow row);

    @Query("""
            select a from AssessmentRow a
            where a.key.organisationId = :organisationId and a.animalId = :animalId and a.key.id = :id""")
    Optional<AssessmentRow> find(UUID organisationId, UUID animalId, UUID id);

    @Query("""
            select a from AssessmentRow a
            where a.key.organisationId = :organisationId and a.animalId = :animalId
            and a.observerId = :personId and a.formKey = :formKey""")
    Optional<AssessmentRow> findByForm(UUID organisationId, UUID animalId, UUID personId, UUID formKey);

    @Query("""
            select a from AssessmentRow a
            where a.key.organisationId = :organisationId and a.supersedes = :id""")
    Optional<AssessmentRow> findSuccessor(UUID organisationId, UUID id);

    @Query("""
            select a from AssessmentRow a
            where a.key.organisationId = :organisationId and a.supersedes in :ids""")
    List<AssessmentRow> listSuccessors(UUID organisationId, List<UUID> ids);

    @Query("""
            select a from AssessmentRow a
            where a.key.organisationId = :organisationId and a.animalId = :animalId and a.key.id > :after
            order by a.key.id""")
    List<AssessmentRow> list(UUID organisationId, UUID animalId, UUID after, Limit limit);

    /** The looks of a day that nothing has corrected. */
    @Query("""
            select a from AssessmentRow a
            where a.key.organisationId = :organisationId and a.animalId = :animalId and a.localDate = :date
            and not exists (
                select 1 from AssessmentRow later
                where later.key.organisationId = :organisationId and later.supersedes = a.key.id)""")
    List<AssessmentRow> listStandingOfDay(UUID organisationId, UUID animalId, LocalDate date);

    /** The looks that nothing has corrected, in the order they occurred. */
    @Query("""
            select a from AssessmentRow a
            where a.key.organisationId = :organisationId and a.animalId = :animalId
            and not exists (
                select 1 from AssessmentRow later
                where later.key.organisationId = :organisationId and later.supersedes = a.key.id)
            order by a.occurredAt, a.key.id""")
    List<AssessmentRow> listStanding(UUID organisationId, UUID animalId);

    /** All looks, corrected or not, in the order they occurred. */
    @Query("""
            select a from AssessmentRow a
            where a.key.organisationId = :organisationId and a.animalId = :animalId
            order by a.occurredAt, a.key.id""")
    List<AssessmentRow> listEver(UUID organisationId, UUID animalId);

    /** The looks up to a day that nothing has corrected, the last first. */
    @Query("""
            select a from AssessmentRow a
            where a.key.organisationId = :organisationId and a.animalId = :animalId and a.localDate <= :date
            and not exists (
                select 1 from AssessmentRow later
                where later.key.organisationId = :organisationId and later.supersedes = a.key.id)
            order by a.occurredAt desc, a.key.id desc""")
    List<AssessmentRow> listStandingUpTo(UUID organisationId, UUID animalId, LocalDate date, Limit limit);

    /** The looks by a checklist before one of them that nothing has corrected, the last first. */
    @Query("""
            select a from AssessmentRow a
            where a.key.organisationId = :organisationId and a.animalId = :animalId and a.checklistId = :checklistId
            and (a.occurredAt < :occurredAt or a.occurredAt = :occurredAt and a.key.id < :id)
            and not exists (
                select 1 from AssessmentRow later
                where later.key.organisationId = :organisationId and later.supersedes = a.key.id)
            order by a.occurredAt desc, a.key.id desc""")
    List<AssessmentRow> listStandingBefore(
            UUID organisationId, UUID animalId, String checklistId, Instant occurredAt, UUID id, Limit limit);
}
