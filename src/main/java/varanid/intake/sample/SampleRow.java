package varanid.intake.sample;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;
import varanid.intake.platform.id.RowKey;

/** A sample as it was first written down, or as it was corrected. Written once. */
@Entity
@Immutable
@Table(name = "sample")
class SampleRow implements Persistable<RowKey> {

    @EmbeddedId
    private RowKey key;

    private UUID animalId;
    private UUID firstId;
    private String kind;
    private Instant takenAt;
    private LocalDate localDate;
    private @Nullable Instant passedAt;
    private @Nullable Integer freshHours;
    private List<String> methods;
    private @Nullable String laboratory;
    private @Nullable String storage;
    private @Nullable String note;
    private @Nullable UUID supersedes;
    private UUID recordedBy;
    private Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected SampleRow() {}

    SampleRow(
            RowKey key,
            UUID animalId,
            UUID firstId,
            String kind,
            Instant takenAt,
            LocalDate localDate,
            @Nullable Instant passedAt,
            @Nullable Integer freshHours,
            List<String> methods,
            @Nullable String laboratory,
            @Nullable String storage,
            @Nullable String note,
            @Nullable UUID supersedes,
            UUID recordedBy,
            Instant recordedAt) {
        this.key = key;
        this.animalId = animalId;
        this.firstId = firstId;
        this.kind = kind;
        this.takenAt = takenAt;
        this.localDate = localDate;
        this.passedAt = passedAt;
        this.freshHours = freshHours;
        this.methods = methods;
        this.laboratory = laboratory;
        this.storage = storage;
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

    UUID firstId() {
        return firstId;
    }

    String kind() {
        return kind;
    }

    Instant takenAt() {
        return takenAt;
    }

    LocalDate localDate() {
        return localDate;
    }

    @Nullable
    Instant passedAt() {
        return passedAt;
    }

    @Nullable
    Integer freshHours() {
        return freshHours;
    }

    List<String> methods() {
        return methods;
    }

    @Nullable
    String laboratory() {
        return laboratory;
    }

    @Nullable
    String storage() {
        return storage;
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
