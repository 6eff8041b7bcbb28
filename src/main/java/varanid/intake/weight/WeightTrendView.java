package varanid.intake.weight;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import varanid.intake.animal.LifeStage;
import varanid.intake.condition.BodyConditionView;

/** What the weighings of an animal say as of a day; of an animal without one, what to do first. */
@Schema(name = "WeightTrend")
@JsonInclude(JsonInclude.Include.NON_NULL)
record WeightTrendView(
        LocalDate asOf,

        @Schema(description = "thresholds are those for this one")
        LifeStage lifeStage,

        @Schema(description = "none where it was never weighed") @Nullable
        ReadingView latest,

        @Schema(description = "from each weighing that the latest can be compared with, oldest first")
        List<ChangeView> changes,

        @Schema(description = "none with fewer than three comparable weighing days") @Nullable
        SlopeView slope,

        @Schema(description = "the most urgent first") List<ThresholdView> thresholds,

        List<CaveatView> caveats,

        @Schema(description = "what a look gets as its answer to the finding, where the person gives none") @Nullable
        AnswerView answer,

        @Schema(description = "in words, the most pressing first")
        List<String> whatToDo,

        @Schema(description = "mass against length; a question, never a verdict") @Nullable
        BodyConditionView bodyCondition) {

    static WeightTrendView withoutWeighing(LocalDate asOf, LifeStage lifeStage, WeightRules rules) {
        return new WeightTrendView(
                asOf,
                lifeStage,
                null,
                List.of(),
                null,
                List.of(),
                List.of(),
                null,
                List.of(Objects.requireNonNull(rules.advice().get(WeightRules.Advice.FIRST_WEIGHING))),
                null);
    }

    @Schema(name = "WeightChange", description = "Up to the latest weighing, in percent; a loss is negative")
    record ChangeView(
            ReadingView from,
            int overDays,

            @Schema(description = "the lowest that the two displays allow")
            BigDecimal lowestPercent,

            BigDecimal percent,
            BigDecimal highestPercent,

            @Schema(description = "100 ln(m2/m1) over the days")
            double growthPercentPerDay,

            List<String> caveats,
            String text) {}

    @Schema(name = "WeightSlope")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record SlopeView(
            LocalDate from,
            LocalDate to,
            int overDays,
            int weighingDays,

            @Schema(description = "on how many of them it was fed or wet")
            int heavyDays,

            double percentPerDay,

            @Schema(description = "none with fewer than five weighing days") @Nullable
            SlopeIntervalView interval,

            String method,
            String text) {}

    @Schema(name = "WeightSlopeInterval")
    record SlopeIntervalView(
            double lowestPercentPerDay,
            double highestPercentPerDay,

            @Schema(description = "over everything the scales may hide")
            double lowestPercentPerDayWithRounding,

            double highestPercentPerDayWithRounding,

            @Schema(description = "at least this share of such intervals hold the true slope, scatter alone")
            double coverage) {}

    @Schema(name = "WeightThreshold")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record ThresholdView(
            String threshold,
            String text,

            @Schema(description = "how soon a vet, where it is past")
            String urgency,

            @Schema(allowableValues = {"past", "not-past", "cannot-tell"})
            String state,

            BigDecimal atMostPercent,
            int atLeastDays,
            int withinDays,
            @Nullable EvidenceView evidence,

            @Schema(description = "where it cannot be told, what stands in the way and what would help")
            List<CaveatView> why,

            List<String> sources) {}

    @Schema(name = "WeightEvidence")
    record EvidenceView(
            @Schema(allowableValues = {"two-readings", "slope"})
            String kind,

            List<ReadingView> readings,
            int overDays,
            BigDecimal lowestPercent,
            BigDecimal highestPercent,
            String text) {}

    /**
     * @param answer as a look would write it
     */
    @Schema(name = "WeightAnswer")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record AnswerView(
            @Schema(example = "weight-trend") String finding,

            @Schema(allowableValues = {"measured", "not-yet-due", "not-observed"})
            String answer,

            @Nullable BigDecimal lowestPercent,
            @Nullable BigDecimal highestPercent,
            @Nullable Integer overDays,
            AnswerSource from) {

        static AnswerView of(AnswerFromWeighings it) {
            return it.answer()
                    .fold(
                            measured -> new AnswerView(
                                    WeightTrend.FINDING,
                                    "measured",
                                    measured.lowest(),
                                    measured.highest(),
                                    measured.overDays(),
                                    it.source()),
                            waiting -> plain("not-yet-due", it),
                            not -> plain("not-observed", it));
        }

        private static AnswerView plain(String answer, AnswerFromWeighings it) {
            return new AnswerView(WeightTrend.FINDING, answer, null, null, null, it.source());
        }
    }
}
