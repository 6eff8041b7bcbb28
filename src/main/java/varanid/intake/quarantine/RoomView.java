package varanid.intake.quarantine;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A room, who stands in it, and how its clock stands. */
@Schema(name = "Room")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record RoomView(
        UUID id,
        String name,

        @Schema(allowableValues = {"quarantine", "residents"})
        String kind,

        @Nullable String notes,
        List<AnimalName> animals,
        ClockSummary clock,
        UUID recordedBy,
        Instant recordedAt) {

    static RoomView of(QuarantinePolicy policy, RoomRow room, ClockReading reading, Names names) {
        return new RoomView(
                room.id(),
                room.name(),
                room.kind(),
                room.notes(),
                reading.animals().stream().sorted().map(names::of).toList(),
                ClockSummary.of(policy, room, reading),
                room.recordedBy(),
                room.recordedAt());
    }

    @Schema(name = "RoomClockSummary")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record ClockSummary(
            LocalDate asOf,

            @Schema(allowableValues = {"empty", "running", "held"})
            String standing,

            @Nullable LocalDate start,
            @Nullable LocalDate earliestRelease,
            @Nullable LocalDate notBefore,
            boolean vetRelease,
            String inWords) {

        static ClockSummary of(QuarantinePolicy policy, RoomRow room, ClockReading reading) {
            return new ClockSummary(
                    reading.asOf(),
                    ClockView.standing(reading),
                    ClockView.start(reading),
                    ClockView.earliestRelease(reading),
                    ClockView.notBefore(reading),
                    reading.vetRelease(),
                    ClockView.inWords(policy, room, reading));
        }
    }
}
