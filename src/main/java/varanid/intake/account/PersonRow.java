package varanid.intake.account;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.id.RowKey;
import varanid.intake.platform.web.Role;

@Entity
@Table(name = "person")
class PersonRow {

    @EmbeddedId
    private RowKey key;

    @Version
    private @Nullable Long version;

    private String name;
    private boolean keeper;
    private boolean clinician;
    private boolean administrator;
    private boolean active;
    private Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected PersonRow() {}

    PersonRow(RowKey key, String name, Set<Role> roles, Instant recordedAt) {
        this.key = key;
        this.name = name;
        this.recordedAt = recordedAt;
        change(name, roles, true);
    }

    final void change(String newName, Set<Role> roles, boolean isActive) {
        this.name = newName;
        this.keeper = roles.contains(Role.KEEPER);
        this.clinician = roles.contains(Role.CLINICIAN);
        this.administrator = roles.contains(Role.ADMINISTRATOR);
        this.active = isActive;
    }

    UUID id() {
        return key.id();
    }

    @Nullable
    Long version() {
        return version;
    }

    String name() {
        return name;
    }

    Set<Role> roles() {
        Set<Role> roles = EnumSet.noneOf(Role.class);
        if (keeper) {
            roles.add(Role.KEEPER);
        }
        if (clinician) {
            roles.add(Role.CLINICIAN);
        }
        if (administrator) {
            roles.add(Role.ADMINISTRATOR);
        }
        return roles;
    }

    boolean active() {
        return active;
    }

    Instant recordedAt() {
        return recordedAt;
    }
}
