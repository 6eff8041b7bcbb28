package varanid.intake.report;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;
import varanid.intake.platform.id.RowKey;

/** Written once. */
@Entity
@Immutable
@Table(name = "report")
class ReportRow implements Persistable<RowKey> {

    @EmbeddedId
    private RowKey key;

    private UUID animalId;
    private UUID recordedBy;
    private Instant occurredAt;
    private Instant recordedAt;
    private LocalDate localDate;
    private @Nullable UUID supersedes;

    @JdbcTypeCode(SqlTypes.JSON)
    private String told;

    @SuppressWarnings("NullAway.Init")
    protected ReportRow() {}

    ReportRow(
            RowKey key,
            UUID animalId,
            UUID recordedBy,
            Instant occurredAt,
            Instant recordedAt,
            LocalDate localDate,
            @Nullable UUID supersedes,
            String told) {
        this.key = key;
        this.animalId = animalId;
        this.recordedBy = recordedBy;
        this.occurredAt = occurredAt;
        this.recordedAt = recordedAt;
        this.localDate = localDate;
        this.supersedes = supersedes;
        this.told = told;
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

    UUID animalId() {
        return animalId;
    }

    UUID recordedBy() {
        return recordedBy;
    }

    Instant occurredAt() {
        return occurredAt;
    }

    Instant recordedAt() {
        return recordedAt;
    }

    LocalDate localDate() {
        return localDate;
    }

    @Nullable
    UUID supersedes() {
        return supersedes;
    }

    String told() {
        return told;
    }
}
