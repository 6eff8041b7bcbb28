package varanid.intake.condition;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;
import varanid.intake.animal.LengthReading;
import varanid.intake.platform.id.RowKey;

/** Written once. */
@Entity
@Immutable
@Table(name = "length_measurement")
class LengthRow implements Persistable<RowKey> {

    @EmbeddedId
    private RowKey key;

    private UUID animalId;
    private Instant occurredAt;
    private Instant recordedAt;
    private LocalDate localDate;
    private String part;
    private BigDecimal value;
    private String unit;
    private BigDecimal millimetres;
    private @Nullable BigDecimal resolution;
    private @Nullable String tool;
    private boolean confirmed;
    private @Nullable String note;
    private @Nullable UUID supersedes;
    private @Nullable Integer supersedesFirst;
    private UUID recordedBy;

    @SuppressWarnings("NullAway.Init")
    protected LengthRow() {}

    LengthRow(RowKey key, UUID animalId, NewLength given, LocalDate localDate, UUID recordedBy, Instant recordedAt) {
        LengthReading reading = given.reading();
        this.key = key;
        this.animalId = animalId;
        this.occurredAt = reading.occurredAt();
        this.recordedAt = recordedAt;
        this.localDate = localDate;
        this.part = reading.of().code();
        this.value = reading.value();
        this.unit = reading.unit();
        this.millimetres = reading.millimetres();
        this.resolution = reading.resolution();
        this.tool = reading.tool();
        this.confirmed = reading.confirmed();
        this.note = given.note();
        this.supersedes = given.supersedes();
        this.supersedesFirst = given.supersedesFirst();
        this.recordedBy = recordedBy;
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

    UUID id() {
        return key.id();
    }

    UUID animalId() {
        return animalId;
    }

    LocalDate localDate() {
        return localDate;
    }

    LengthReading reading() {
        return new LengthReading(
                Arrays.stream(LengthReading.Part.values())
                        .filter(each -> each.code().equals(part))
                        .findFirst()
                        .orElseThrow(),
                value,
                unit,
                millimetres,
                resolution,
                tool,
                occurredAt,
                confirmed);
    }

    @Nullable
    String note() {
        return note;
    }

    @Nullable
    UUID supersedes() {
        return supersedes;
    }

    @Nullable
    Integer supersedesFirst() {
        return supersedesFirst;
    }

    UUID recordedBy() {
        return recordedBy;
    }

    Instant recordedAt() {
        return recordedAt;
    }
}
