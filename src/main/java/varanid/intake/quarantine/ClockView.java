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

/** What the clock of a room shows, and why. */
@Schema(name = "RoomClock")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ClockView(
        UUID roomId,
        String roomName,
        LocalDate asOf,

        @Schema(allowableValues = {"empty", "running", "held"})
        String standing,

        @Schema(description = "day 0") @Nullable LocalDate start,

        @Schema(description = "the first day on which a person may end it; none while it waits") @Nullable
        LocalDate earliestRelease,

        @Schema(description = "the same if what it waits for came today; moves on with every day") @Nullable
        LocalDate notBefore,

        @Schema(description = "the most that any animal there needs")
        int neededDays,

        @Schema(description = "whether a vet has to approve a release")
        boolean vetRelease,

        @Schema(description = "the date and its reasons, as one sentence")
        String inWords,

        List<WhyView> why,

        @Schema(description = "what a vet has still to speak about before a release")
        List<QuestionView> openQuestions,

        @Schema(description = "what the days wait for") List<QuestionView> waitingFor,

        List<AnimalName> animals,

        @Schema(description = "every event since the room was last empty, in order, and what it did")
        List<StepView> history,

        @Schema(description = "events that were withdrawn, or speak of one that was: they count for nothing")
        List<WithdrawnView> withdrawn,

        String warning) {

    static ClockView of(QuarantinePolicy policy, RoomRow room, RoomBook book, LocalDate asOf, Names names) {
        ClockReading reading = book.read(asOf);
        Views views = new Views(policy, names, book);
        return new ClockView(
                room.id(),
                room.name(),
                asOf,
                standing(reading),
                start(reading),
                earliestRelease(reading),
                notBefore(reading),
                reading.neededDays(),
                reading.vetRelease(),
                inWords(policy, room, reading),
                reading.why().stream()
                        .map(why -> new WhyView(why.event(), why.text()))
                        .toList(),
                reading.openQuestions().stream().map(views::question).toList(),
                waitingFor(reading).stream().map(views::question).toList(),
                reading.animals().stream().sorted().map(names::of).toList(),
                reading.history().stream().map(views::step).toList(),
                book.listWithoutEffect(asOf).stream().map(views::withdrawn).toList(),
                policy.warning());
    }

    static String standing(ClockReading reading) {
        return reading.standing().fold(empty -> "empty", running -> "running", held -> "held");
    }

    static @Nullable LocalDate start(ClockReading reading) {
        return reading.start().orElse(null);
    }

    static @Nullable LocalDate earliestRelease(ClockReading reading) {
        return reading.standing()
                .<Optional<LocalDate>>fold(
                        empty -> Optional.empty(),
                        running -> Optional.of(running.earliestRelease()),
                        held -> Optional.empty())
                .orElse(null);
    }

    static @Nullable LocalDate notBefore(ClockReading reading) {
        return reading.standing()
                .<Optional<LocalDate>>fold(
                        empty -> Optional.empty(), running -> Optional.empty(), held -> Optional.of(held.notBefore()))
                .orElse(null);
    }

    static List<UUID> waitingFor(ClockReading reading) {
        return reading.standing().fold(empty -> List.of(), running -> List.of(), held -> held.waitingFor());
    }

    static String inWords(QuarantinePolicy policy, RoomRow room, ClockReading reading) {
        boolean nothing = reading.standing()
                .fold(empty -> false, running -> !running.earliestRelease().isAfter(reading.asOf()), held -> false);
        return room.isOfResidents() && nothing ? policy.says().residentsRoom() : reading.inWords();
    }

    @Schema(name = "ClockReason")
    public record WhyView(
            @Schema(description = "the event it comes from") UUID event, String text) {}

    @Schema(name = "ClockQuestion")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record QuestionView(
            @Schema(description = "the event that a vet is to speak about")
            UUID event,

            LocalDate on,
            String cause,
            String label,

            @Schema(description = "why it is asked") String reason,

            @Schema(description = "what was written down of it") @Nullable
            String what,

            @Nullable AnimalName animal) {}

    @Schema(name = "ClockAsk")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record AskView(
            @Schema(description = "the event that a vet is to speak about, or whose treatment is to end")
            UUID event,

            LocalDate on,

            @Schema(description = "which animal, where it was one") @Nullable
            AnimalName about,

            @Schema(allowableValues = {"vets-word", "treatment-end"})
            String wanted,

            @Schema(description = "whether no day counts until then")
            boolean daysWait,

            String text) {

        static AskView of(QuarantinePolicy policy, Ask ask, Names names) {
            Optional<AnimalName> animal = ask.animal().map(names::of);
            String which = animal.map(AnimalName::name).map(name -> name + ": ").orElse("");
            String toDo = ask.wanted() == Ask.Wanted.VETS_WORD
                    ? policy.says().askVet()
                    : policy.says().tellEndOfTreatment();
            return new AskView(
                    ask.event(),
                    ask.on(),
                    animal.orElse(null),
                    ask.wanted().code(),
                    ask.daysWait(),
                    which + ask.words() + " (" + Why.words(ask.on()) + "). " + toDo + " Why: " + ask.reason() + ".");
        }
    }

    @Schema(name = "ClockStep")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record StepView(
            EventView event,

            @Schema(
                    allowableValues = {
                        "started",
                        "restarted",
                        "held",
                        "paused",
                        "went-on",
                        "asked-a-vet",
                        "answered",
                        "lengthened",
                        "decided",
                        "left",
                        "emptied",
                        "nothing"
                    })
            String did,

            String because,

            @Schema(description = "the date the clock showed after it, on its day") @Nullable
            LocalDate earliestRelease) {}

    @Schema(name = "WithdrawnClockEvent")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record WithdrawnView(
            EventView event,
            String because,
            @Nullable UUID withdrawnBy,
            @Nullable Instant withdrawnAt) {}

    /** Makes the parts of the view. */
    private record Views(QuarantinePolicy policy, Names names, RoomBook book) {

        QuestionView question(UUID event) {
            ClockEventRow row = book.find(event).orElseThrow();
            QuarantinePolicy.Cause cause = policy.getCause(Objects.requireNonNull(row.cause));
            return new QuestionView(
                    event,
                    row.onDay,
                    cause.id(),
                    cause.label(),
                    cause.reason(),
                    row.reason,
                    row.animal().map(names::of).orElse(null));
        }

        StepView step(ClockReading.Step step) {
            ClockEventRow row = book.find(step.event().id()).orElseThrow();
            return new StepView(
                    EventView.of(policy, row, names),
                    step.did().code(),
                    step.because(),
                    step.earliest().orElse(null));
        }

        WithdrawnView withdrawn(ClockEventRow row) {
            EventView event = EventView.of(policy, row, names);
            return book.findWithdrawal(row.id())
                    .map(by ->
                            new WithdrawnView(event, Objects.requireNonNull(by.reason), by.recordedBy, by.recordedAt))
                    .orElseGet(() -> new WithdrawnView(event, "what it speaks of was withdrawn", null, null));
        }
    }
}
