package varanid.intake.weight;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.animal.Remark;
import varanid.intake.animal.WeightReading;

/** A weighing as it is shown: as it was given, and in grams. */
@Schema(name = "Weighing")
record WeighingView(
        UUID id,
        UUID animalId,
        BigDecimal value,
        @Schema(description = "UCUM code") String unit,
        @Schema(description = "the same, exactly") BigDecimal grams,
        @Nullable BigDecimal resolution,
        @Nullable String scale,
        Instant occurredAt,

        @Schema(description = "the same as a date in the organisation's zone")
        LocalDate localDate,

        boolean confirmed,
        @Nullable Instant lastMealAt,
        boolean wet,
        @Nullable String note,
        @Nullable UUID supersedes,
        @Nullable Integer supersedesFirst,
        @Nullable UUID supersededBy,

        @Schema(description = "what a person should look at; it refuses nothing")
        List<Remark> remarks,

        UUID recordedBy,
        Instant recordedAt) {

    static WeighingView of(WeighingRow row, @Nullable UUID supersededBy, List<Remark> remarks) {
        WeightReading reading = row.reading();
        return new WeighingView(
                row.id(),
                row.animalId(),
                reading.value(),
                reading.unit(),
                reading.grams(),
                reading.resolution(),
                reading.scale(),
                reading.occurredAt(),
                row.localDate(),
                reading.confirmed(),
                row.lastMealAt(),
                row.wet(),
                row.note(),
                row.supersedes(),
                row.supersedesFirst(),
                supersededBy,
                remarks,
                row.recordedBy(),
                row.recordedAt());
    }
}
