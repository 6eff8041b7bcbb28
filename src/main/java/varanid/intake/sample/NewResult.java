package varanid.intake.sample;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import varanid.intake.infection.SamplingDefaults;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;

/** A result that is to be written down. */
record NewResult(
        String method,
        Outcome outcome,
        List<Found> found,
        LocalDate reportedOn,
        @Nullable String laboratory,
        @Nullable String report,
        @Nullable UUID supersedes) {

    private static final List<Outcome> OUTCOMES =
            List.of(Outcome.NEGATIVE, Outcome.POSITIVE, Outcome.EQUIVOCAL, Outcome.UNUSABLE);

    static Supplier<NewResult> reader(JsonFields fields, SampleRow sample, SamplingDefaults known, Present present) {
        Given<String> method = fields.choice("method", known.listMethods(), Function.identity())
                .required();
        Given<Outcome> outcome =
                fields.choice("outcome", OUTCOMES, Outcome::code).required();
        Given<List<Found>> found = fields.list("found", 20, value -> value.object(agent -> readFound(agent, known)))
                .check(
                        list -> list.stream().map(Found::agent).distinct().count() == list.size(),
                        "names an agent twice",
                        "each agent once");
        boolean named = found.isGiven() && !found.get().isEmpty();
        if (outcome.isGiven()) {
            if (outcome.get() == Outcome.POSITIVE
                    && !named
                    && !fields.field("found").isGiven()) {
                fields.field("found").fault("is missing", "what was found, at least one");
            } else if (outcome.get() == Outcome.POSITIVE && found.isGiven() && !named) {
                found.fault("is empty", "what was found, at least one");
            } else if ((outcome.get() == Outcome.NEGATIVE || outcome.get() == Outcome.UNUSABLE) && named) {
                found.fault("is given beside the outcome " + outcome.get().code(), "nothing found, or another outcome");
            }
        }
        Given<LocalDate> reportedOn = fields.pastDate("reportedOn", present)
                .check(
                        date -> !date.isBefore(sample.localDate()),
                        "is earlier than the sample was taken",
                        sample.localDate() + " or later");
        Given<String> laboratory = fields.text("laboratory", 200);
        Given<String> report = fields.prose("report", 20_000);
        Given<UUID> supersedes = fields.id("supersedes");
        // A sample may have been taken a few minutes from now, by another clock.
        LocalDate today = present.today().isBefore(sample.localDate()) ? sample.localDate() : present.today();
        return () -> new NewResult(
                method.get(),
                outcome.get(),
                found.orElse(List.of()),
                reportedOn.orElse(today),
                laboratory.orNull(),
                report.orNull(),
                supersedes.orNull());
    }

    private static Supplier<Found> readFound(JsonFields fields, SamplingDefaults known) {
        Given<String> agent =
                fields.choice("agent", known.listAgents(), Function.identity()).required();
        Given<Boolean> significant = fields.flag("significant");
        return () -> new Found(agent.get(), significant.orNull());
    }

    /** Only described here: {@link #reader} reads it. */
    @Schema(name = "NewSampleResult")
    record Body(
            @Schema(
                    description = "code of the method, as in the settings of sampling",
                    requiredMode = Schema.RequiredMode.REQUIRED)
            String method,

            @Schema(
                    requiredMode = Schema.RequiredMode.REQUIRED,
                    allowableValues = {"negative", "positive", "equivocal", "unusable"})
            String outcome,

            @Schema(description = "needed for a positive one; of an equivocal one, what is suspected") @Nullable
            List<Found> found,

            @Schema(description = "today where none is named; the day the result counts from") @Nullable
            LocalDate reportedOn,

            @Schema(maxLength = 200) @Nullable String laboratory,

            @Schema(description = "what the laboratory wrote, word for word", maxLength = 20000) @Nullable
            String report,

            @Schema(description = "the result that this one corrects") @Nullable
            UUID supersedes) {}
}
