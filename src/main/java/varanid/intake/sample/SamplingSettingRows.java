package varanid.intake.sample;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface SamplingSettingRows extends Repository<SamplingSettingRow, RowKey> {

    SamplingSettingRow saveAndFlush(SamplingSettingRow row);

    @Query("""
            select s from SamplingSettingRow s
            where s.key.organisationId = :organisationId
            and s.version = (
                select max(latest.version) from SamplingSettingRow latest
                where latest.key.organisationId = :organisationId)""")
    Optional<SamplingSettingRow> findLatest(UUID organisationId);

    @Query("""
            select s from SamplingSettingRow s
            where s.key.organisationId = :organisationId and s.key.id > :after
            order by s.key.id""")
    List<SamplingSettingRow> list(UUID organisationId, UUID after, Limit limit);
}
