package varanid.intake.account;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface Tokens extends Repository<TokenRow, RowKey> {

    TokenRow save(TokenRow row);

    Optional<TokenRow> findById(RowKey key);

    @Query("""
            select t from TokenRow t
            where t.key.organisationId = :organisationId and t.key.id > :after
            order by t.key.id""")
    List<TokenRow> list(UUID organisationId, UUID after, Limit limit);

    @Query("""
            select t from TokenRow t
            where t.key.organisationId = :organisationId and t.personId = :personId and t.key.id > :after
            order by t.key.id""")
    List<TokenRow> listOfPerson(UUID organisationId, UUID personId, UUID after, Limit limit);

    /** Those of the first start: the only ones that do not expire. */
    @Query("""
            select t from TokenRow t
            where t.key.organisationId = :organisationId and t.expiresAt is null and t.revokedAt is null""")
    List<TokenRow> listWithoutEnd(UUID organisationId);
}
