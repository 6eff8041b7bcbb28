package varanid.intake.condition;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Mass against length, as far as the animal's records allow.
 *
 * @param massForLength nothing where no length is near enough in time
 * @param whyNotMassForLength in words, where there is none
 * @param scaledMassIndex the animal against itself
 * @param notice what is said beside every comparison
 */
@Schema(name = "BodyCondition")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record BodyConditionView(
        @Nullable MassForLengthView massForLength,
        @Nullable String whyNotMassForLength,
        ScaledMassIndexView scaledMassIndex,
        String notice) {

    /** What the mass asks at that length, where there is a length near enough in time. */
    public Optional<String> massForLengthQuestion() {
        return Optional.ofNullable(massForLength).map(MassForLengthView::question);
    }

    @Schema(name = "MassForLength")
    record MassForLengthView(
            @Schema(allowableValues = {"below-genus-wide-band", "within-genus-wide-band", "above-genus-wide-band"})
            String place,

            @Schema(description = "what to ask; never a verdict")
            String question,

            double massGrams,
            double snoutVentMillimetres,
            LocalDate weighedOn,
            LocalDate measuredOn,

            @Schema(description = "the band is what all lines span, times and divided by how much species differ")
            double bandLowestGrams,

            double bandHighestGrams,
            List<LineView> lines) {}

    @Schema(name = "ExpectedMass")
    record LineView(
            String line,
            double expectedGrams,

            @Schema(description = "relative condition Kn: mass over the expected mass, without unit")
            double relativeCondition,

            String source) {}

    @Schema(name = "ScaledMassIndex")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record ScaledMassIndexView(
            boolean makesSense,

            @Schema(description = "what it means, or why there is none")
            String text,

            @Nullable Double referenceMillimetres,
            @Nullable BigDecimal slope,

            @Schema(description = "oldest first; empty where it makes no sense")
            List<IndexPoint> points) {}

    @Schema(name = "ScaledMassIndexPoint")
    record IndexPoint(
            LocalDate measuredOn,
            double snoutVentMillimetres,
            LocalDate weighedOn,
            double massGrams,
            double indexGrams,

            @Schema(description = "it had eaten shortly before, or was wet")
            boolean mayBeHeavy) {}
}
