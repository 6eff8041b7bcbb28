package varanid.intake.condition;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.animal.LengthReading;
import varanid.intake.animal.Remark;

/** A length as it is shown: as it was given, and in millimetres. */
@Schema(name = "LengthMeasurement")
record LengthView(
        UUID id,
        UUID animalId,
        LengthReading.Part of,
        BigDecimal value,
        @Schema(description = "UCUM code") String unit,
        BigDecimal millimetres,
        @Nullable BigDecimal resolution,
        @Nullable String tool,
        Instant occurredAt,

        @Schema(description = "the same as a date in the organisation's zone")
        LocalDate localDate,

        boolean confirmed,
        @Nullable String note,
        @Nullable UUID supersedes,
        @Nullable Integer supersedesFirst,
        @Nullable UUID supersededBy,

        @Schema(description = "what a person should look at; it refuses nothing")
        List<Remark> remarks,

        UUID recordedBy,
        Instant recordedAt) {

    static LengthView of(LengthRow row, @Nullable UUID supersededBy, List<Remark> remarks) {
        LengthReading reading = row.reading();
        return new LengthView(
                row.id(),
                row.animalId(),
                reading.of(),
                reading.value(),
                reading.unit(),
                reading.millimetres(),
                reading.resolution(),
                reading.tool(),
                reading.occurredAt(),
                row.localDate(),
                reading.confirmed(),
                row.note(),
                row.supersedes(),
                row.supersedesFirst(),
                supersededBy,
                remarks,
                row.recordedBy(),
                row.recordedAt());
    }
}
