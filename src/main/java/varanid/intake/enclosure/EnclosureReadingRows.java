package varanid.intake.enclosure;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface EnclosureReadingRows extends Repository<EnclosureReadingRow, RowKey> {

    EnclosureReadingRow saveAndFlush(EnclosureReadingRow row);

    @Query("""
            select r from EnclosureReadingRow r
            where r.key.organisationId = :organisationId and r.animalId = :animalId and r.key.id = :id""")
    Optional<EnclosureReadingRow> find(UUID organisationId, UUID animalId, UUID id);

    @Query("""
            select r from EnclosureReadingRow r
            where r.key.organisationId = :organisationId and r.supersedes = :id""")
    Optional<EnclosureReadingRow> findSuccessor(UUID organisationId, UUID id);

    @Query("""
            select r from EnclosureReadingRow r
            where r.key.organisationId = :organisationId and r.supersedes in :ids""")
    List<EnclosureReadingRow> listSuccessors(UUID organisationId, List<UUID> ids);

    @Query("""
            select r from EnclosureReadingRow r
            where r.key.organisationId = :organisationId and r.animalId = :animalId and r.key.id > :after
            order by r.key.id""")
    List<EnclosureReadingRow> list(UUID organisationId, UUID animalId, UUID after, Limit limit);

    /** Those that nothing has corrected, in the order they were taken. */
    @Query("""
            select r from EnclosureReadingRow r
            where r.key.organisationId = :organisationId and r.animalId = :animalId and r.localDate <= :asOf
            and not exists (
                select 1 from EnclosureReadingRow later
                where later.key.organisationId = :organisationId and later.supersedes = r.key.id)
            order by r.occurredAt, r.key.id""")
    List<EnclosureReadingRow> listStanding(UUID organisationId, UUID animalId, LocalDate asOf);
}
