package varanid.intake.animal;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.PostLoad;
import jakarta.persistence.PostPersist;
import jakarta.persistence.Table;
import jakarta.persistence.Transient;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;
import varanid.intake.platform.id.RowKey;

@Entity
@Immutable
@Table(name = "consignment")
class ConsignmentRow implements Persistable<RowKey> {

    @EmbeddedId
    private RowKey key;

    private String name;
    private @Nullable String sender;
    private @Nullable LocalDate arrivedOn;
    private @Nullable String notes;
    private UUID recordedBy;
    private Instant recordedAt;

    @Transient
    private boolean stored;

    @SuppressWarnings("NullAway.Init")
    protected ConsignmentRow() {}

    ConsignmentRow(
            RowKey key,
            String name,
            @Nullable String sender,
            @Nullable LocalDate arrivedOn,
            @Nullable String notes,
            UUID recordedBy,
            Instant recordedAt) {
        this.key = key;
        this.name = name;
        this.sender = sender;
        this.arrivedOn = arrivedOn;
        this.notes = notes;
        this.recordedBy = recordedBy;
        this.recordedAt = recordedAt;
    }

    @PostLoad
    @PostPersist
    void isStored() {
        stored = true;
    }

    @Override
    public RowKey getId() {
        return key;
    }

    @Override
    public boolean isNew() {
        return !stored;
    }

    UUID id() {
        return key.id();
    }

    String name() {
        return name;
    }

    @Nullable
    String sender() {
        return sender;
    }

    @Nullable
    LocalDate arrivedOn() {
        return arrivedOn;
    }

    @Nullable
    String notes() {
        return notes;
    }

    UUID recordedBy() {
        return recordedBy;
    }

    Instant recordedAt() {
        return recordedAt;
    }
}
