package varanid.intake.quarantine;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.springframework.data.domain.Persistable;
import varanid.intake.assessment.CanonicalJson;
import varanid.intake.platform.id.RowKey;

/** A named person ended the quarantine of an animal, knowing what the document says. Written once. */
@Entity
@Immutable
@Table(name = "release_decision")
class ReleaseDecisionRow implements Persistable<RowKey> {

    @EmbeddedId
    RowKey key;

    UUID animalId;
    UUID placementId;
    LocalDate onDay;
    String document;
    String documentSha256;

    UUID recordedBy;
    Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected ReleaseDecisionRow() {}

    ReleaseDecisionRow(
            RowKey key,
            UUID animalId,
            UUID placementId,
            LocalDate onDay,
            CanonicalJson document,
            UUID recordedBy,
            Instant recordedAt) {
        this.key = key;
        this.animalId = animalId;
        this.placementId = placementId;
        this.onDay = onDay;
        this.document = document.text();
        this.documentSha256 = document.sha256();
        this.recordedBy = recordedBy;
        this.recordedAt = recordedAt;
    }

    UUID id() {
        return key.id();
    }

    CanonicalJson document() {
        return new CanonicalJson(document, documentSha256);
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
