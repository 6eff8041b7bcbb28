package varanid.intake.weight;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A weighing that a statement goes by, and where it is recorded.
 *
 * @param from {@code weighing}, or {@code registration} for a weight that was given with the animal
 * @param weighingId of a weighing
 * @param place in the registration's weights, from 0
 */
@Schema(name = "WeighingUsed")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ReadingView(
        @Schema(allowableValues = {"weighing", "registration"})
        String from,

        @Nullable UUID weighingId,
        @Nullable Integer place,
        Instant occurredAt,
        LocalDate localDate,
        BigDecimal value,
        @Schema(description = "UCUM code") String unit,
        BigDecimal grams,
        @Nullable BigDecimal resolution,
        @Nullable String scale,

        @Schema(description = "whole hours since its last meal, where that is known") @Nullable
        Long hoursSinceFood,

        boolean wet) {

    static ReadingView of(KnownWeighing known) {
        Weighing weighing = known.weighing();
        return new ReadingView(
                known.first() == null ? "weighing" : "registration",
                known.first() == null ? weighing.id() : null,
                known.first(),
                weighing.at(),
                weighing.day(),
                weighing.mass().value(),
                weighing.mass().unit().code(),
                weighing.mass().grams(),
                weighing.resolution() == null ? null : weighing.resolution().step(),
                weighing.scale(),
                weighing.sinceFood() == null ? null : weighing.sinceFood().toHours(),
                weighing.wet());
    }
}
