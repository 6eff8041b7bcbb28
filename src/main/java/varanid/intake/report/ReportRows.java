package varanid.intake.report;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface ReportRows extends Repository<ReportRow, RowKey> {

    ReportRow saveAndFlush(ReportRow row);

    @Query("""
            select r from ReportRow r
            where r.key.organisationId = :organisationId and r.animalId = :animalId and r.key.id = :id""")
    Optional<ReportRow> find(UUID organisationId, UUID animalId, UUID id);

    @Query("""
            select r from ReportRow r
            where r.key.organisationId = :organisationId and r.supersedes in :ids""")
    List<ReportRow> listSuccessors(UUID organisationId, List<UUID> ids);

    @Query("""
            select r from ReportRow r
            where r.key.organisationId = :organisationId and r.animalId = :animalId and r.key.id > :after
            order by r.key.id""")
    List<ReportRow> list(UUID organisationId, UUID animalId, UUID after, Limit limit);

    /** Those that nothing has corrected, in the order they were told. */
    @Query("""
            select r from ReportRow r
            where r.key.organisationId = :organisationId and r.animalId = :animalId
            and not exists (
                select 1 from ReportRow later
                where later.key.organisationId = :organisationId and later.supersedes = r.key.id)
            order by r.occurredAt, r.key.id""")
    List<ReportRow> listStanding(UUID organisationId, UUID animalId);
}
