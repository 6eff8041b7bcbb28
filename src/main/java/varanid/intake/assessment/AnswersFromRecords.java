package varanid.intake.assessment;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;
import varanid.intake.platform.web.Caller;
import varanid.intake.scoring.Answer;
import varanid.intake.scoring.ChecklistDraft;
import varanid.intake.weight.AnswerFromWeighings;
import varanid.intake.weight.AnswerSource;
import varanid.intake.weight.TrendAnswer;
import varanid.intake.weight.WeightTrend;
import varanid.intake.weight.WeightTrends;

/** Answers what a look leaves open and the animal's records know. What a person answered always stands. */
@Component
class AnswersFromRecords {

    private final WeightTrends trends;

    AnswersFromRecords(WeightTrends trends) {
        this.trends = trends;
    }

    /**
     * A look with what the records answered in it.
     *
     * @param from by finding, where each of those answers comes from
     */
    record Filled(NewAssessment look, Map<String, AnswerSource> from) {}

    Filled fill(Caller caller, UUID animalId, NewAssessment look) {
        Optional<ChecklistDraft.Finding> asked =
                look.look().edition().checklist().findFinding(WeightTrend.FINDING);
        if (asked.isEmpty() || asked.get().measure() == null || look.look().isAnswered(WeightTrend.FINDING)) {
            return new Filled(look, Map.of());
        }
        ChecklistDraft.Measure measure = Objects.requireNonNull(asked.get().measure());
        String lifeStage = look.look().attributes().getOrDefault("lifeStage", "unknown");
        return trends.findAnswer(caller.organisationId(), caller.zone(), animalId, look.occurredAt(), lifeStage)
                .flatMap(found -> fill(look, found, measure))
                .orElseGet(() -> new Filled(look, Map.of()));
    }

    /** Nothing where the checklist does not take such an answer. */
    private static Optional<Filled> fill(
            NewAssessment look, AnswerFromWeighings found, ChecklistDraft.Measure measure) {
        Answer answer = found.answer()
                .fold(
                        measured -> measured(measured, measure.step()),
                        notYetDue -> Answer.notYetDue(),
                        notObserved -> Answer.notObserved());
        LookRequest filled = look.look().filledWith(Map.of(WeightTrend.FINDING, answer));
        return filled.edition().scorer().faultsOf(filled.look(Set.of())).isEmpty()
                ? Optional.of(new Filled(look.with(filled), Map.of(WeightTrend.FINDING, found.source())))
                : Optional.empty();
    }

    /** Rounded outward to the checklist's step: rounding to the nearest could carry an end over a threshold. */
    private static Answer measured(TrendAnswer.Measured measured, BigDecimal step) {
        return new Answer.Measured(
                toStep(measured.lowest(), step, RoundingMode.FLOOR),
                toStep(measured.highest(), step, RoundingMode.CEILING),
                BigDecimal.valueOf(measured.overDays()));
    }

    private static BigDecimal toStep(BigDecimal value, BigDecimal step, RoundingMode rounding) {
        return value.divide(step, 0, rounding).multiply(step);
    }
}
