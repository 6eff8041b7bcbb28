package varanid.intake.share;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What became of a link.
 *
 * @param revokedAt null: it was not
 * @param openings how many there were
 * @param lastOpenedAt null: it never was
 * @param issuerActive whether the person who gave it out still is an active person of the organisation
 */
record LinkUse(
        @Nullable Instant revokedAt, int openings, @Nullable Instant lastOpenedAt, boolean issuerActive) {

    /** In one word; the reason that stays comes first. */
    String state(Instant expiresAt, Instant now) {
        if (revokedAt != null) {
            return "revoked";
        } else if (!expiresAt.isAfter(now)) {
            return "expired";
        }
        return issuerActive ? "open" : "issuer-left";
    }
}
