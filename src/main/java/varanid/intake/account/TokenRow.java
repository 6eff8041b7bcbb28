package varanid.intake.account;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.id.RowKey;

@Entity
@Table(name = "api_token")
class TokenRow {

    @EmbeddedId
    private RowKey key;

    @Version
    private @Nullable Long version;

    private UUID personId;
    private UUID issuedBy;
    private String label;
    private String hint;
    private byte[] tokenHash;
    private @Nullable Instant expiresAt;
    private @Nullable Instant revokedAt;
    private Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected TokenRow() {}

    TokenRow(
            RowKey key,
            UUID personId,
            UUID issuedBy,
            String label,
            TokenText text,
            @Nullable Instant expiresAt,
            Instant recordedAt) {
        this.key = key;
        this.personId = personId;
        this.issuedBy = issuedBy;
        this.label = label;
        this.hint = text.hint();
        this.tokenHash = text.hash();
        this.expiresAt = expiresAt;
        this.recordedAt = recordedAt;
    }

    /** Revoked once stays revoked, since then. */
    void revoke(Instant at) {
        if (revokedAt == null) {
            revokedAt = at;
        }
    }

    UUID id() {
        return key.id();
    }

    UUID personId() {
        return personId;
    }

    UUID issuedBy() {
        return issuedBy;
    }

    String label() {
        return label;
    }

    String hint() {
        return hint;
    }

    @Nullable
    Instant expiresAt() {
        return expiresAt;
    }

    @Nullable
    Instant revokedAt() {
        return revokedAt;
    }

    Instant recordedAt() {
        return recordedAt;
    }
}
