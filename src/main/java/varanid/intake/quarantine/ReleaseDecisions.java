package varanid.intake.quarantine;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface ReleaseDecisions extends Repository<ReleaseDecisionRow, RowKey> {

    ReleaseDecisionRow saveAndFlush(ReleaseDecisionRow row);

    @Query("""
            select r from ReleaseDecisionRow r
            where r.key.organisationId = :organisationId and r.animalId = :animalId and r.key.id > :after
            order by r.key.id""")
    List<ReleaseDecisionRow> list(UUID organisationId, UUID animalId, UUID after, Limit limit);

    @Query("""
            select r from ReleaseDecisionRow r
            where r.key.organisationId = :organisationId and r.animalId = :animalId and r.key.id = :id""")
    Optional<ReleaseDecisionRow> find(UUID organisationId, UUID animalId, UUID id);

    @Query("""
            select r from ReleaseDecisionRow r
            where r.key.organisationId = :organisationId and r.animalId = :animalId
            order by r.key.id desc""")
    List<ReleaseDecisionRow> listNewestFirst(UUID organisationId, UUID animalId, Limit limit);
}
