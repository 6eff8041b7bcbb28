package varanid.intake.sample;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.infection.SamplingDefaults;

/** What is assumed of infections and tests, and where each figure comes from. */
@Schema(name = "SamplingSettings")
@JsonInclude(JsonInclude.Include.NON_NULL)
record SettingsView(
        @Schema(description = "when the shipped figures were last gone through")
        String asOf,

        String warning,
        Assumptions.Figure correlation,
        Assumptions.Figure targetFreedom,
        Assumptions.Figure introductionPerRound,
        List<PriorView> priors,
        List<MethodView> methods,

        @Schema(description = "methods that a result may name, of which nothing is assumed")
        List<OtherMethodView> otherMethods,

        @Schema(description = "agents that a result may name, by the group that figures are made of")
        List<GroupView> groups,

        @Schema(description = "left out where nothing was ever changed") @Nullable
        ChangeView lastChange) {

    static SettingsView of(Assumptions assumptions, @Nullable ChangeView lastChange) {
        SamplingDefaults shipped = assumptions.shipped();
        List<String> origins =
                shipped.origins().values().stream().distinct().sorted().toList();
        List<PriorView> priors = shipped.priors().stream()
                .map(SamplingDefaults.Prior::agent)
                .distinct()
                .flatMap(agent -> origins.stream()
                        .flatMap(origin -> assumptions.findPrior(agent, origin).stream()
                                .map(figure -> new PriorView(agent, origin, figure))))
                .toList();
        return new SettingsView(
                shipped.asOf(),
                shipped.warning(),
                assumptions.correlation(),
                assumptions.targetFreedom(),
                assumptions.introductionPerRound(),
                priors,
                assumptions.methods().stream().map(MethodView::of).toList(),
                shipped.otherMethods().stream()
                        .map(each -> new OtherMethodView(each.id(), each.name()))
                        .toList(),
                shipped.groups().stream()
                        .map(each -> new GroupView(each.id(), each.name(), each.members()))
                        .toList(),
                lastChange);
    }

    @Schema(name = "AssumedPrior")
    record PriorView(String agent, String origin, Assumptions.Figure infected) {}

    @Schema(name = "AssumedMethod")
    record MethodView(
            String method,
            String name,
            List<String> kinds,
            List<String> agents,
            Assumptions.Figure sensitivity,
            Assumptions.Figure specificity) {

        static MethodView of(Assumptions.Method method) {
            return new MethodView(
                    method.shipped().id(),
                    method.shipped().name(),
                    method.shipped().kinds(),
                    method.shipped().agents(),
                    method.sensitivity(),
                    method.specificity());
        }
    }

    @Schema(name = "OtherMethod")
    record OtherMethodView(String method, String name) {}

    @Schema(name = "AgentGroup")
    record GroupView(String id, String name, List<String> agents) {}

    /** One change of the organisation's own figures, which replaced all it had set before. */
    @Schema(name = "SamplingSettingsChange")
    record ChangeView(UUID id, long version, OwnFigures figures, String reason, UUID recordedBy, Instant recordedAt) {

        static ChangeView of(SamplingSettingRow row, OwnFigures figures) {
            return new ChangeView(row.id(), row.version(), figures, row.reason(), row.recordedBy(), row.recordedAt());
        }
    }
}
