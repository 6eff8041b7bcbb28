package varanid.intake.share;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.PostLoad;
import jakarta.persistence.PostPersist;
import jakarta.persistence.Table;
import jakarta.persistence.Transient;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;
import varanid.intake.platform.id.RowKey;

/** A link as it was given out. Written once; its revocation stands beside it. */
@Entity
@Immutable
@Table(name = "share_link")
class ShareLinkRow implements Persistable<RowKey> {

    @EmbeddedId
    RowKey key;

    UUID animalId;
    String kind;
    String recipient;

    @Nullable
    String note;

    String hint;
    byte[] secretHash;
    byte[] salt;
    boolean confirms;
    Instant expiresAt;
    UUID recordedBy;
    Instant recordedAt;

    @Transient
    private boolean stored;

    @SuppressWarnings("NullAway.Init")
    protected ShareLinkRow() {}

    /** The rest is filled in before it is saved. */
    @SuppressWarnings("NullAway.Init")
    ShareLinkRow(RowKey key, UUID animalId, LinkKind kind) {
        this.key = key;
        this.animalId = animalId;
        this.kind = kind.code();
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

    LinkKind linkKind() {
        return LinkKind.get(kind);
    }
}
