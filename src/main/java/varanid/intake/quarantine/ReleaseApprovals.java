package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface ReleaseApprovals extends Repository<ReleaseApprovalRow, RowKey> {

    ReleaseApprovalRow saveAndFlush(ReleaseApprovalRow row);

    @Query("""
            select r from ReleaseApprovalRow r
            where r.key.organisationId = :organisationId and r.animalId = :animalId and r.key.id > :after
            order by r.key.id""")
    List<ReleaseApprovalRow> list(UUID organisationId, UUID animalId, UUID after, Limit limit);

    @Query("""
            select r from ReleaseApprovalRow r
            where r.key.organisationId = :organisationId and r.animalId = :animalId and r.key.id = :id""")
    Optional<ReleaseApprovalRow> find(UUID organisationId, UUID animalId, UUID id);

    /** What followed from these answers of a vet, in the order it was recorded. */
    @Query("""
            select r from ReleaseApprovalRow r
            where r.key.organisationId = :organisationId and r.animalId = :animalId and r.answerId in :answers
            order by r.key.id""")
    List<ReleaseApprovalRow> listOfAnswers(UUID organisationId, UUID animalId, List<UUID> answers);

    /** Of one day the one recorded later comes first. */
    @Query("""
            select r from ReleaseApprovalRow r
            where r.key.organisationId = :organisationId and r.animalId = :animalId and r.onDay <= :day
            order by r.onDay desc, r.key.id desc""")
    List<ReleaseApprovalRow> listNewestFirst(UUID organisationId, UUID animalId, LocalDate day, Limit limit);
}
