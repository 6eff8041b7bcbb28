package varanid.intake.quarantine;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.vet.Recommendation;

/** The quarantine of one animal, as people read it. */
@Schema(name = "Quarantine")
@JsonInclude(JsonInclude.Include.NON_NULL)
record QuarantineView(
        UUID animalId,
        @Nullable String name,
        LocalDate asOf,

        @Schema(allowableValues = {"not-placed", "in-quarantine", "resident", "gone"})
        String where,

        @Schema(description = "what to do where there is no plan") @Nullable
        String note,

        @Nullable UUID roomId,
        @Nullable String roomName,
        RoomView.@Nullable ClockSummary clock,

        @Schema(allowableValues = {"standard", "strict"}) String isolation,

        @Schema(description = "how that which was found or is suspected travels")
        List<String> contagionRoutes,

        @Schema(description = "by the last look and what vets answered; none where nobody has looked or answered")
        @Nullable
        String urgency,

        @Schema(
                description = "whose word the urgency is; the recommendation has the rest",
                allowableValues = {"computed", "vet"})
        String urgencyBy,

        @Schema(description = "what a vet is to be called for: it came after the vet's answer") @Nullable
        String alert,

        WorkPlaceView workPlace,

        @Schema(description = "what a vet is to be asked, or the room waits for: before everything else")
        List<ClockView.AskView> ask,

        @Schema(description = "what is to be done next, overdue first, then by date")
        List<TaskView> next,

        @Schema(description = "what a release still needs: every condition that is not met")
        List<ReviewView.ConditionView> neededForRelease,

        @Nullable PlanView plan,
        @Nullable String warning) {

    private static final int NEXT = 12;

    static QuarantineView of(
            QuarantinePolicy policy,
            FollowUp followUp,
            Optional<RoomRow> room,
            List<ReleaseCondition> needed,
            Names names) {
        return new QuarantineView(
                followUp.animalId(),
                names.find(followUp.animalId()),
                followUp.asOf(),
                followUp.where().code(),
                note(policy, followUp),
                followUp.room().map(FollowUp.Place::id).orElse(null),
                followUp.room().map(FollowUp.Place::name).orElse(null),
                room.flatMap(row -> followUp.clock().map(reading -> RoomView.ClockSummary.of(policy, row, reading)))
                        .orElse(null),
                followUp.isolation().code(),
                followUp.contagion().stream().sorted().map(Route::code).toList(),
                followUp.urgency().orElse(null),
                followUp.answered()
                        .map(holds -> holds.by().name().toLowerCase(Locale.ROOT))
                        .orElse("computed"),
                followUp.answered().flatMap(Recommendation::alert).orElse(null),
                WorkPlaceView.of(policy, followUp.workPlace()),
                followUp.asks().stream()
                        .map(ask -> ClockView.AskView.of(policy, ask, names))
                        .toList(),
                followUp.toDo().stream()
                        .sorted(Comparator.comparing(
                                        (FollowedTask each) -> each.state() == FollowedTask.State.OVERDUE ? 0 : 1)
                                .thenComparing(each -> each.task().due()))
                        .limit(NEXT)
                        .map(TaskView::of)
                        .toList(),
                needed.stream().map(ReviewView.ConditionView::of).toList(),
                followUp.plan().map(plan -> PlanView.of(plan, followUp.tasks())).orElse(null),
                followUp.plan().map(QuarantinePlan::warning).orElse(null));
    }

    private static @Nullable String note(QuarantinePolicy policy, FollowUp followUp) {
        QuarantinePolicy.Says says = policy.says();
        return switch (followUp.where()) {
            case NOT_PLACED -> says.notPlaced();
            case RESIDENT -> followUp.room().isPresent() ? says.resident() : says.residentWithoutRoom();
            case GONE -> says.gone();
            case IN_QUARANTINE -> null;
        };
    }

    @Schema(name = "WorkPlace")
    record WorkPlaceView(
            @Schema(allowableValues = {"residents", "newcomers-without-signs", "suspect", "sick"})
            String place,

            String text) {

        static WorkPlaceView of(QuarantinePolicy policy, WorkPlace place) {
            return new WorkPlaceView(
                    place.code(),
                    policy.workOrder().places().stream()
                            .filter(each -> each.place() == place)
                            .map(QuarantinePolicy.Place::text)
                            .findFirst()
                            .orElseThrow());
        }
    }

    @Schema(name = "QuarantineTask")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record TaskView(
            @Schema(
                    allowableValues = {
                        "weighing",
                        "re-look",
                        "mite-check",
                        "full-clean",
                        "faecal-sample",
                        "release-review",
                        "vet-visit"
                    })
            String kind,

            @Schema(description = "which one of its kind; with it the kind always means the same task")
            int ordinal,

            @Schema(description = "the first day that is good")
            LocalDate due,

            @Schema(description = "the last day that is good")
            LocalDate latest,

            @Schema(allowableValues = {"open", "done", "overdue", "let-pass"})
            String state,

            @Nullable LocalDate doneOn,
            String title,
            String instruction,
            String source) {

        static TaskView of(FollowedTask each) {
            Task task = each.task();
            return new TaskView(
                    task.kind().code(),
                    task.ordinal(),
                    task.due(),
                    task.latest(),
                    each.state().code(),
                    each.doneOn().orElse(null),
                    task.title(),
                    task.instruction(),
                    task.source());
        }
    }

    @Schema(name = "QuarantinePlan")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record PlanView(
            @Schema(description = "day 0") LocalDate start,

            @Schema(description = "how long this animal is kept apart at least, and who says so")
            MinimumStay minimumStay,

            @Schema(description = "every task, by date, done ones included")
            List<TaskView> tasks,

            @Schema(description = "the order of the rounds") List<String> workOrder,

            List<AdviceView> tools,
            List<AdviceView> hygiene,
            List<DisinfectantView> disinfectants,

            @Schema(description = "belong beside the disinfectants, always")
            List<AdviceView> cautions) {

        static PlanView of(QuarantinePlan plan, List<FollowedTask> tasks) {
            return new PlanView(
                    plan.start(),
                    plan.stay(),
                    tasks.stream().map(TaskView::of).toList(),
                    plan.workOrder().stream().map(QuarantinePolicy.Place::text).toList(),
                    plan.tools().stream()
                            .map(tool -> new AdviceView(tool.text(), tool.source()))
                            .toList(),
                    plan.hygiene().stream().map(AdviceView::of).toList(),
                    plan.disinfectants().stream().map(DisinfectantView::of).toList(),
                    plan.cautions().stream().map(AdviceView::of).toList());
        }
    }

    @Schema(name = "QuarantineAdvice")
    record AdviceView(String text, String source) {
        static AdviceView of(QuarantinePolicy.Advice advice) {
            return new AdviceView(advice.text(), advice.source());
        }
    }

    @Schema(name = "Disinfectant")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record DisinfectantView(
            String id,
            String name,
            String use,
            @Nullable Integer partsStock,
            @Nullable Integer partsWater,

            @Schema(description = "of the active substance in the mixture") @Nullable
            BigDecimal percent,

            @Schema(description = "the same in parts per million") @Nullable
            BigDecimal partsPerMillion,

            @Schema(description = "how long it stays wet; none where the label says") @Nullable
            Integer minutes,

            @Schema(
                    description = "on oocysts of Cryptosporidium",
                    allowableValues = {"works", "weak", "does-not-work"})
            String oocysts,

            String source) {

        static DisinfectantView of(QuarantinePolicy.Disinfectant each) {
            Optional<Dilution> dilution = each.dilution();
            return new DisinfectantView(
                    each.id(),
                    each.name(),
                    each.use(),
                    each.partsStock(),
                    each.partsWater(),
                    dilution.map(mixed -> rounded(mixed.percent(), 2)).orElse(null),
                    dilution.map(mixed -> rounded(mixed.partsPerMillion(), -1)).orElse(null),
                    each.minutes(),
                    each.oocysts().toString(),
                    each.source());
        }

        private static BigDecimal rounded(double value, int decimals) {
            BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
            return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
        }
    }
}
