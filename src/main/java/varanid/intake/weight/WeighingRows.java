package varanid.intake.weight;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface WeighingRows extends Repository<WeighingRow, RowKey> {

    WeighingRow saveAndFlush(WeighingRow row);

    @Query("""
            select w from WeighingRow w
            where w.key.organisationId = :organisationId and w.animalId = :animalId and w.key.id = :id""")
    Optional<WeighingRow> find(UUID organisationId, UUID animalId, UUID id);

    @Query("""
            select w from WeighingRow w
            where w.key.organisationId = :organisationId and w.supersedes in :ids""")
    List<WeighingRow> listSuccessors(UUID organisationId, List<UUID> ids);

    /** Those that correct weights of the registration. */
    @Query("""
            select w from WeighingRow w
            where w.key.organisationId = :organisationId and w.animalId = :animalId
            and w.supersedesFirst is not null""")
    List<WeighingRow> listCorrectionsOfFirst(UUID organisationId, UUID animalId);

    @Query("""
            select w from WeighingRow w
            where w.key.organisationId = :organisationId and w.animalId = :animalId and w.key.id > :after
            order by w.key.id""")
    List<WeighingRow> list(UUID organisationId, UUID animalId, UUID after, Limit limit);

    /** Those that nothing has corrected, the latest first. */
    @Query("""
            select w from WeighingRow w
            where w.key.organisationId = :organisationId and w.animalId = :animalId and w.localDate <= :asOf
            and not exists (
                select 1 from WeighingRow later
                where later.key.organisationId = :organisationId and later.supersedes = w.key.id)
            order by w.occurredAt desc, w.key.id desc""")
    List<WeighingRow> listStanding(UUID organisationId, UUID animalId, LocalDate asOf, Limit limit);
}
