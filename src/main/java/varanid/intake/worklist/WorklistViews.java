package varanid.intake.worklist;

import com.fasterxml.jackson.annotation.JsonIgnore;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.worklist.WorklistFacts.OpenTask;

/** Entries as they are shown, on a day. */
public final class WorklistViews {

    private final WorklistTexts texts;
    private final LocalDate asOf;

    WorklistViews(WorklistTexts texts, LocalDate asOf) {
        this.texts = texts;
        this.asOf = asOf;
    }

    ActNowItem actNow(Entry entry) {
        return new ActNowItem(
                asOf,
                AnimalView.of(entry),
                RoomView.of(entry),
                entry.urgency().map(Urgency::code).orElse(null),
                headline(entry),
                entry.worse(),
                because(entry),
                due(entry),
                moreDue(entry),
                next(entry),
                Links.of(entry));
    }

    RoundsItem rounds(Entry entry) {
        return new RoundsItem(
                asOf,
                AnimalView.of(entry),
                RoomView.of(entry),
                entry.stop().workPlace().code(),
                entry.stop().isolation().code(),
                entry.stop().stage().code(),
                texts.reminder(entry.stop()),
                entry.urgency().map(Urgency::code).orElse(null),
                entry.worse(),
                due(entry),
                moreDue(entry),
                next(entry),
                Links.of(entry));
    }

    private @Nullable String headline(Entry entry) {
        return entry.headline()
                .orElseGet(() ->
                        entry.urgency().isPresent() ? null : texts.notLookedAt().headline());
    }

    private List<BecauseView> because(Entry entry) {
        if (entry.urgency().isEmpty() && entry.reasons().isEmpty()) {
            return List.of(new BecauseView("not-looked-at", texts.notLookedAt().words()));
        }
        return entry.reasons().stream()
                .map(reason -> new BecauseView(reason.code(), reason.words()))
                .toList();
    }

    private List<DueView> due(Entry entry) {
        return entry.due(asOf).stream().map(this::due).toList();
    }

    private DueView due(Entry.Due due) {
        OpenTask task = due.earliest();
        long late = Math.max(0, ChronoUnit.DAYS.between(task.latest(), asOf));
        return new DueView(
                task.kind(), task.title(), task.due(), task.latest(), late > 0 ? "overdue" : "due", late, due.times());
    }

    private boolean moreDue(Entry entry) {
        return !entry.moreFrom().isAfter(asOf);
    }

    private @Nullable NextView next(Entry entry) {
        return entry.tasks().stream()
                .filter(task -> task.due().isAfter(asOf))
                .findFirst()
                .map(task -> new NextView(task.kind(), task.title(), task.due(), task.latest()))
                .orElse(null);
    }

    @Schema(name = "ActNowItem", description = "An animal that has to be seen to")
    public record ActNowItem(
            @Schema(description = "the day that due, overdue and late are meant on")
            LocalDate asOf,

            AnimalView animal,
            @Nullable RoomView room,

            @Schema(description = "none where nobody has looked yet; it then counts as urgent") @Nullable
            String urgency,

            @Nullable String headline,

            @Schema(description = "whether the last look found something worse than the look before it")
            boolean worse,

            @Schema(description = "why it is urgent or worse, the weightiest first; at most 5")
            List<BecauseView> because,

            List<DueView> due,

            @Schema(description = "whether more is due than is listed here; the quarantine has all of it")
            boolean moreDue,

            @Schema(description = "the first thing to do after that day") @Nullable
            NextView next,

            Links links) {}

    @Schema(name = "RoundsItem", description = "A stop of the rounds")
    public record RoundsItem(
            @Schema(description = "the day that due, overdue and late are meant on")
            LocalDate asOf,

            AnimalView animal,
            @Nullable RoomView room,

            @Schema(allowableValues = {"residents", "newcomers-without-signs", "suspect", "sick"})
            String workPlace,

            @Schema(allowableValues = {"standard", "strict"})
            String isolation,

            String stage,

            @Schema(description = "what to remember at this place of the rounds")
            String reminder,

            @Nullable String urgency,
            boolean worse,
            List<DueView> due,
            boolean moreDue,
            @Nullable NextView next,
            Links links) {}

    @Schema(name = "WorklistAnimal")
    public record AnimalView(
            UUID id,

            @Schema(description = "its name, else its tag") @Nullable
            String label) {

        static AnimalView of(Entry entry) {
            return new AnimalView(entry.animalId(), entry.label().orElse(null));
        }
    }

    @Schema(name = "WorklistRoom")
    public record RoomView(UUID id, String name) {

        static @Nullable RoomView of(Entry entry) {
            return entry.room()
                    .map(room -> new RoomView(room.id(), room.name()))
                    .orElse(null);
        }
    }

    @Schema(name = "WorklistReason")
    public record BecauseView(String code, String words) {}

    @Schema(name = "WorklistDue")
    public record DueView(
            String kind,
            String title,

            @Schema(description = "the first day that is good")
            LocalDate due,

            @Schema(description = "the last day that is good")
            LocalDate latest,

            @Schema(allowableValues = {"due", "overdue"}) String state,

            @Schema(description = "days since the last day that was good; 0 where it is not overdue")
            long daysLate,

            @Schema(description = "how many alike are due, this being the earliest")
            int times) {}

    @Schema(name = "WorklistNext")
    public record NextView(String kind, String title, LocalDate due, LocalDate latest) {}

    /** @param comparedLook the look that {@code comparison} is of, for pages */
    @Schema(name = "WorklistLinks", description = "Paths of this API")
    public record Links(
            String animal,
            String quarantine,

            @Schema(description = "the last look beside the one before it, where there are two") @Nullable
            String comparison,

            @JsonIgnore @Nullable UUID comparedLook) {

        static Links of(Entry entry) {
            String animal = "/api/v1/animals/" + entry.animalId();
            return new Links(
                    animal,
                    animal + "/quarantine",
                    entry.comparedLook()
                            .map(look -> animal + "/assessments/" + look + "/comparison")
                            .orElse(null),
                    entry.comparedLook().orElse(null));
        }
    }
}
