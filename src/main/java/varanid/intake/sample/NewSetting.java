package varanid.intake.sample;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import varanid.intake.infection.SamplingDefaults;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;
import varanid.intake.platform.web.JsonValue;

/** What an organisation wants to assume from now on, and why. */
record NewSetting(OwnFigures figures, String reason) {

    private static final int DECIMALS = 6;

    static Supplier<NewSetting> reader(JsonFields fields, SamplingDefaults known) {
        List<String> agents = known.priors().stream()
                .map(SamplingDefaults.Prior::agent)
                .distinct()
                .toList();
        List<String> origins =
                known.origins().values().stream().distinct().sorted().toList();
        List<String> methods =
                known.methods().stream().map(SamplingDefaults.Method::id).toList();
        Set<List<String>> seen = new HashSet<>();
        Given<List<OwnFigures.OwnPrior>> priors =
                fields.list("priors", 100, value -> value.object(prior -> readPrior(prior, agents, origins, seen)));
        Set<String> seenMethods = new HashSet<>();
        Given<List<OwnFigures.OwnMethod>> own =
                fields.list("methods", 100, value -> value.object(method -> readMethod(method, methods, seenMethods)));
        Given<BigDecimal> correlation = fraction(fields.field("correlation"));
        Given<BigDecimal> target = inside(fraction(fields.field("targetFreedom")));
        Given<BigDecimal> introduction = fraction(fields.field("introductionPerRound"))
                .check(
                        value -> value.compareTo(BigDecimal.ONE) < 0,
                        "would infect every animal before every round",
                        "a number from 0 to less than 1");
        Given<String> reason = fields.prose("reason", 4_000).required();
        return () -> new NewSetting(
                new OwnFigures(
                        priors.orElse(List.of()),
                        own.orElse(List.of()),
                        number(correlation),
                        number(target),
                        number(introduction)),
                reason.get());
    }

    private static Supplier<OwnFigures.OwnPrior> readPrior(
            JsonFields fields, List<String> agents, List<String> origins, Set<List<String>> seen) {
        Given<String> agent =
                fields.choice("agent", agents, Function.identity()).required();
        Given<String> origin =
                fields.choice("origin", origins, Function.identity()).required();
        Given<BigDecimal> infected = inside(fraction(fields.field("infected"))).required();
        if (agent.isGiven() && origin.isGiven() && !seen.add(List.of(agent.get(), origin.get()))) {
            fields.fault("is there twice for this agent and origin", "each agent and origin once");
        }
        return () -> new OwnFigures.OwnPrior(
                agent.get(), origin.get(), infected.get().doubleValue());
    }

    private static Supplier<OwnFigures.OwnMethod> readMethod(
            JsonFields fields, List<String> methods, Set<String> seen) {
        Given<String> method =
                fields.choice("method", methods, Function.identity()).required();
        Given<BigDecimal> sensitivity = fraction(fields.field("sensitivity")).required();
        Given<BigDecimal> specificity = fraction(fields.field("specificity")).required();
        if (method.isGiven() && !seen.add(method.get())) {
            fields.fault("is there twice for this method", "each method once");
        }
        if (sensitivity.isGiven()
                && specificity.isGiven()
                && sensitivity.get().add(specificity.get()).compareTo(BigDecimal.ONE) <= 0) {
            fields.fault(
                    "is no better than chance: an infected animal is then negative as easily as a free one",
                    "sensitivity and specificity that add up to more than 1");
        }
        return () -> new OwnFigures.OwnMethod(
                method.get(), sensitivity.get().doubleValue(), specificity.get().doubleValue());
    }

    private static Given<BigDecimal> fraction(JsonValue value) {
        return value.decimal(BigDecimal.ZERO, BigDecimal.ONE, DECIMALS);
    }

    /** At 0 or 1 nothing would ever change it. */
    private static Given<BigDecimal> inside(Given<BigDecimal> fraction) {
        return fraction.check(
                value -> value.signum() > 0 && value.compareTo(BigDecimal.ONE) < 0,
                "is certain, and no test could change it",
                "a number between 0 and 1, both excluded");
    }

    private static @Nullable Double number(Given<BigDecimal> given) {
        return given.isGiven() ? Double.valueOf(given.get().doubleValue()) : null;
    }

    /** Only described here: {@link #reader} reads it. */
    @Schema(name = "NewSamplingSettings")
    record Body(
            @Schema(description = "those that differ from what is shipped") @Nullable
            List<PriorBody> priors,

            @Schema(description = "those that differ from what is shipped") @Nullable
            List<MethodBody> methods,

            @Schema(minimum = "0", maximum = "1") @Nullable BigDecimal correlation,

            @Schema(description = "between 0 and 1") @Nullable
            BigDecimal targetFreedom,

            @Schema(description = "from 0 to less than 1") @Nullable
            BigDecimal introductionPerRound,

            @Schema(
                    description = "why, and where the figures are from",
                    maxLength = 4000,
                    requiredMode = Schema.RequiredMode.REQUIRED)
            String reason) {

        @Schema(name = "NewOwnPrior")
        record PriorBody(String agent, String origin, BigDecimal infected) {}

        @Schema(name = "NewOwnMethod")
        record MethodBody(String method, BigDecimal sensitivity, BigDecimal specificity) {}
    }
}
