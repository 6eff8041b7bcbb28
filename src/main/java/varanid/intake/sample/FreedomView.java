package varanid.intake.sample;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.infection.TestsNeeded;

/** What an animal's negative samples say about infections, with everything that is assumed. For clinicians. */
@Schema(name = "Freedom")
@JsonInclude(JsonInclude.Include.NON_NULL)
record FreedomView(
        UUID animalId,
        LocalDate asOf,
        String whatItIs,
        String warning,

        @Schema(description = "the riskier of declared and assessed origin, a CITES source code")
        String steeringOrigin,

        @Schema(description = "the origin that priors go by")
        String origin,

        String counted,
        Reading independentReading,
        Reading correlatedReading,
        Assumptions.Figure targetFreedom,
        Assumptions.Figure introductionPerRound,
        List<AgentLine> agents,

        @Schema(description = "methods with results that no figure is made of")
        List<NoFigure> withoutFigure) {

    /** How repeats are taken. */
    @Schema(name = "FreedomReading")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Reading(String says, Assumptions.@Nullable Figure correlation) {}

    /** One group of agents. */
    @Schema(name = "FreedomOfAgent")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record AgentLine(
            String agent,
            String name,
            List<String> members,
            Assumptions.@Nullable Figure prior,

            @Schema(description = "why there is no figure") @Nullable
            String noFigure,

            @Nullable LastPositive lastPositive,
            List<MethodLine> methods,
            @Nullable Combined combined) {}

    /** The last sample in which it was found. */
    @Schema(name = "LastPositive")
    record LastPositive(UUID sampleId, LocalDate takenOn, List<String> agents, String remark) {}

    /** One method that looks for the agent. */
    @Schema(name = "FreedomByMethod")
    record MethodLine(
            String method,
            String name,
            Assumptions.Figure sensitivity,
            Assumptions.Figure specificity,
            @Schema(description = "that count") int negatives,
            List<UUID> samples,

            @Schema(description = "probability of freedom, tests independent")
            double independent,

            @Schema(description = "probability of freedom, tests correlated")
            double correlated,

            FalsePositives falsePositives,
            Needed moreForTarget,
            Introduction withIntroduction) {}

    /** What positives of an animal without the infection would be. */
    @Schema(name = "FalsePositives")
    record FalsePositives(
            @Schema(description = "that so many tests give at least one")
            double probability,

            String remark) {}

    /** How many more tests, by either reading. */
    @Schema(name = "MoreTests")
    record Needed(More independent, More correlated) {}

    /** How many more tests; or that no number is enough. */
    @Schema(name = "MoreTestsOfReading")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record More(
            boolean reachable,
            @Nullable Integer tests,

            @Schema(description = "the highest probability of freedom that any number of tests comes to") @Nullable
            Double highest) {

        static More of(TestsNeeded needed) {
            if (needed instanceof TestsNeeded.Number number) {
                return new More(true, number.tests(), null);
            }
            TestsNeeded.NotReachable never = (TestsNeeded.NotReachable) needed;
            return new More(false, null, Shown.freedom(never.highest()));
        }
    }

    /** The same negatives as rounds between which infection may be brought in. */
    @Schema(name = "FreedomWithIntroduction")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Introduction(
            @Schema(description = "probability of freedom after the last negative")
            double freedom,

            @Schema(
                    description =
                            "what it comes to with ever more rounds; left out where more is brought in than found")
            @Nullable
            Double longRun,

            String remark) {}

    /** All methods together. */
    @Schema(name = "FreedomCombined")
    record Combined(
            List<String> methods,

            @Schema(description = "probability of freedom, all tests independent")
            double independent,

            @Schema(description = "that so many tests of a free animal give at least one positive")
            double falsePositive,

            String remark) {}

    /** A method with results that no figure is made of. */
    @Schema(name = "MethodWithoutFigure")
    record NoFigure(String method, String name, int results, String why) {}
}
