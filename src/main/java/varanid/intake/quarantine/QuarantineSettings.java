package varanid.intake.quarantine;

import java.util.List;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;
import varanid.intake.platform.id.RowKey;

interface QuarantineSettings extends Repository<QuarantineSettingRow, RowKey> {

    QuarantineSettingRow saveAndFlush(QuarantineSettingRow row);

    @Query("""
            select s from QuarantineSettingRow s
            where s.key.organisationId = :organisationId
            order by s.version desc""")
    List<QuarantineSettingRow> listNewestFirst(UUID organisationId, Limit limit);

    @Query("""
            select s from QuarantineSettingRow s
            where s.key.organisationId = :organisationId and s.key.id > :after
            order by s.key.id""")
    List<QuarantineSettingRow> list(UUID organisationId, UUID after, Limit limit);
}
