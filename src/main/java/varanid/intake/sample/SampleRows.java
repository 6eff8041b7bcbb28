package varanid.intake.sample;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface SampleRows extends Repository<SampleRow, RowKey> {

    SampleRow saveAndFlush(SampleRow row);

    @Query("""
            select s from SampleRow s
            where s.key.organisationId = :organisationId and s.animalId = :animalId and s.key.id = :id""")
    Optional<SampleRow> find(UUID organisationId, UUID animalId, UUID id);

    @Query("select s from SampleRow s where s.key.organisationId = :organisationId and s.supersedes = :id")
    Optional<SampleRow> findSuccessor(UUID organisationId, UUID id);

    @Query("select s from SampleRow s where s.key.organisationId = :organisationId and s.supersedes in :ids")
    List<SampleRow> listSuccessors(UUID organisationId, List<UUID> ids);

    @Query("""
            select s from SampleRow s
            where s.key.organisationId = :organisationId and s.animalId = :animalId and s.key.id > :after
            order by s.key.id""")
    List<SampleRow> list(UUID organisationId, UUID animalId, UUID after, Limit limit);

    @Query("""
            select s from SampleRow s
            where s.key.organisationId = :organisationId and s.animalId = :animalId
            and not exists (
                select 1 from SampleRow later
                where later.key.organisationId = :organisationId and later.supersedes = s.key.id)
            order by s.key.id""")
    List<SampleRow> listStanding(UUID organisationId, UUID animalId);
}
