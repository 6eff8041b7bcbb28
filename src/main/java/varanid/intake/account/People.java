package varanid.intake.account;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface People extends Repository<PersonRow, RowKey> {

    PersonRow save(PersonRow row);

    PersonRow saveAndFlush(PersonRow row);

    Optional<PersonRow> findById(RowKey key);

    @Query("""
            select p from PersonRow p
            where p.key.organisationId = :organisationId and p.key.id > :after
            order by p.key.id""")
    List<PersonRow> list(UUID organisationId, UUID after, Limit limit);

    @Query("""
            select p from PersonRow p
            where p.key.organisationId = :organisationId and p.administrator and p.active
            order by p.key.id""")
    List<PersonRow> listActiveAdministrators(UUID organisationId);
}
