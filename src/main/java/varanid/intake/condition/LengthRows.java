package varanid.intake.condition;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface LengthRows extends Repository<LengthRow, RowKey> {

    LengthRow saveAndFlush(LengthRow row);

    @Query("""
            select l from LengthRow l
            where l.key.organisationId = :organisationId and l.animalId = :animalId and l.key.id = :id""")
    Optional<LengthRow> find(UUID organisationId, UUID animalId, UUID id);

    @Query("""
            select l from LengthRow l
            where l.key.organisationId = :organisationId and l.supersedes in :ids""")
    List<LengthRow> listSuccessors(UUID organisationId, List<UUID> ids);

    /** Those that correct lengths of the registration. */
    @Query("""
            select l from LengthRow l
            where l.key.organisationId = :organisationId and l.animalId = :animalId
            and l.supersedesFirst is not null""")
    List<LengthRow> listCorrectionsOfFirst(UUID organisationId, UUID animalId);

    @Query("""
            select l from LengthRow l
            where l.key.organisationId = :organisationId and l.animalId = :animalId and l.key.id > :after
            order by l.key.id""")
    List<LengthRow> list(UUID organisationId, UUID animalId, UUID after, Limit limit);

    /** Those that nothing has corrected, the latest first. */
    @Query("""
            select l from LengthRow l
            where l.key.organisationId = :organisationId and l.animalId = :animalId and l.localDate <= :asOf
            and not exists (
                select 1 from LengthRow later
                where later.key.organisationId = :organisationId and later.supersedes = l.key.id)
            order by l.occurredAt desc, l.key.id desc""")
    List<LengthRow> listStanding(UUID organisationId, UUID animalId, LocalDate asOf, Limit limit);
}
