package varanid.intake.share;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** That a link was revoked. It is written with plain SQL, once for each link. */
@Entity
@Immutable
@Table(name = "share_link_revocation")
class ShareLinkRevocationRow {

    @EmbeddedId
    Key key;

    UUID recordedBy;
    Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected ShareLinkRevocationRow() {}

    @Embeddable
    record Key(UUID organisationId, UUID linkId) implements Serializable {}
}
