package varanid.intake.animal;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface AnimalRows extends Repository<AnimalRow, RowKey> {

    AnimalRow saveAndFlush(AnimalRow row);

    Optional<AnimalRow> findById(RowKey key);

    @Query("""
            select a from AnimalRow a
            where a.key.organisationId = :organisationId and a.key.id > :after
            order by a.key.id""")
    List<AnimalRow> list(UUID organisationId, UUID after, Limit limit);

    @Query("""
            select a from AnimalRow a
            where a.key.organisationId = :organisationId and a.consignmentId = :consignmentId and a.key.id > :after
            order by a.key.id""")
    List<AnimalRow> listOfConsignment(UUID organisationId, UUID consignmentId, UUID after, Limit limit);

    /** @param pattern in small letters; with an exclamation mark before what is meant literally */
    @Query("""
            select a from AnimalRow a
            where a.key.organisationId = :organisationId and a.key.id > :after
            and (lower(a.name) like :pattern escape '!' or lower(a.tag) like :pattern escape '!')
            order by a.key.id""")
    List<AnimalRow> search(UUID organisationId, String pattern, UUID after, Limit limit);

    @Query("""
            select new varanid.intake.animal.AnimalRows$Tagged(a.key.id, a.tag) from AnimalRow a
            where a.key.organisationId = :organisationId and a.key.id in :ids and a.tag is not null""")
    List<Tagged> listTagged(UUID organisationId, Collection<UUID> ids);

    /** An animal and what stands on its cage. */
    record Tagged(UUID id, String tag) {}
}
