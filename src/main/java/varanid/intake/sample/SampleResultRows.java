package varanid.intake.sample;

import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface SampleResultRows extends Repository<SampleResultRow, RowKey> {

    SampleResultRow saveAndFlush(SampleResultRow row);

    /** All of these samples, superseded ones too, in the order they were recorded. */
    @Query("""
            select r from SampleResultRow r
            where r.key.organisationId = :organisationId and r.animalId = :animalId
            and r.sampleId in :sampleIds
            order by r.key.id""")
    List<SampleResultRow> list(UUID organisationId, UUID animalId, Collection<UUID> sampleIds);
}
