package varanid.intake.reminder;

import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.id.RowKey;
import varanid.intake.platform.web.SecretText;

@Entity
@Table(name = "calendar_link")
class CalendarLinkRow {

    @EmbeddedId
    private RowKey key;

    @Version
    private @Nullable Long version;

    private UUID personId;
    private @Nullable UUID animalId;
    private String form;
    private String label;
    private String hint;
    private byte[] secretHash;

    /** Written by {@link CalendarLinks#noteFetch}, without a version: a fetch must not clash with a revocation. */
    @Column(insertable = false, updatable = false)
    private @Nullable LocalDate lastFetchedOn;

    private @Nullable Instant revokedAt;
    private Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected CalendarLinkRow() {}

    CalendarLinkRow(
            RowKey key,
            UUID personId,
            @Nullable UUID animalId,
            CalendarFeed.As form,
            String label,
            SecretText secret,
            Instant recordedAt) {
        this.key = key;
        this.personId = personId;
        this.animalId = animalId;
        this.form = form.code();
        this.label = label;
        this.hint = secret.hint();
        this.secretHash = secret.hash();
        this.recordedAt = recordedAt;
    }

    /** Revoked once stays revoked, since then. */
    void revoke(Instant at) {
        if (revokedAt == null) {
            revokedAt = at;
        }
    }

    RowKey key() {
        return key;
    }

    UUID id() {
        return key.id();
    }

    UUID organisationId() {
        return key.organisationId();
    }

    UUID personId() {
        return personId;
    }

    /** Empty: of all animals. */
    Optional<UUID> animalId() {
        return Optional.ofNullable(animalId);
    }

    CalendarFeed.As form() {
        return Arrays.stream(CalendarFeed.As.values())
                .filter(each -> each.code().equals(form))
                .findFirst()
                .orElseThrow();
    }

    String label() {
        return label;
    }

    String hint() {
        return hint;
    }

    @Nullable
    LocalDate lastFetchedOn() {
        return lastFetchedOn;
    }

    @Nullable
    Instant revokedAt() {
        return revokedAt;
    }

    Instant recordedAt() {
        return recordedAt;
    }
}
