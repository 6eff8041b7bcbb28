package varanid.intake.account;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.time.ZoneId;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

@Entity
@Table(name = "organisation")
class OrganisationRow {

    @Id
    @Column(name = "organisation_id")
    private UUID organisationId;

    @Version
    private @Nullable Long version;

    private String name;
    private String zone;
    private @Nullable String phone;
    private boolean madeAtFirstStart;
    private Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected OrganisationRow() {}

    OrganisationRow(
            UUID organisationId,
            String name,
            ZoneId zone,
            @Nullable String phone,
            boolean madeAtFirstStart,
            Instant recordedAt) {
        this.organisationId = organisationId;
        this.name = name;
        this.zone = zone.getId();
        this.phone = phone;
        this.madeAtFirstStart = madeAtFirstStart;
        this.recordedAt = recordedAt;
    }

    void change(String newName, ZoneId newZone, @Nullable String newPhone) {
        this.name = newName;
        this.zone = newZone.getId();
        this.phone = newPhone;
    }

    UUID organisationId() {
        return organisationId;
    }

    @Nullable
    Long version() {
        return version;
    }

    String name() {
        return name;
    }

    String zone() {
        return zone;
    }

    /** Whom to call, as it is dialled. */
    @Nullable
    String phone() {
        return phone;
    }

    boolean madeAtFirstStart() {
        return madeAtFirstStart;
    }

    Instant recordedAt() {
        return recordedAt;
    }
}
