package varanid.intake.scoring;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a look comes to, and why. Codes are the checklist's; the texts are quoted from it.
 *
 * @param isolation null where the checklist decides no isolation
 * @param reasons what raised the outcome, the weightiest first
 * @param unknowns every finding that is not plainly known, and why
 * @param next findings worth looking at next, the best first
 * @param lookAgain answers that a condition excuses, and when to look again without it
 * @param settling a smallest set of looks whose reassuring answers would settle the result
 * @param nearestMilder the fewest answers that would have to be reassuring for a milder lowest outcome
 * @param nearestWorse the fewest answers that would have to be one step worse for a worse one
 * @param witnessLowest levels for all findings that score to the lowest outcome
 * @param witnessHighest levels for all findings that score to the highest outcome
 */
public record Result(
        Urgency urgency,
        Score score,
        @Nullable Isolation isolation,
        List<Reason> reasons,
        List<Unknown> unknowns,
        List<NextLook> next,
        List<LookAgain> lookAgain,
        Settling settling,
        @Nullable Change nearestMilder,
        @Nullable Change nearestWorse,
        List<Advice> advice,
        List<Advice> cautions,
        Map<String, String> witnessLowest,
        Map<String, String> witnessHighest,
        List<String> notices) {

    /**
     * How urgent.
     *
     * @param basis why the recommendation is what it is
     * @param lookAgainAfter how soon to look again for what was unseen, where that carries the recommendation
     * @param within how soon to act on the recommendation, where the checklist says so
     */
    public record Urgency(
            String recommended,
            @Nullable String label,
            @Nullable Duration within,
            @Nullable String headline,
            @Nullable Duration lookAgainAfter,
            Basis basis,
            String lowest,
            String highest,
            boolean settled) {}

    /** What carries the recommendation. */
    public enum Basis {
        /** The answers alone. */
        ANSWERS,
        /** A must-see finding that is still unseen. */
        UNSEEN,
        /** An answer that a condition excuses until it is looked at again. */
        EXCUSED
    }

    /** The sum of points: least and most it may be, and the most any animal could have. */
    public record Score(BigDecimal lowest, BigDecimal highest, BigDecimal maximum, List<SectionScore> sections) {}

    public record SectionScore(String section, @Nullable String title, BigDecimal lowest, BigDecimal highest) {}

    /** How strictly apart; {@code highest} is what unknown answers could still ask for. */
    public record Isolation(
            String recommended,
            String highest,
            List<String> routes,
            List<IsolationReason> because,
            List<String> couldBeRaisedBy) {}

    public record IsolationReason(
            String route,
            @Nullable String finding,
            @Nullable String level,
            @Nullable String combination,
            String text) {}

    /**
     * One thing that counted.
     *
     * @param outcome the outcome that it alone asks for
     * @param points what it adds; 0 where a heavier member of its family counts instead
     */
    public record Reason(
            Kind kind,
            String outcome,
            @Nullable String id,
            @Nullable String level,
            BigDecimal points,
            boolean counted,
            String text,
            @Nullable String why,
            List<String> sources) {

        public enum Kind {
            LEVEL,
            COMBINATION,
            SECTION,
            TOTAL,
            PRECAUTION,
            EXCUSED
        }
    }

    public record Unknown(
            String finding,
            Why why,
            boolean mustSee,
            @Nullable String answered,
            List<String> conditions,
            @Nullable String impliedBy,
            String couldBe,
            @Nullable Duration dueAfter) {

        public enum Why {
            MISSING,
            NOT_OBSERVED,
            NOT_YET_DUE,
            MASKED,
            EXPLAINED,
            INTERVAL,
            IMPLIED
        }
    }

    /**
     * @param couldRaiseTo the outcome that the worst answer to this one alone would lead to
     * @param points the most that it could still add
     * @param value what knowing it is worth in the checklist's losses, for the trouble it costs
     */
    public record NextLook(
            String finding,
            boolean mustSee,
            String couldRaiseTo,
            boolean couldIsolate,
            BigDecimal points,
            int effort,
            double value) {}

    /** An excused answer: when to look again, and what it comes to if it is still there. */
    public record LookAgain(
            String finding,
            String level,
            String condition,
            @Nullable Duration after,
            @Nullable Duration atLatest,
            String ifStillThere) {}

    /** @param exact false where the set was found step by step and a smaller one may exist */
    public record Settling(List<String> looks, boolean exact) {}

    public record Change(List<Move> moves, String becomes) {}

    public record Move(String finding, String from, String to) {}

    public record Advice(String id, String kind, String text, List<String> sources) {}
}
