package varanid.intake.quarantine;

import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.id.RowKey;

/** One air space and one set of tools. */
@Entity
@Table(name = "room")
class RoomRow {

    @EmbeddedId
    private RowKey key;

    @Version
    private @Nullable Long version;

    private String name;

    @Column(updatable = false)
    private String kind;

    private @Nullable String notes;

    @Column(updatable = false)
    private UUID recordedBy;

    @Column(updatable = false)
    private Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected RoomRow() {}

    RoomRow(RowKey key, String name, RoomKind kind, @Nullable String notes, UUID recordedBy, Instant recordedAt) {
        this.key = key;
        this.name = name;
        this.kind = kind.code();
        this.notes = notes;
        this.recordedBy = recordedBy;
        this.recordedAt = recordedAt;
    }

    void change(String newName, @Nullable String newNotes) {
        this.name = newName;
        this.notes = newNotes;
    }

    UUID id() {
        return key.id();
    }

    @Nullable
    Long version() {
        return version;
    }

    String name() {
        return name;
    }

    String kind() {
        return kind;
    }

    boolean isOfResidents() {
        return kind.equals(RoomKind.RESIDENTS.code());
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
