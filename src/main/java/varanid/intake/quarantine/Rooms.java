package varanid.intake.quarantine;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface Rooms extends Repository<RoomRow, RowKey> {

    RoomRow saveAndFlush(RoomRow row);

    Optional<RoomRow> findById(RowKey key);

    boolean existsById(RowKey key);

    @Query("""
            select r from RoomRow r
            where r.key.organisationId = :organisationId and r.key.id > :after
            order by r.key.id""")
    List<RoomRow> list(UUID organisationId, UUID after, Limit limit);

    /** By their names, as people look for one. */
    @Query("""
            select r from RoomRow r
            where r.key.organisationId = :organisationId
            order by lower(r.name), r.key.id""")
    List<RoomRow> listByName(UUID organisationId, Limit limit);

    /** Whatever its capitals. */
    @Query("""
            select r from RoomRow r
            where r.key.organisationId = :organisationId and lower(r.name) = lower(:name)""")
    Optional<RoomRow> findByName(UUID organisationId, String name);
}
