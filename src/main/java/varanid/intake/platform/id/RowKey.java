package varanid.intake.platform.id;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.io.Serializable;
import java.util.UUID;

/**
 * The key of every row: whose it is, then which one.
 *
 * @param organisationId the organisation the row belongs to
 * @param id the row within it
 */
@Embeddable
public record RowKey(
        @Column(name = "organisation_id", nullable = false, updatable = false)
        UUID organisationId,

        @Column(name = "id", nullable = false, updatable = false)
        UUID id)
        implements Serializable {}
