package varanid.intake.share;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface ShareLinkRows extends Repository<ShareLinkRow, RowKey> {

    ShareLinkRow saveAndFlush(ShareLinkRow row);

    @Query("""
            select l from ShareLinkRow l
            where l.key.organisationId = :organisationId and l.animalId = :animalId and l.key.id = :id""")
    Optional<ShareLinkRow> find(UUID organisationId, UUID animalId, UUID id);

    @Query("""
            select l from ShareLinkRow l
            where l.key.organisationId = :organisationId and l.animalId = :animalId and l.key.id > :after
            order by l.key.id""")
    List<ShareLinkRow> list(UUID organisationId, UUID animalId, UUID after, Limit limit);

    @Query("""
            select l from ShareLinkRow l
            where l.key.organisationId = :organisationId and l.animalId = :animalId
            order by l.key.id desc""")
    List<ShareLinkRow> listLatest(UUID organisationId, UUID animalId, Limit limit);

    @Query("""
            select l from ShareLinkRow l
            where l.key.organisationId = :organisationId and l.animalId = :animalId and l.key.id < :before
            order by l.key.id desc""")
    List<ShareLinkRow> listBefore(UUID organisationId, UUID animalId, UUID before, Limit limit);

    /** The one that opens with that secret now. The database compares hashes, so its timing says nothing of a secret. */
    @Query("""
            select l from ShareLinkRow l
            where l.key.organisationId = :organisationId and l.secretHash = :secretHash and l.kind = :kind
            and l.expiresAt > :now
            and not exists (
                select 1 from ShareLinkRevocationRow r
                where r.key.organisationId = :organisationId and r.key.linkId = l.key.id)""")
    Optional<ShareLinkRow> findOpen(UUID organisationId, byte[] secretHash, String kind, Instant now);
}
