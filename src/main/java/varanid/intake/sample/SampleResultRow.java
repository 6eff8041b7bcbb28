package varanid.intake.sample;

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

/** What one method found in a sample. Written once. */
@Entity
@Immutable
@Table(name = "sample_result")
class SampleResultRow implements Persistable<RowKey> {

    @EmbeddedId
    private RowKey key;

    private UUID animalId;
    private UUID sampleId;
    private String method;
    private String outcome;

    @JdbcTypeCode(SqlTypes.JSON)
    private String found;

    private LocalDate reportedOn;
    private @Nullable String laboratory;
    private @Nullable String report;
    private @Nullable UUID supersedes;
    private UUID recordedBy;
    private Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected SampleResultRow() {}

    SampleResultRow(
            RowKey key,
            UUID animalId,
            UUID sampleId,
            String method,
            String outcome,
            String found,
            LocalDate reportedOn,
            @Nullable String laboratory,
            @Nullable String report,
            @Nullable UUID supersedes,
            UUID recordedBy,
            Instant recordedAt) {
        this.key = key;
        this.animalId = animalId;
        this.sampleId = sampleId;
        this.method = method;
        this.outcome = outcome;
        this.found = found;
        this.reportedOn = reportedOn;
        this.laboratory = laboratory;
        this.report = report;
        this.supersedes = supersedes;
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

    UUID animalId() {
        return animalId;
    }

    UUID sampleId() {
        return sampleId;
    }

    String method() {
        return method;
    }

    String outcome() {
        return outcome;
    }

    String found() {
        return found;
    }

    LocalDate reportedOn() {
        return reportedOn;
    }

    @Nullable
    String laboratory() {
        return laboratory;
    }

    @Nullable
    String report() {
        return report;
    }

    @Nullable
    UUID supersedes() {
        return supersedes;
    }

    UUID recordedBy() {
        return recordedBy;
    }

    Instant recordedAt() {
        return recordedAt;
    }
}
