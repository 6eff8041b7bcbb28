package varanid.intake.quarantine;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** An event of a room's clock. */
@Schema(name = "ClockEvent")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record EventView(
        UUID id,

        @Schema(
                allowableValues = {
                    "placed",
                    "left",
                    "occurred",
                    "vet-spoke",
                    "treatment-ended",
                    "lengthened",
                    "vet-decided",
                    "withdrawn"
                })
        String kind,

        LocalDate on,
        @Nullable AnimalName animal,

        @Schema(description = "its code in the policy") @Nullable
        String cause,

        @Nullable String label,

        @Schema(description = "the event that it speaks of") @Nullable
        UUID about,

        @Nullable String ruling,
        @Nullable Integer days,
        @Nullable String reason,

        @Schema(description = "true where the vet who answered is not confirmed: it only raises") @Nullable
        Boolean unconfirmed,

        @Schema(description = "the record that it follows from; to withdraw it, that is corrected") @Nullable
        SourceView source,

        @Schema(description = "nobody where it follows from another record") @Nullable
        UUID recordedBy,

        Instant recordedAt) {

    static EventView of(QuarantinePolicy policy, ClockEventRow row, Names names) {
        return new EventView(
                row.id(),
                row.kind,
                row.onDay,
                row.animal().map(names::of).orElse(null),
                row.cause,
                Optional.ofNullable(row.cause)
                        .flatMap(policy::findCause)
                        .map(QuarantinePolicy.Cause::label)
                        .orElse(null),
                row.about,
                row.ruling,
                row.days,
                row.reason,
                row.unconfirmed ? Boolean.TRUE : null,
                row.sourceKind == null || row.sourceId == null
                        ? null
                        : new SourceView(row.sourceKind, row.sourceId, row.sourcePart),
                row.recordedBy,
                row.recordedAt);
    }

    @Schema(name = "ClockEventSource")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record SourceView(
            @Schema(allowableValues = {"placement", "assessment", "result", "vet-answer"})
            String kind,

            UUID id,

            @Schema(description = "which part of it, such as the finding") @Nullable
            String part) {}
}
