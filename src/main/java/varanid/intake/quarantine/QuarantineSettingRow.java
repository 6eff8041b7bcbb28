package varanid.intake.quarantine;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;
import varanid.intake.platform.id.RowKey;

/** How many days the organisation keeps newcomers apart, from one time on. Written once. */
@Entity
@Immutable
@Table(name = "quarantine_setting")
class QuarantineSettingRow implements Persistable<RowKey> {

    @EmbeddedId
    RowKey key;

    long version;

    /** Origin: days. */
    @JdbcTypeCode(SqlTypes.JSON)
    String days;

    @Nullable
    String reason;

    UUID recordedBy;
    Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected QuarantineSettingRow() {}

    QuarantineSettingRow(
            RowKey key, long version, String days, @Nullable String reason, UUID recordedBy, Instant recordedAt) {
        this.key = key;
        this.version = version;
        this.days = days;
        this.reason = reason;
        this.recordedBy = recordedBy;
        this.recordedAt = recordedAt;
    }

    @Override
    public RowKey getId() {
        return key;
    }

    /** Rows are only ever added: saving never looks for an older one. */
    @Override
    public boolean isNew() {
        return true;
    }
}
