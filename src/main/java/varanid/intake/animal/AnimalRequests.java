package varanid.intake.animal;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** The requests about animals as the API description shows them; {@link AnimalReader} reads them. */
final class AnimalRequests {

    private AnimalRequests() {}

    @Schema(name = "ChangedAnimal")
    record ChangedAnimal(
            @Schema(description = "what people call it", maxLength = 100)
            String name,

            @Schema(description = "what stands on its cage", maxLength = 60)
            String tag,

            SpeciesRequest species,
            LifeStage lifeStage,
            Sex sex,

            @Schema(
                    description = "CITES source code as declared",
                    allowableValues = {"W", "R", "D", "C", "F", "U", "I", "O", "X"})
            String declaredOrigin,

            @Schema(description = "answers by question id, see shared/reference/provenance.yaml")
            Map<String, Evidence> evidence,

            List<Paper> papers,

            @Schema(description = Transponder.RIGHT, example = "985112345678903")
            String transponder,

            UUID consignmentId,
            @Schema(description = "not in the future") LocalDate arrivedOn,
            @Schema(maxLength = 4000) String notes) {}

    @Schema(name = "NewAnimal")
    record NewAnimal(
            @Schema(description = "what people call it", maxLength = 100)
            String name,

            @Schema(description = "what stands on its cage", maxLength = 60)
            String tag,

            SpeciesRequest species,
            LifeStage lifeStage,
            Sex sex,

            @Schema(
                    description = "CITES source code as declared",
                    allowableValues = {"W", "R", "D", "C", "F", "U", "I", "O", "X"})
            String declaredOrigin,

            @Schema(description = "answers by question id, see shared/reference/provenance.yaml")
            Map<String, Evidence> evidence,

            List<Paper> papers,

            @Schema(description = Transponder.RIGHT, example = "985112345678903")
            String transponder,

            UUID consignmentId,
            @Schema(description = "not in the future") LocalDate arrivedOn,
            @Schema(maxLength = 4000) String notes,
            List<WeightRequest> weights,
            List<LengthRequest> lengths) {}

    @Schema(name = "SpeciesRequest")
    record SpeciesRequest(
            @Schema(example = "Varanus salvator", maxLength = 100, requiredMode = Schema.RequiredMode.REQUIRED)
            String name,

            @Schema(description = "filled in where our list has the species", maxLength = 200)
            String authority) {}

    @Schema(name = "WeightRequest")
    record WeightRequest(
            @Schema(requiredMode = Schema.RequiredMode.REQUIRED, example = "36")
            BigDecimal value,

            @Schema(
                    description = "UCUM code",
                    allowableValues = {"g", "kg", "[oz_av]", "[lb_av]"},
                    requiredMode = Schema.RequiredMode.REQUIRED)
            String unit,

            @Schema(description = "the scale's smallest step, in the same unit", example = "1")
            BigDecimal resolution,

            @Schema(description = "which scale", maxLength = 60)
            String scale,

            @Schema(description = "now if left out; not in the future")
            Instant occurredAt,

            @Schema(description = "stand by a value that no monitor weighs")
            boolean confirmed) {}

    @Schema(name = "LengthRequest")
    record LengthRequest(
            @Schema(requiredMode = Schema.RequiredMode.REQUIRED)
            LengthReading.Part of,

            @Schema(requiredMode = Schema.RequiredMode.REQUIRED, example = "125")
            BigDecimal value,

            @Schema(
                    description = "UCUM code",
                    allowableValues = {"mm", "cm", "[in_i]"},
                    requiredMode = Schema.RequiredMode.REQUIRED)
            String unit,

            @Schema(description = "the tool's smallest step, in the same unit")
            BigDecimal resolution,

            @Schema(description = "which tool", maxLength = 60)
            String tool,

            @Schema(description = "now if left out; not in the future")
            Instant occurredAt,

            @Schema(description = "stand by a value that no monitor measures")
            boolean confirmed) {}
}
