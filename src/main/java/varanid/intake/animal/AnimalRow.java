package varanid.intake.animal;

import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.id.RowKey;

/** An animal as the table has it; {@link AnimalStore} gives it its meaning. */
@Entity
@Table(name = "animal")
class AnimalRow {

    @EmbeddedId
    RowKey key;

    @Version
    @Nullable
    Long version;

    @Nullable
    UUID consignmentId;

    @Nullable
    String name;

    @Nullable
    String tag;

    @Nullable
    String speciesName;

    @Nullable
    String speciesAuthority;

    String lifeStage;

    String sex;

    @Nullable
    String declaredOrigin;

    @Nullable
    String transponder;

    @Nullable
    LocalDate arrivedOn;

    @Nullable
    String notes;

    @JdbcTypeCode(SqlTypes.JSON)
    String evidence;

    @JdbcTypeCode(SqlTypes.JSON)
    String papers;

    @JdbcTypeCode(SqlTypes.JSON)
    @Column(updatable = false)
    String firstWeights;

    @JdbcTypeCode(SqlTypes.JSON)
    @Column(updatable = false)
    String firstLengths;

    @Column(updatable = false)
    UUID recordedBy;

    @Column(updatable = false)
    Instant recordedAt;

    @SuppressWarnings("NullAway.Init")
    protected AnimalRow() {}

    @SuppressWarnings("NullAway.Init")
    AnimalRow(RowKey key, String firstWeights, String firstLengths, UUID recordedBy, Instant recordedAt) {
        this.key = key;
        this.firstWeights = firstWeights;
        this.firstLengths = firstLengths;
        this.recordedBy = recordedBy;
        this.recordedAt = recordedAt;
    }
}
