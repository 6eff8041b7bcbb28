package varanid.intake.animal;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface Consignments extends Repository<ConsignmentRow, RowKey> {

    ConsignmentRow save(ConsignmentRow row);

    Optional<ConsignmentRow> findById(RowKey key);

    boolean existsById(RowKey key);

    @Query("""
            select cast(count(a) as int) from AnimalRow a
            where a.key.organisationId = :organisationId and a.consignmentId = :id""")
    int countAnimals(UUID organisationId, UUID id);

    @Query("""
            select c from ConsignmentRow c
            where c.key.organisationId = :organisationId and c.key.id > :after
            order by c.key.id""")
    List<ConsignmentRow> list(UUID organisationId, UUID after, Limit limit);
}
