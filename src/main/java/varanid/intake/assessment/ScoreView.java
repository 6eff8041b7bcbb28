package varanid.intake.assessment;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import varanid.intake.checklist.Edition;
import varanid.intake.scoring.Result;

/** A result as it is sent: codes, numbers and the checklist's own texts. */
@Schema(name = "Score")
@JsonInclude(JsonInclude.Include.NON_NULL)
record ScoreView(
        UrgencyView urgency,
        Result.Score score,
        @Nullable IsolationView isolation,
        List<ReasonView> reasons,
        List<UnknownView> unknowns,

        @Schema(description = "What to look at next, the best first; empty once nothing more can change the decision")
        List<NextView> next,

        @Schema(description = "Answers that a condition of the look excuses, and when to look again without it")
        List<LookAgainView> lookAgain,

        Settling settling,
        NearestView nearest,
        CompletionsView completions,
        List<Result.Advice> advice,
        List<Result.Advice> cautions,
        List<String> notices,
        ChecklistRef checklist) {

    @Schema(name = "Urgency")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record UrgencyView(
            @Schema(allowableValues = {"routine", "urgent", "asap", "stat"})
            String recommended,

            @Nullable String label,
            @Nullable String headline,

            @Schema(
                    description = "what carries the recommendation",
                    allowableValues = {"answers", "unseen", "excused"})
            String basis,

            @Nullable Duration within,

            @Schema(description = "an assessment says by when instead of how soon") @Nullable
            Instant by,

            @Schema(description = "how soon to look again for what was unseen, where that carries the recommendation")
            @Nullable
            Duration lookAgainAfter,

            @Schema(description = "an assessment says when instead of how soon") @Nullable
            Instant lookAgainAt,

            @Schema(description = "no completion of the look is less urgent")
            String lowest,

            @Schema(description = "no completion of the look is more urgent")
            String highest,

            @Schema(description = "no further answer can change urgency or isolation")
            boolean settled) {}

    @Schema(name = "IsolationAdvice")
    record IsolationView(
            @Schema(allowableValues = {"standard", "strict"})
            String recommended,

            @Schema(description = "what unknown answers could still ask for")
            String highest,

            List<String> routes,
            List<IsolationReasonView> because,
            List<String> couldBeRaisedBy) {}

    @JsonInclude(JsonInclude.Include.NON_NULL)
    record IsolationReasonView(
            String route,
            @Nullable String finding,
            @Nullable String level,
            @Nullable String combination,
            String text) {}

    @Schema(name = "Reason")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record ReasonView(
            @Schema(allowableValues = {"level", "combination", "section", "total", "precaution", "excused"})
            String kind,

            @Schema(description = "the urgency that this alone asks for")
            String urgency,

            @Nullable String id,
            @Nullable String level,
            BigDecimal points,

            @Schema(description = "false where a heavier sign of the same cause counts instead")
            boolean counted,

            String text,
            @Nullable String why,
            List<String> sources) {}

    @Schema(name = "Unknown")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record UnknownView(
            String finding,

            @Schema(
                    allowableValues = {
                        "missing",
                        "not-observed",
                        "not-yet-due",
                        "masked",
                        "explained",
                        "interval",
                        "implied"
                    })
            String why,

            boolean mustSee,
            @Nullable String answered,
            List<String> conditions,
            @Nullable String impliedBy,

            @Schema(description = "the worst level it may stand for")
            String couldBe,

            @Nullable Duration dueAfter,
            @Nullable LocalDate dueOn) {}

    @Schema(name = "NextLook")
    record NextView(
            String finding,
            boolean mustSee,
            String couldRaiseTo,
            boolean couldIsolate,
            BigDecimal points,
            int effort,
            double value) {}

    @Schema(name = "LookAgain")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record LookAgainView(
            String finding,
            String level,
            String condition,
            @Nullable Duration after,
            @Nullable Duration atLatest,
            @Nullable Instant afterAt,
            @Nullable Instant atLatestAt,
            String ifStillThere) {}

    @Schema(name = "Settling", description = "a smallest set of looks that would settle it if all were reassuring")
    record Settling(
            List<String> looks,

            @Schema(description = "false where a smaller set may exist")
            boolean exact) {}

    @JsonInclude(JsonInclude.Include.NON_NULL)
    record NearestView(Result.@Nullable Change milder, Result.@Nullable Change worse) {}

    @Schema(description = "what the unknown findings would have to be for the lowest and the highest urgency")
    record CompletionsView(Map<String, String> lowest, Map<String, String> highest) {}

    record ChecklistRef(String id, int version, String digest) {}

    /** The result of a look that is not kept: durations count from whenever it is read. */
    static ScoreView of(Result result, Edition edition) {
        return of(result, edition, null, null);
    }

    /** The result of a look at a moment: durations become moments and dates. */
    static ScoreView at(Result result, Edition edition, Instant lookedAt, ZoneId zone) {
        return of(result, edition, lookedAt, zone);
    }

    private static ScoreView of(Result result, Edition edition, @Nullable Instant lookedAt, @Nullable ZoneId zone) {
        return new ScoreView(
                urgency(result.urgency(), lookedAt),
                result.score(),
                isolation(result.isolation()),
                result.reasons().stream().map(ScoreView::reason).toList(),
                result.unknowns().stream()
                        .map(unknown -> unknown(unknown, lookedAt, zone))
                        .toList(),
                result.next().stream().map(ScoreView::next).toList(),
                result.lookAgain().stream()
                        .map(again -> lookAgain(again, lookedAt))
                        .toList(),
                new Settling(result.settling().looks(), result.settling().exact()),
                new NearestView(result.nearestMilder(), result.nearestWorse()),
                completions(result),
                result.advice(),
                result.cautions(),
                result.notices(),
                new ChecklistRef(edition.id(), edition.version(), edition.sha256()));
    }

    private static UrgencyView urgency(Result.Urgency it, @Nullable Instant lookedAt) {
        return new UrgencyView(
                it.recommended(),
                it.label(),
                it.headline(),
                code(it.basis()),
                lookedAt == null ? it.within() : null,
                plus(lookedAt, it.within()),
                lookedAt == null ? it.lookAgainAfter() : null,
                plus(lookedAt, it.lookAgainAfter()),
                it.lowest(),
                it.highest(),
                it.settled());
    }

    private static @Nullable IsolationView isolation(Result.@Nullable Isolation it) {
        return it == null
                ? null
                : new IsolationView(
                        it.recommended(),
                        it.highest(),
                        it.routes(),
                        it.because().stream()
                                .map(because -> new IsolationReasonView(
                                        because.route(),
                                        because.finding(),
                                        because.level(),
                                        because.combination(),
                                        because.text()))
                                .toList(),
                        it.couldBeRaisedBy());
    }

    private static ReasonView reason(Result.Reason it) {
        return new ReasonView(
                code(it.kind()),
                it.outcome(),
                it.id(),
                it.level(),
                it.points(),
                it.counted(),
                it.text(),
                it.why(),
                it.sources());
    }

    private static UnknownView unknown(Result.Unknown it, @Nullable Instant lookedAt, @Nullable ZoneId zone) {
        Instant due = plus(lookedAt, it.dueAfter());
        return new UnknownView(
                it.finding(),
                code(it.why()),
                it.mustSee(),
                it.answered(),
                it.conditions(),
                it.impliedBy(),
                it.couldBe(),
                lookedAt == null ? it.dueAfter() : null,
                due == null || zone == null ? null : LocalDate.ofInstant(due, zone));
    }

    private static NextView next(Result.NextLook it) {
        return new NextView(
                it.finding(), it.mustSee(), it.couldRaiseTo(), it.couldIsolate(), it.points(), it.effort(), it.value());
    }

    private static LookAgainView lookAgain(Result.LookAgain it, @Nullable Instant lookedAt) {
        return new LookAgainView(
                it.finding(),
                it.level(),
                it.condition(),
                lookedAt == null ? it.after() : null,
                lookedAt == null ? it.atLatest() : null,
                plus(lookedAt, it.after()),
                plus(lookedAt, it.atLatest()),
                it.ifStillThere());
    }

    private static CompletionsView completions(Result result) {
        Set<String> open =
                result.unknowns().stream().map(Result.Unknown::finding).collect(Collectors.toSet());
        return new CompletionsView(only(open, result.witnessLowest()), only(open, result.witnessHighest()));
    }

    private static Map<String, String> only(Set<String> findings, Map<String, String> levels) {
        return levels.entrySet().stream()
                .filter(entry -> findings.contains(entry.getKey()))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue, (a, b) -> a, LinkedHashMap::new));
    }

    private static @Nullable Instant plus(@Nullable Instant lookedAt, @Nullable Duration duration) {
        return lookedAt == null || duration == null ? null : lookedAt.plus(duration);
    }

    static String code(Enum<?> value) {
        return Objects.requireNonNull(value).name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
