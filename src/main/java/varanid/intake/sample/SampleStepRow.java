package varanid.intake.sample;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;
import varanid.intake.platform.id.RowKey;

/** What became of a sample at one time. Written once. */
@Entity
@Immutable
@Table(name = "sample_step")
class SampleStepRow implements Persistable<RowKey> {

    @EmbeddedId
    private RowKey key;

    private UUID animalId;
    private UUID sampleId;
    private String step;
    private Instant occurredAt;
    private LocalDate localDate;
    private @Nullable String laboratory;
    private @Nullable String note;
    private @Nullable UUID supersedes;
    private UUID recordedBy;
    private Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected SampleStepRow() {}

    SampleStepRow(
            RowKey key,
            UUID animalId,
            UUID sampleId,
            String step,
            Instant occurredAt,
            LocalDate localDate,
            @Nullable String laboratory,
            @Nullable String note,
            @Nullable UUID supersedes,
            UUID recordedBy,
            Instant recordedAt) {
        this.key = key;
        this.animalId = animalId;
        this.sampleId = sampleId;
        this.step = step;
        this.occurredAt = occurredAt;
        this.localDate = localDate;
        this.laboratory = laboratory;
        this.note = note;
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

    String step() {
        return step;
    }

    Instant occurredAt() {
        return occurredAt;
    }

    LocalDate localDate() {
        return localDate;
    }

    @Nullable
    String laboratory() {
        return laboratory;
    }

    @Nullable
    String note() {
        return note;
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
