package varanid.intake.sample;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.animal.ConsignmentSizes;
import varanid.intake.infection.ConsignmentSampling;
import varanid.intake.infection.SampleSize;
import varanid.intake.infection.SamplingDefaults;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.platform.web.Query;

@RestController
@RequestMapping("/api/v1/consignments/{id}/sample-size")
@Tag(name = "Samples")
class SampleSizeController {

    private static final int MOST_ANIMALS = 100_000;
    private static final double USUAL_CONFIDENCE = 0.95;
    private static final Pattern DECIMAL = Pattern.compile("[0-9]{0,3}(\\.[0-9]{1,9})?");
    private static final Pattern WHOLE = Pattern.compile("[0-9]{1,9}");

    private final ConsignmentSizes consignments;
    private final SamplingSettings settings;

    SampleSizeController(ConsignmentSizes consignments, SamplingSettings settings) {
        this.consignments = consignments;
        this.settings = settings;
    }

    @GetMapping
    @Operation(
            summary = "How many animals of a consignment to sample",
            description = "Exact, drawn without putting back. It finds out whether the group is infected and says"
                    + " nothing sure of any one animal.")
    @Parameter(
            name = "agent",
            in = ParameterIn.QUERY,
            required = true,
            description = "a group of agents, such as coccidia",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "method",
            in = ParameterIn.QUERY,
            required = true,
            description = "a method that looks for it",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "prevalence",
            in = ParameterIn.QUERY,
            required = true,
            description = "the part of the group that should not be missed, more than 0, at most 1",
            schema = @Schema(type = "number"))
    @Parameter(
            name = "confidence",
            in = ParameterIn.QUERY,
            description = "the probability of finding at least one, between 0 and 1; 0.95 unless said",
            schema = @Schema(type = "number"))
    @Parameter(
            name = "animals",
            in = ParameterIn.QUERY,
            description = "how many animals; those registered unless said",
            schema = @Schema(type = "integer", minimum = "1", maximum = "100000"))
    @Transactional(readOnly = true)
    public ResponseEntity<SampleSizeView> sampleSize(Caller caller, @PathVariable UUID id, Query query) {
        int registered = consignments
                .find(caller.organisationId(), id)
                .orElseThrow(() -> ProblemException.notFound("consignment"));
        Assumptions assumptions = settings.get(caller.organisationId());
        Given<String> agent = query.choice("agent", agents(assumptions.shipped()), Function.identity())
                .required();
        Given<Assumptions.Method> method = query.choice(
                        "method", assumptions.methods(), each -> each.shipped().id())
                .required();
        if (agent.isGiven() && method.isGiven() && !method.get().looksFor(agent.get())) {
            method.fault(
                    "does not look for " + agent.get(),
                    "one of: "
                            + String.join(
                                    ", ",
                                    assumptions.methods().stream()
                                            .filter(each -> each.looksFor(agent.get()))
                                            .map(each -> each.shipped().id())
                                            .toList()));
        }
        Given<Double> prevalence = query.text("prevalence", 20)
                .map("a number more than 0 and at most 1", text -> decimal(text, true))
                .required();
        Given<Double> confidence = query.text("confidence", 20)
                .map("a number between 0 and 1, both excluded", text -> decimal(text, false));
        Given<Integer> asked =
                query.text("animals", 20).map("a whole number from 1 to " + MOST_ANIMALS, SampleSizeController::whole);
        query.orThrow();
        int animals = asked.orElse(registered);
        if (animals == 0) {
            throw new ProblemException(
                    ProblemType.INVALID_REQUEST,
                    "No animal of this consignment is registered yet.",
                    List.of(Fault.inParameter("animals", "is missing", "how many animals there are")));
        }
        return ResponseEntity.ok(view(
                agent.get(),
                method.get(),
                ConsignmentSampling.atPrevalence(
                        animals, prevalence.get(), method.get().sensitivity().value()),
                asked.isGiven() ? "asked" : "register",
                registered,
                prevalence.get(),
                confidence.orElse(USUAL_CONFIDENCE),
                assumptions.texts()));
    }

    private static SampleSizeView view(
            String agent,
            Assumptions.Method method,
            ConsignmentSampling sampling,
            String animalsFrom,
            int registered,
            double prevalence,
            double confidence,
            SamplingDefaults.Texts texts) {
        SampleSize size = sampling.sampleSize(confidence);
        int all = sampling.animals();
        double detectionOfAll = Shown.probability(sampling.detection(all));
        @Nullable Integer number = null;
        @Nullable Double detection = null;
        @Nullable String notReachable = null;
        if (size instanceof SampleSize.Animals enough) {
            number = enough.number();
            detection = Shown.probability(enough.detection());
        } else {
            notReachable = texts.notReachable();
        }
        return new SampleSizeView(
                agent,
                method.shipped().id(),
                all,
                animalsFrom,
                registered,
                prevalence,
                sampling.infected(),
                confidence,
                number != null,
                number,
                detection,
                notReachable,
                new AllAnimals(all, detectionOfAll),
                texts.groupCaution(),
                new SizeAssumptions(
                        method.sensitivity(), texts.specificityOne(), texts.chosenAtRandom(), texts.roundedUp()));
    }

    private static List<String> agents(SamplingDefaults known) {
        return known.priors().stream()
                .map(SamplingDefaults.Prior::agent)
                .distinct()
                .toList();
    }

    private static double decimal(String text, boolean withOne) {
        if (text.isEmpty() || !DECIMAL.matcher(text).matches()) {
            throw new IllegalArgumentException("is not a number such as 0.1");
        }
        BigDecimal value = new BigDecimal(text);
        int toOne = value.compareTo(BigDecimal.ONE);
        if (value.signum() <= 0 || toOne > 0 || toOne == 0 && !withOne) {
            throw new IllegalArgumentException("is out of range");
        }
        return value.doubleValue();
    }

    private static int whole(String text) {
        if (!WHOLE.matcher(text).matches()) {
            throw new IllegalArgumentException("is not a whole number");
        }
        int value = Integer.parseInt(text);
        if (value < 1 || value > MOST_ANIMALS) {
            throw new IllegalArgumentException("is out of range");
        }
        return value;
    }

    @Schema(name = "SampleSize")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record SampleSizeView(
            String agent,
            String method,
            int animals,
            @Schema(allowableValues = {"register", "asked"}) String animalsFrom,
            int registered,
            double prevalence,

            @Schema(description = "infected animals that should not be missed: the prevalence, rounded up")
            int infectedAtLeast,

            double confidence,
            boolean reachable,

            @Schema(description = "animals to sample") @Nullable
            Integer sample,

            @Schema(description = "probability that they find at least one") @Nullable
            Double detection,

            @Nullable String notReachable,
            AllAnimals allAnimals,
            String caution,
            SizeAssumptions assumptions) {}

    @Schema(name = "SampleAllAnimals", description = "the alternative; its detection is the ceiling")
    record AllAnimals(int sample, double detection) {}

    @Schema(name = "SampleSizeAssumptions")
    record SizeAssumptions(Assumptions.Figure sensitivity, String specificity, String draw, String infected) {}
}
