package varanid.intake.quarantine;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.id.RowKey;

/** One record of where an animal stands: it was placed, it left, or that was a mistake. */
@Schema(name = "Placement")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record PlacementView(
        UUID id,
        UUID animalId,

        @Schema(allowableValues = {"placed", "left", "withdrawn"})
        String kind,

        LocalDate on,
        @Nullable UUID roomId,
        @Nullable String roomName,

        @Schema(description = "where it stood before; in the reply to recording it") @Nullable
        UUID fromRoomId,

        @Nullable String because,
        @Nullable Boolean explained,
        @Nullable String reason,

        @Schema(description = "for a withdrawal: what it withdraws") @Nullable
        UUID about,

        @Schema(description = "in the reply to placing") @Nullable
        ArrivalView arrival,

        @Schema(description = "in the reply to recording a death of an animal that came with others") @Nullable
        CohortView cohort,

        List<String> cautions,
        @Nullable WithdrawnView withdrawn,
        UUID recordedBy,
        Instant recordedAt) {

    static PlacementView of(
            QuarantinePolicy policy,
            UUID organisation,
            Moves.Moved moved,
            Rooms rooms,
            List<String> cautions,
            @Nullable CohortView cohort,
            Names names) {
        return of(
                organisation,
                moved.placement(),
                rooms,
                null,
                moved.from().map(RoomRow::id).orElse(null),
                moved.arrival()
                        .map(arrival -> ArrivalView.of(policy, arrival, names))
                        .orElse(null),
                cohort,
                cautions);
    }

    static PlacementView of(UUID organisation, PlacementRow row, Rooms rooms, @Nullable PlacementRow withdrawal) {
        return of(organisation, row, rooms, withdrawal, null, null, null, List.of());
    }

    private static PlacementView of(
            UUID organisation,
            PlacementRow row,
            Rooms rooms,
            @Nullable PlacementRow withdrawal,
            @Nullable UUID from,
            @Nullable ArrivalView arrival,
            @Nullable CohortView cohort,
            List<String> cautions) {
        return new PlacementView(
                row.id(),
                row.animalId,
                row.kind,
                row.onDay,
                row.roomId,
                Optional.ofNullable(row.roomId)
                        .flatMap(room -> rooms.findById(new RowKey(organisation, room)))
                        .map(RoomRow::name)
                        .orElse(null),
                from,
                row.because,
                row.explained,
                row.reason,
                row.about,
                arrival,
                cohort,
                cautions,
                withdrawal == null
                        ? null
                        : new WithdrawnView(
                                withdrawal.id(),
                                Objects.requireNonNull(withdrawal.reason),
                                withdrawal.recordedBy,
                                withdrawal.recordedAt),
                row.recordedBy,
                row.recordedAt);
    }

    @Schema(name = "WithdrawnPlacement")
    public record WithdrawnView(UUID by, String because, UUID withdrawnBy, Instant withdrawnAt) {}
}
