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

/** What somebody stated about an authority's hold on an animal. Written once; the last one counts. */
@Entity
@Immutable
@Table(name = "legal_hold")
class LegalHoldRow implements Persistable<RowKey> {

    @EmbeddedId
    RowKey key;

    UUID animalId;
    LocalDate onDay;
    String state;

    @Nullable
    String authority;

    @Nullable
    String reference;

    @Nullable
    String note;

    UUID recordedBy;
    Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected LegalHoldRow() {}

    /** The rest is filled in before it is saved. */
    LegalHoldRow(RowKey key, UUID animalId, LocalDate onDay, String state, UUID recordedBy, Instant recordedAt) {
        this.key = key;
        this.animalId = animalId;
        this.onDay = onDay;
        this.state = state;
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
