package varanid.intake.sample;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface SettingRows extends Repository<SettingRow, RowKey> {

    SettingRow saveAndFlush(SettingRow row);

    @Query("""
            select s from SettingRow s
            where s.key.organisationId = :organisationId
            and s.version = (
                select max(latest.version) from SettingRow latest
                where latest.key.organisationId = :organisationId)""")
    Optional<SettingRow> findLatest(UUID organisationId);

    @Query("""
            select s from SettingRow s
            where s.key.organisationId = :organisationId and s.key.id > :after
            order by s.key.id""")
    List<SettingRow> list(UUID organisationId, UUID after, Limit limit);
}
