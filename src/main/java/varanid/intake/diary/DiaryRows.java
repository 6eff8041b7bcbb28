package varanid.intake.diary;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface DiaryRows extends Repository<DiaryRow, RowKey> {

    DiaryRow saveAndFlush(DiaryRow row);

    @Query("""
            select d from DiaryRow d
            where d.key.organisationId = :organisationId and d.animalId = :animalId and d.key.id = :id""")
    Optional<DiaryRow> find(UUID organisationId, UUID animalId, UUID id);

    @Query("""
            select d from DiaryRow d
            where d.key.organisationId = :organisationId and d.supersedes in :ids""")
    List<DiaryRow> listSuccessors(UUID organisationId, List<UUID> ids);

    @Query("""
            select d from DiaryRow d
            where d.key.organisationId = :organisationId and d.animalId = :animalId and d.key.id > :after
            and d.localDate between :from and :to
            order by d.key.id""")
    List<DiaryRow> list(UUID organisationId, UUID animalId, LocalDate from, LocalDate to, UUID after, Limit limit);

    /** The entries that nothing has corrected, in the order they occurred. */
    @Query("""
            select d from DiaryRow d
            where d.key.organisationId = :organisationId and d.animalId = :animalId
            and not exists (
                select 1 from DiaryRow later
                where later.key.organisationId = :organisationId and later.supersedes = d.key.id)
            order by d.occurredAt, d.key.id""")
    List<DiaryRow> listStanding(UUID organisationId, UUID animalId);
}
