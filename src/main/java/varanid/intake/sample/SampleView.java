package varanid.intake.sample;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** A sample with its steps and results, and what they come to now. */
@Schema(name = "Sample")
@JsonInclude(JsonInclude.Include.NON_NULL)
record SampleView(
        UUID id,
        UUID animalId,
        String kind,
        Instant takenAt,
        @Schema(description = "in the organisation's zone") LocalDate takenOn,
        @Nullable Instant passedAt,

        @Schema(description = "whole hours between passing and taking; left out: nobody knows") @Nullable
        Integer freshHours,

        List<String> methods,
        @Nullable String laboratory,
        @Nullable String storage,
        @Nullable String note,

        @Schema(
                description = "pending until a result stands; then positive where any is, else equivocal where any is,"
                        + " else negative",
                allowableValues = {"pending", "negative", "positive", "equivocal", "unusable"})
        Outcome outcome,

        @Schema(description = "what standing positive results name")
        Set<String> agents,

        @Schema(description = "methods asked for that have no result yet")
        List<String> awaited,

        List<StepView> steps,
        List<ResultView> results,
        @Nullable UUID supersedes,
        @Nullable UUID supersededBy,
        UUID recordedBy,
        Instant recordedAt) {

    static SampleView of(SampleFile file, @Nullable UUID supersededBy) {
        SampleRow row = file.row();
        Map<UUID, UUID> steps = successors(file.steps(), SampleStepRow::id, SampleStepRow::supersedes);
        Map<UUID, UUID> results = successors(
                file.results(), each -> each.row().id(), each -> each.row().supersedes());
        return new SampleView(
                row.id(),
                row.animalId(),
                row.kind(),
                row.takenAt(),
                row.localDate(),
                row.passedAt(),
                row.freshHours(),
                row.methods(),
                row.laboratory(),
                row.storage(),
                row.note(),
                file.outcome(),
                file.agents(),
                file.awaited(),
                file.steps().stream()
                        .map(step -> StepView.of(step, steps.get(step.id())))
                        .toList(),
                file.results().stream()
                        .map(result ->
                                ResultView.of(result, results.get(result.row().id())))
                        .toList(),
                row.supersedes(),
                supersededBy,
                row.recordedBy(),
                row.recordedAt());
    }

    private static <T> Map<UUID, UUID> successors(
            List<T> all, Function<T, UUID> id, Function<T, @Nullable UUID> supersedes) {
        Map<UUID, UUID> successors = new HashMap<>();
        for (T each : all) {
            @Nullable UUID corrected = supersedes.apply(each);
            if (corrected != null) {
                successors.put(corrected, id.apply(each));
            }
        }
        return successors;
    }

    /** What became of it at one time. */
    @Schema(name = "SampleStep")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record StepView(
            UUID id,
            String step,
            Instant occurredAt,
            @Nullable String laboratory,
            @Nullable String note,
            @Nullable UUID supersedes,
            @Nullable UUID supersededBy,
            UUID recordedBy,
            Instant recordedAt) {

        static StepView of(SampleStepRow row, @Nullable UUID supersededBy) {
            return new StepView(
                    row.id(),
                    row.step(),
                    row.occurredAt(),
                    row.laboratory(),
                    row.note(),
                    row.supersedes(),
                    supersededBy,
                    row.recordedBy(),
                    row.recordedAt());
        }
    }

    /** What one method found. */
    @Schema(name = "SampleResult")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record ResultView(
            UUID id,
            String method,
            String outcome,
            List<Found> found,
            LocalDate reportedOn,
            @Nullable String laboratory,
            @Nullable String report,
            @Nullable UUID supersedes,
            @Nullable UUID supersededBy,
            UUID recordedBy,
            Instant recordedAt) {

        static ResultView of(SampleFile.Result result, @Nullable UUID supersededBy) {
            SampleResultRow row = result.row();
            return new ResultView(
                    row.id(),
                    row.method(),
                    row.outcome(),
                    result.found(),
                    row.reportedOn(),
                    row.laboratory(),
                    row.report(),
                    row.supersedes(),
                    supersededBy,
                    row.recordedBy(),
                    row.recordedAt());
        }
    }
}
