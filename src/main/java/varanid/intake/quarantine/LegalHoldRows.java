package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface LegalHoldRows extends Repository<LegalHoldRow, RowKey> {

    LegalHoldRow saveAndFlush(LegalHoldRow row);

    @Query("""
            select h from LegalHoldRow h
            where h.key.organisationId = :organisationId and h.animalId = :animalId and h.key.id > :after
            order by h.key.id""")
    List<LegalHoldRow> list(UUID organisationId, UUID animalId, UUID after, Limit limit);

    @Query("""
            select h from LegalHoldRow h
            where h.key.organisationId = :organisationId and h.animalId = :animalId and h.key.id = :id""")
    Optional<LegalHoldRow> find(UUID organisationId, UUID animalId, UUID id);

    /** Of one day the one recorded later comes first. */
    @Query("""
            select h from LegalHoldRow h
            where h.key.organisationId = :organisationId and h.animalId = :animalId and h.onDay <= :day
            order by h.onDay desc, h.key.id desc""")
    List<LegalHoldRow> listNewestFirst(UUID organisationId, UUID animalId, LocalDate day, Limit limit);
}
