package varanid.intake.assessment;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.measures.Temperature;
import varanid.intake.weight.AnswerSource;

/** An assessment as it is kept and sent: what was looked at and answered, and what it came to then. */
@Schema(name = "Assessment")
@JsonInclude(JsonInclude.Include.NON_NULL)
record AssessmentView(
        UUID id,
        UUID animalId,
        @Schema(description = "the person who looked") UUID observerId,
        Instant occurredAt,
        Instant recordedAt,
        @Nullable UUID supersedes,

        @Schema(description = "why it corrects what it supersedes") @Nullable
        String reason,

        @Schema(description = "what the animal counted as: life stage and origin")
        Map<String, String> animal,

        List<String> conditions,
        @Nullable TemperatureView skinTemperature,
        Map<String, Object> answers,

        @Schema(description = "by finding, where an answer comes from that nobody gave; the others were given")
        @Nullable
        Map<String, AnswerSource> answersFrom,

        @Schema(description = "answers that the surroundings of that day may explain; they keep their points") @Nullable
        List<LessCertain> lessCertain,

        @Nullable String note,
        @JsonUnwrapped ScoreView score) {

    record TemperatureView(BigDecimal value, String unit, BigDecimal celsius) {

        static @Nullable TemperatureView of(@Nullable Temperature temperature) {
            return temperature == null
                    ? null
                    : new TemperatureView(
                            temperature.value(), temperature.unit().code(), temperature.celsius());
        }
    }

    /** One line of a list. */
    @Schema(name = "AssessmentItem")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Item(
            UUID id,
            UUID observerId,
            Instant occurredAt,
            Instant recordedAt,
            String urgency,
            @Nullable String isolation,
            boolean settled,
            ScoreView.ChecklistRef checklist,
            @Nullable UUID supersedes,
            @Nullable UUID supersededBy,

            @Schema(description = "SHA-256 of the assessment's bytes")
            String digest,

            String path) {

        static Item of(AssessmentRow row, @Nullable UUID supersededBy) {
            return new Item(
                    row.id(),
                    row.observerId(),
                    row.occurredAt(),
                    row.recordedAt(),
                    row.urgency(),
                    row.isolation(),
                    row.settled(),
                    new ScoreView.ChecklistRef(row.checklistId(), row.checklistVersion(), row.checklistSha256()),
                    row.supersedes(),
                    supersededBy,
                    row.document().sha256(),
                    AssessmentController.path(row.animalId(), row.id()));
        }
    }
}
