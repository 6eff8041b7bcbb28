package varanid.intake.quarantine;

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

/** An animal was placed in a room, or is kept here no longer, or that was a mistake. Written once. */
@Entity
@Immutable
@Table(name = "placement")
class PlacementRow implements Persistable<RowKey> {

    static final String PLACED = "placed";
    static final String LEFT = "left";
    static final String WITHDRAWN = "withdrawn";

    @EmbeddedId
    RowKey key;

    UUID animalId;
    String kind;

    @Nullable
    UUID roomId;

    LocalDate onDay;

    @Nullable
    String because;

    @Nullable
    Boolean explained;

    @Nullable
    String reason;

    @Nullable
    UUID about;

    UUID recordedBy;
    Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected PlacementRow() {}

    /** The rest is filled in before it is saved. */
    PlacementRow(RowKey key, UUID animalId, String kind, LocalDate onDay, UUID recordedBy, Instant recordedAt) {
        this.key = key;
        this.animalId = animalId;
        this.kind = kind;
        this.onDay = onDay;
        this.recordedBy = recordedBy;
        this.recordedAt = recordedAt;
    }

    UUID id() {
        return key.id();
    }

    boolean isPlaced() {
        return kind.equals(PLACED);
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
