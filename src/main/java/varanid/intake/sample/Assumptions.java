package varanid.intake.sample;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import varanid.intake.infection.SamplingDefaults;
import varanid.intake.infection.TestQuality;

/** What is in force: the organisation's own figures where it has set any, otherwise those that are shipped. */
final class Assumptions {

    private final SamplingDefaults shipped;
    private final OwnFigures own;
    private final @Nullable String reason;

    private Assumptions(SamplingDefaults shipped, OwnFigures own, @Nullable String reason) {
        this.shipped = shipped;
        this.own = own;
        this.reason = reason;
    }

    static Assumptions shipped(SamplingDefaults shipped) {
        return new Assumptions(shipped, OwnFigures.NONE, null);
    }

    static Assumptions of(SamplingDefaults shipped, OwnFigures own, String reason) {
        return new Assumptions(shipped, own, reason);
    }

    SamplingDefaults.Texts texts() {
        return shipped.texts();
    }

    SamplingDefaults shipped() {
        return shipped;
    }

    Figure correlation() {
        return figure(shipped.correlation(), own.correlation());
    }

    Figure targetFreedom() {
        return figure(shipped.targetFreedom(), own.targetFreedom());
    }

    Figure introductionPerRound() {
        return figure(shipped.introductionPerRound(), own.introductionPerRound());
    }

    /** How many are infected before any test; nothing where nobody assumes anything. */
    Optional<Figure> findPrior(String group, String origin) {
        @Nullable
        Double ours = own.priors().stream()
                .filter(prior -> prior.agent().equals(group) && prior.origin().equals(origin))
                .map(OwnFigures.OwnPrior::infected)
                .findFirst()
                .orElse(null);
        return shipped.findPrior(group, origin)
                .map(prior -> figure(prior.infected(), prior.source(), prior.weakness(), ours));
    }

    List<Method> methods() {
        return shipped.methods().stream().map(this::method).toList();
    }

    Optional<Method> findMethod(String id) {
        return shipped.findMethod(id).map(this::method);
    }

    private Method method(SamplingDefaults.Method method) {
        Optional<OwnFigures.OwnMethod> ours = own.methods().stream()
                .filter(each -> each.method().equals(method.id()))
                .findFirst();
        return new Method(
                method,
                figure(
                        method.sensitivity(),
                        method.source(),
                        method.weakness(),
                        ours.map(OwnFigures.OwnMethod::sensitivity).orElse(null)),
                figure(
                        method.specificity(),
                        method.source(),
                        method.weakness(),
                        ours.map(OwnFigures.OwnMethod::specificity).orElse(null)));
    }

    private Figure figure(SamplingDefaults.Figure figure, @Nullable Double ours) {
        return figure(figure.value(), figure.source(), figure.weakness(), ours);
    }

    private Figure figure(double value, String source, String weakness, @Nullable Double ours) {
        return ours == null || reason == null
                ? new Figure(value, "shipped", source, weakness, null)
                : new Figure(ours, "organisation", reason, shipped.texts().setByOrganisation(), value);
    }

    /**
     * A number, whose it is, and what it rests on.
     *
     * @param value 0 to 1
     * @param from {@code shipped} or {@code organisation}
     * @param source where it is from; of the organisation's, the reason it gave
     * @param weakness why it may not hold
     * @param shippedValue what is shipped, where the organisation has set another
     */
    @Schema(name = "AssumedFigure")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Figure(
            double value,

            @Schema(allowableValues = {"shipped", "organisation"})
            String from,

            String source,
            String weakness,
            @Nullable Double shippedValue) {}

    /** A method, and how good it is taken to be. */
    record Method(SamplingDefaults.Method shipped, Figure sensitivity, Figure specificity) {

        TestQuality quality() {
            return new TestQuality(sensitivity.value(), specificity.value());
        }

        boolean looksFor(String group) {
            return shipped.agents().contains(group);
        }
    }
}
