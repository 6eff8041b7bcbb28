package varanid.intake.quarantine;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;
import varanid.intake.platform.id.RowKey;

/** An event of a room's clock as the table has it; {@link RoomBook} gives it its meaning. Written once. */
@Entity
@Immutable
@Table(name = "clock_event")
class ClockEventRow implements Persistable<RowKey> {

    @EmbeddedId
    RowKey key;

    UUID roomId;
    LocalDate onDay;
    String kind;

    @Nullable
    UUID animalId;

    @Nullable
    String cause;

    @Nullable
    UUID about;

    @Nullable
    String ruling;

    @Nullable
    Integer days;

    @Nullable
    String reason;

    @JdbcTypeCode(SqlTypes.JSON)
    @Nullable
    String minimumStay;

    @Nullable
    String sourceKind;

    @Nullable
    UUID sourceId;

    @Nullable
    String sourcePart;

    /** Whether it is not certain that the vet is one: only of a vet's answer. */
    boolean unconfirmed;

    @Nullable
    UUID recordedBy;

    Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected ClockEventRow() {}

    /** The rest is filled in before it is saved. */
    ClockEventRow(
            RowKey key, UUID roomId, LocalDate onDay, EventKind kind, @Nullable UUID recordedBy, Instant recordedAt) {
        this.key = key;
        this.roomId = roomId;
        this.onDay = onDay;
        this.kind = kind.code();
        this.recordedBy = recordedBy;
        this.recordedAt = recordedAt;
    }

    ClockEventRow from(EventSource source) {
        this.sourceKind = source.kind().code();
        this.sourceId = source.id();
        this.sourcePart = source.part().orElse(null);
        return this;
    }

    boolean isFrom(EventSource.Kind source) {
        return source.code().equals(sourceKind);
    }

    UUID id() {
        return key.id();
    }

    boolean is(EventKind wanted) {
        return wanted.code().equals(kind);
    }

    Optional<UUID> animal() {
        return Optional.ofNullable(animalId);
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
