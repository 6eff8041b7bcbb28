package varanid.intake.sample;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;

/** A step that is to be written down. */
record NewStep(
        Step step,
        Instant occurredAt,
        @Nullable String laboratory,
        @Nullable String note,
        @Nullable UUID supersedes) {

    static Supplier<NewStep> reader(JsonFields fields, SampleRow sample, Present present) {
        Given<Step> step =
                fields.choice("step", List.of(Step.values()), Step::code).required();
        Given<Instant> occurredAt = fields.pastInstant("occurredAt", present)
                .check(
                        at -> !at.isBefore(sample.takenAt()),
                        "is earlier than the sample was taken",
                        sample.takenAt() + " or later");
        Given<String> laboratory = fields.text("laboratory", 200);
        Given<String> note = fields.prose("note", 4_000);
        Given<UUID> supersedes = fields.id("supersedes");
        return () -> new NewStep(
                step.get(), occurredAt.orElse(present.now()), laboratory.orNull(), note.orNull(), supersedes.orNull());
    }

    /** Only described here: {@link #reader} reads it. */
    @Schema(name = "NewSampleStep")
    record Body(
            @Schema(
                    requiredMode = Schema.RequiredMode.REQUIRED,
                    allowableValues = {"sent", "received", "lost", "unusable"})
            String step,

            @Schema(description = "now where none is named; not before the sample was taken") @Nullable
            Instant occurredAt,

            @Schema(maxLength = 200) @Nullable String laboratory,
            @Schema(maxLength = 4000) @Nullable String note,

            @Schema(description = "the step that this one corrects") @Nullable
            UUID supersedes) {}
}
