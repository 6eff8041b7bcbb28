package varanid.intake.vet;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;
import varanid.intake.platform.id.RowKey;

/** A clinician vouched for the writer of an answer. Written once. */
@Entity
@Immutable
@Table(name = "vet_answer_confirmation")
class ConfirmationRow implements Persistable<RowKey> {

    @EmbeddedId
    RowKey key;

    UUID animalId;
    UUID answerId;

    @Nullable
    String note;

    UUID recordedBy;
    Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected ConfirmationRow() {}

    ConfirmationRow(
            RowKey key, UUID animalId, UUID answerId, @Nullable String note, UUID recordedBy, Instant recordedAt) {
        this.key = key;
        this.animalId = animalId;
        this.answerId = answerId;
        this.note = note;
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
