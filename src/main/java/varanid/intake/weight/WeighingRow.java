package varanid.intake.weight;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;
import varanid.intake.animal.WeightReading;
import varanid.intake.platform.id.RowKey;

/** Written once. */
@Entity
@Immutable
@Table(name = "weighing")
class WeighingRow implements Persistable<RowKey> {

    @EmbeddedId
    private RowKey key;

    private UUID animalId;
    private Instant occurredAt;
    private Instant recordedAt;
    private LocalDate localDate;
    private BigDecimal value;
    private String unit;
    private BigDecimal grams;
    private @Nullable BigDecimal resolution;
    private @Nullable String scale;
    private boolean confirmed;
    private @Nullable Instant lastMealAt;
    private boolean wet;
    private @Nullable String note;
    private @Nullable UUID supersedes;
    private @Nullable Integer supersedesFirst;
    private UUID recordedBy;

    @SuppressWarnings("NullAway.Init")
    protected WeighingRow() {}

    WeighingRow(
            RowKey key, UUID animalId, NewWeighing given, LocalDate localDate, UUID recordedBy, Instant recordedAt) {
        WeightReading reading = given.reading();
        this.key = key;
        this.animalId = animalId;
        this.occurredAt = reading.occurredAt();
        this.recordedAt = recordedAt;
        this.localDate = localDate;
        this.value = reading.value();
        this.unit = reading.unit();
        this.grams = reading.grams();
        this.resolution = reading.resolution();
        this.scale = reading.scale();
        this.confirmed = reading.confirmed();
        this.lastMealAt = given.lastMealAt();
        this.wet = given.wet();
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

    WeightReading reading() {
        return new WeightReading(value, unit, grams, resolution, scale, occurredAt, confirmed);
    }

    @Nullable
    Instant lastMealAt() {
        return lastMealAt;
    }

    boolean wet() {
        return wet;
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
