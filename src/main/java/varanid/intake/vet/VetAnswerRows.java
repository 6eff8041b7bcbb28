package varanid.intake.vet;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface VetAnswerRows extends Repository<VetAnswerRow, RowKey> {

    VetAnswerRow saveAndFlush(VetAnswerRow row);

    @Query("""
            select a from VetAnswerRow a
            where a.key.organisationId = :organisationId and a.animalId = :animalId and a.key.id = :id""")
    Optional<VetAnswerRow> find(UUID organisationId, UUID animalId, UUID id);

    @Query("""
            select a from VetAnswerRow a
            where a.key.organisationId = :organisationId and a.supersedes = :id""")
    Optional<VetAnswerRow> findSuccessor(UUID organisationId, UUID id);

    @Query("""
            select a from VetAnswerRow a
            where a.key.organisationId = :organisationId and a.linkId = :linkId and a.keySha256 = :keySha256
            order by a.key.id""")
    List<VetAnswerRow> listSent(UUID organisationId, UUID linkId, String keySha256);

    @Query("""
            select a from VetAnswerRow a
            where a.key.organisationId = :organisationId and a.animalId = :animalId and a.key.id > :after
            order by a.key.id""")
    List<VetAnswerRow> list(UUID organisationId, UUID animalId, UUID after, Limit limit);

    @Query("""
            select a from VetAnswerRow a
            where a.key.organisationId = :organisationId and a.animalId = :animalId
            order by a.key.id""")
    List<VetAnswerRow> listAll(UUID organisationId, UUID animalId);

    @Query("""
            select distinct r.animalId from VetAnswerRow r
            where r.key.organisationId = :organisationId and r.nextVisit >= :from""")
    List<UUID> listAnimalsToVisit(UUID organisationId, LocalDate from);
}
