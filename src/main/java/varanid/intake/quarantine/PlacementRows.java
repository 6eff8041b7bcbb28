package varanid.intake.quarantine;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface PlacementRows extends Repository<PlacementRow, RowKey> {

    PlacementRow saveAndFlush(PlacementRow row);

    @Query("""
            select p from PlacementRow p
            where p.key.organisationId = :organisationId and p.animalId = :animalId and p.key.id > :after
            order by p.key.id""")
    List<PlacementRow> list(UUID organisationId, UUID animalId, UUID after, Limit limit);

    @Query("""
            select p from PlacementRow p
            where p.key.organisationId = :organisationId and p.animalId = :animalId and p.key.id = :id""")
    Optional<PlacementRow> find(UUID organisationId, UUID animalId, UUID id);

    /** Those that were not withdrawn, in order; their days never fall. */
    @Query("""
            select p from PlacementRow p
            where p.key.organisationId = :organisationId and p.animalId = :animalId and p.kind <> 'withdrawn'
            and not exists (
                select 1 from PlacementRow w
                where w.key.organisationId = :organisationId and w.about = p.key.id)
            order by p.key.id""")
    List<PlacementRow> listStanding(UUID organisationId, UUID animalId);

    @Query("""
            select w from PlacementRow w
            where w.key.organisationId = :organisationId and w.about in :ids""")
    List<PlacementRow> listWithdrawals(UUID organisationId, List<UUID> ids);

    /** Animals that stand in a room of that kind now, in id order. */
    @Query("""
            select p.animalId from PlacementRow p
            join RoomRow r on r.key.organisationId = p.key.organisationId and r.key.id = p.roomId
            where p.key.organisationId = :organisationId and p.kind = 'placed' and r.kind = :kind
            and p.animalId > :after
            and not exists (
                select 1 from PlacementRow w
                where w.key.organisationId = :organisationId and w.about = p.key.id)
            and not exists (
                select 1 from PlacementRow later
                where later.key.organisationId = :organisationId and later.animalId = p.animalId
                and later.key.id > p.key.id and later.kind <> 'withdrawn'
                and not exists (
                    select 1 from PlacementRow lw
                    where lw.key.organisationId = :organisationId and lw.about = later.key.id))
            order by p.animalId""")
    List<UUID> listAnimalsInRoomsOfKind(UUID organisationId, String kind, UUID after, Limit limit);
}
