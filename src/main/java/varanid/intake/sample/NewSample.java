package varanid.intake.sample;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import varanid.intake.infection.SamplingDefaults;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;

/** A sample that is to be written down. */
record NewSample(
        SampleKind kind,
        Instant takenAt,
        @Nullable Instant passedAt,
        @Nullable Integer freshHours,
        List<String> methods,
        @Nullable String laboratory,
        @Nullable Storage storage,
        @Nullable String note,
        @Nullable UUID supersedes) {

    private static final int OLDEST_HOURS = 2_000;

    static Supplier<NewSample> reader(JsonFields fields, SamplingDefaults known, Present present) {
        Given<SampleKind> kind = fields.choice("kind", List.of(SampleKind.values()), SampleKind::code)
                .required();
        Given<Instant> takenAt = fields.pastInstant("takenAt", present);
        Given<Instant> passedAt = fields.pastInstant("passedAt", present)
                .check(
                        passed -> !passed.isAfter(takenAt.orElse(present.now())),
                        "is later than the sample was taken",
                        "takenAt or earlier");
        Given<Integer> freshHours = fields.integer("freshHours", 0, OLDEST_HOURS);
        if (passedAt.isGiven() && freshHours.isGiven()) {
            freshHours.fault("is given beside passedAt, which says the same", "one of the two");
        }
        Given<List<String>> methods = fields.list(
                        "methods", 20, value -> value.choice(known.listMethods(), Function.identity()))
                .check(
                        list -> list.stream().distinct().count() == list.size(),
                        "names a method twice",
                        "each method once");
        Given<String> laboratory = fields.text("laboratory", 200);
        Given<Storage> storage = fields.choice("storage", List.of(Storage.values()), Storage::code);
        Given<String> note = fields.prose("note", 4_000);
        Given<UUID> supersedes = fields.id("supersedes");
        return () -> {
            Instant taken = takenAt.orElse(present.now());
            @Nullable
            Integer hours = passedAt.find()
                    .map(passed -> (int) Duration.between(passed, taken).toHours())
                    .orElse(freshHours.orNull());
            return new NewSample(
                    kind.get(),
                    taken,
                    passedAt.orNull(),
                    hours,
                    methods.orElse(List.of()),
                    laboratory.orNull(),
                    storage.orNull(),
                    note.orNull(),
                    supersedes.orNull());
        };
    }

    /** Only described here: {@link #reader} reads it. */
    @Schema(name = "NewSample")
    record Body(
            @Schema(
                    requiredMode = Schema.RequiredMode.REQUIRED,
                    allowableValues = {
                        "stool",
                        "urate",
                        "oral-swab",
                        "cloacal-swab",
                        "blood",
                        "skin-scraping",
                        "shed-skin",
                        "parasite",
                        "other"
                    })
            String kind,

            @Schema(description = "now where none is named") @Nullable
            Instant takenAt,

            @Schema(description = "when the animal passed it; then its age is known") @Nullable
            Instant passedAt,

            @Schema(
                    description = "whole hours between passing and taking, where the moment is not known; left out:"
                            + " nobody knows",
                    minimum = "0",
                    maximum = "2000")
            @Nullable
            Integer freshHours,

            @Schema(description = "codes of the methods asked for, as in the settings of sampling") @Nullable
            List<String> methods,

            @Schema(maxLength = 200) @Nullable String laboratory,

            @Schema(allowableValues = {"cool", "room", "frozen", "preserved"}) @Nullable
            String storage,

            @Schema(maxLength = 4000) @Nullable String note,

            @Schema(description = "the sample that this one corrects; its steps and results stay with it") @Nullable
            UUID supersedes) {}
}
