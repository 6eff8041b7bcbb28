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

/** What a vet says about ending the quarantine of an animal; the last one counts. Written once. */
@Entity
@Immutable
@Table(name = "release_approval")
class ReleaseApprovalRow implements Persistable<RowKey> {

    @EmbeddedId
    RowKey key;

    UUID animalId;
    LocalDate onDay;
    /** Nothing where a later answer takes back what the vet had said of it. */
    @Nullable
    Boolean approves;

    @Nullable
    String note;

    /** The answer that it follows from. */
    @Nullable
    UUID answerId;

    /** Who answered, as that answer says. */
    @Nullable
    String answeredBy;

    @Nullable
    UUID recordedBy;

    Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected ReleaseApprovalRow() {}

    ReleaseApprovalRow(
            RowKey key,
            UUID animalId,
            LocalDate onDay,
            @Nullable Boolean approves,
            @Nullable String note,
            @Nullable UUID recordedBy,
            Instant recordedAt) {
        this.key = key;
        this.animalId = animalId;
        this.onDay = onDay;
        this.approves = approves;
        this.note = note;
        this.recordedBy = recordedBy;
        this.recordedAt = recordedAt;
    }

    UUID id() {
        return key.id();
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
