package varanid.intake.quarantine;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What was stated about an authority's hold on an animal. */
@Schema(name = "LegalHold")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record HoldView(
        UUID id,
        UUID animalId,
        String state,
        LocalDate on,
        @Nullable String authority,
        @Nullable String reference,
        @Nullable String note,
        UUID recordedBy,
        Instant recordedAt) {

    static HoldView of(LegalHoldRow row) {
        return new HoldView(
                row.key.id(),
                row.animalId,
                row.state,
                row.onDay,
                row.authority,
                row.reference,
                row.note,
                row.recordedBy,
                row.recordedAt);
    }
}
