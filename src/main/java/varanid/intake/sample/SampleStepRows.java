package varanid.intake.sample;

import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface SampleStepRows extends Repository<SampleStepRow, RowKey> {

    SampleStepRow saveAndFlush(SampleStepRow row);

    /** All of these samples, superseded ones too, in the order they were recorded. */
    @Query("""
            select s from SampleStepRow s
            where s.key.organisationId = :organisationId and s.animalId = :animalId
            and s.sampleId in :sampleIds
            order by s.key.id""")
    List<SampleStepRow> list(UUID organisationId, UUID animalId, Collection<UUID> sampleIds);
}
