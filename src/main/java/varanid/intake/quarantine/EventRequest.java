package varanid.intake.quarantine;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;

/** An event that somebody records. */
record EventRequest(
        EventKind kind,
        LocalDate on,
        @Nullable String cause,
        @Nullable UUID animalId,
        @Nullable UUID about,
        ClockEvent.@Nullable Ruling ruling,
        @Nullable Integer days,
        @Nullable String reason) {

    /** Coming and going are placements and departures, and recorded as such. */
    static final List<EventKind> KINDS = List.of(
            EventKind.OCCURRED,
            EventKind.VET_SPOKE,
            EventKind.TREATMENT_ENDED,
            EventKind.LENGTHENED,
            EventKind.VET_DECIDED,
            EventKind.WITHDRAWN);

    private static final Map<EventKind, Set<String>> REQUIRED = Map.of(
            EventKind.OCCURRED, Set.of("cause"),
            EventKind.VET_SPOKE, Set.of("about", "ruling"),
            EventKind.TREATMENT_ENDED, Set.of("about"),
            EventKind.LENGTHENED, Set.of("days", "reason"),
            EventKind.VET_DECIDED, Set.of("days", "reason"),
            EventKind.WITHDRAWN, Set.of("about", "reason"));

    private static final Map<EventKind, Set<String>> OPTIONAL = Map.of(
            EventKind.OCCURRED, Set.of("on", "animalId", "reason"),
            EventKind.VET_SPOKE, Set.of("on", "reason"),
            EventKind.TREATMENT_ENDED, Set.of("on", "reason"),
            EventKind.LENGTHENED, Set.of("on"),
            EventKind.VET_DECIDED, Set.of("on"),
            EventKind.WITHDRAWN, Set.of());

    static Supplier<EventRequest> reader(JsonFields fields, QuarantinePolicy policy, Present present) {
        Given<EventKind> kind = fields.choice("kind", KINDS, EventKind::code).required();
        Given<LocalDate> on = fields.pastDate("on", present);
        Given<QuarantinePolicy.Cause> cause = fields.choice(
                "cause",
                policy.causes().stream()
                        .filter(each -> !each.id().equals(QuarantinePolicy.NEW_ANIMAL))
                        .toList(),
                QuarantinePolicy.Cause::id);
        Given<UUID> animal = fields.id("animalId");
        Given<UUID> about = fields.id("about");
        Given<ClockEvent.Ruling> ruling =
                fields.choice("ruling", List.of(ClockEvent.Ruling.values()), ClockEvent.Ruling::code);
        Given<Integer> days = fields.integer("days", 0, MinimumStay.MOST_DAYS);
        Given<String> reason = fields.prose("reason", 2_000);
        kind.find().ifPresent(which -> {
            fit(which, "on", on);
            fit(which, "cause", cause);
            fit(which, "animalId", animal);
            fit(which, "about", about);
            fit(which, "ruling", ruling);
            fit(which, "days", days);
            fit(which, "reason", reason);
        });
        return () -> new EventRequest(
                kind.get(),
                on.orElse(present.today()),
                cause.find().map(QuarantinePolicy.Cause::id).orElse(null),
                animal.orNull(),
                about.orNull(),
                ruling.orNull(),
                days.orNull(),
                reason.orNull());
    }

    private static void fit(EventKind kind, String name, Given<?> given) {
        if (REQUIRED.getOrDefault(kind, Set.of()).contains(name)) {
            given.required();
        } else if (given.isGiven() && !OPTIONAL.getOrDefault(kind, Set.of()).contains(name)) {
            given.fault("does not belong to an event of the kind " + kind.code(), "leave it out");
        }
    }

    boolean isAVetsWord() {
        return kind == EventKind.VET_SPOKE || kind == EventKind.VET_DECIDED;
    }

    /** Only described here. */
    @Schema(name = "NewClockEvent")
    record Body(
            @Schema(
                    allowableValues = {
                        "occurred",
                        "vet-spoke",
                        "treatment-ended",
                        "lengthened",
                        "vet-decided",
                        "withdrawn"
                    },
                    requiredMode = Schema.RequiredMode.REQUIRED)
            String kind,

            @Schema(description = "today unless said; not in the future") @Nullable
            LocalDate on,

            @Schema(description = "occurred: what, by its code in the policy", example = "breach-with-contact")
            @Nullable
            String cause,

            @Schema(description = "occurred: which animal, where it was one") @Nullable
            UUID animalId,

            @Schema(description = "vet-spoke, treatment-ended: the occurrence; withdrawn: the event") @Nullable
            UUID about,

            @Schema(
                    description = "vet-spoke: what the vet says",
                    allowableValues = {"restarts", "restarts-after-treatment", "goes-on", "was-nothing"})
            @Nullable
            String ruling,

            @Schema(description = "lengthened, vet-decided: from the start") @Nullable
            Integer days,

            @Schema(maxLength = 2000) @Nullable String reason) {}
}
