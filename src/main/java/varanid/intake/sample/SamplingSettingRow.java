package varanid.intake.sample;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.springframework.data.domain.Persistable;
import varanid.intake.platform.id.RowKey;

/** What an organisation assumes from some time on. Written once. */
@Entity
@Immutable
@Table(name = "sampling_setting")
class SamplingSettingRow implements Persistable<RowKey> {

    @EmbeddedId
    private RowKey key;

    private long version;

    @JdbcTypeCode(SqlTypes.JSON)
    private String figures;

    private String reason;
    private UUID recordedBy;
    private Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected SamplingSettingRow() {}

    SamplingSettingRow(RowKey key, long version, String figures, String reason, UUID recordedBy, Instant recordedAt) {
        this.key = key;
        this.version = version;
        this.figures = figures;
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

    UUID id() {
        return key.id();
    }

    long version() {
        return version;
    }

    String figures() {
        return figures;
    }

    String reason() {
        return reason;
    }

    UUID recordedBy() {
        return recordedBy;
    }

    Instant recordedAt() {
        return recordedAt;
    }
}
