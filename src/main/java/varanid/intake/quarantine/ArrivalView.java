package varanid.intake.quarantine;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What putting an animal into a room does, or would do. */
@Schema(name = "PlacementPreview")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ArrivalView(
        UUID roomId,
        String roomName,
        LocalDate on,

        @Schema(description = "how long the newcomer is kept apart at least, and why")
        MinimumStay minimumStay,

        @Schema(description = "whom it delays, from when until when")
        List<DelayView> delays,

        @Schema(description = "why the date is then as it is")
        String because,

        @Schema(description = "what the newcomer brings besides: its own signs, and what its last room waits for")
        List<BringsView> brings,

        RoomView.ClockSummary before,
        RoomView.ClockSummary after,
        List<String> cautions) {

    static ArrivalView of(QuarantinePolicy policy, Moves.Arrival arrival, Names names) {
        ClockReading after = arrival.effect().after();
        boolean waits = !ClockView.waitingFor(after).isEmpty();
        return new ArrivalView(
                arrival.room().id(),
                arrival.room().name(),
                arrival.happened().get(0).onDay,
                arrival.needs(),
                arrival.effect().delayed().stream()
                        .map(delay -> DelayView.of(delay, names))
                        .toList(),
                ClockView.inWords(policy, arrival.room(), after),
                arrival.happened().stream()
                        .filter(event -> event.is(EventKind.OCCURRED))
                        .map(event -> BringsView.of(policy, event))
                        .toList(),
                RoomView.ClockSummary.of(
                        policy, arrival.room(), arrival.effect().before()),
                RoomView.ClockSummary.of(policy, arrival.room(), after),
                waits ? List.of(policy.says().someWait()) : List.of());
    }

    @Schema(name = "Delay")
    public record DelayView(AnimalName animal, LocalDate from, LocalDate until, long days) {
        static DelayView of(Placement.Delay delay, Names names) {
            return new DelayView(names.of(delay.animal()), delay.from(), delay.until(), delay.days());
        }
    }

    @Schema(name = "BroughtAlong")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record BringsView(
            String cause, String label, @Nullable String what, String effect, String reason) {
        static BringsView of(QuarantinePolicy policy, ClockEventRow event) {
            QuarantinePolicy.Cause cause = policy.getCause(Objects.requireNonNull(event.cause));
            return new BringsView(
                    cause.id(), cause.label(), event.reason, cause.effect().toString(), cause.reason());
        }
    }
}
