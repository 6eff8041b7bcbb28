package varanid.intake.scoring;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A checklist as it is written in its file, not yet checked: see {@code docs/checklist-format.md} for each field.
 *
 * <p>Lists that the file leaves out are empty. {@link Checklist#from} checks a draft and turns it into something that
 * can score.
 */
public record ChecklistDraft(
        String id,
        int version,
        String status,
        String title,
        @Nullable String about,
        List<String> notices,
        List<Outcome> outcomes,
        Total total,
        @Nullable Precaution precaution,
        @Nullable NextLook nextLook,
        List<Attribute> attributes,
        @Nullable Isolation isolation,
        List<Section> sections,
        List<Family> families,
        List<Condition> conditions,
        List<Finding> findings,
        List<Implication> implies,
        List<Combination> combinations,
        List<Advice> advice,
        List<Source> sources) {

    public ChecklistDraft {
        notices = orEmpty(notices);
        outcomes = orEmpty(outcomes);
        attributes = orEmpty(attributes);
        sections = orEmpty(sections);
        families = orEmpty(families);
        conditions = orEmpty(conditions);
        findings = orEmpty(findings);
        implies = orEmpty(implies);
        combinations = orEmpty(combinations);
        advice = orEmpty(advice);
        sources = orEmpty(sources);
    }

    /** One step of the outcome scale; {@code within} is how soon it must be acted on, if the chart says so. */
    public record Outcome(
            String code,
            @Nullable String label,
            @Nullable Duration within,
            @Nullable String meaning,
            @Nullable Coding coding) {}

    /** The same outcome in a published code system. */
    public record Coding(String system, String code) {}

    /** How the points of all findings are read. */
    public record Total(Direction direction, @Nullable String title, List<Band> bands) {
        public Total {
            bands = orEmpty(bands);
        }
    }

    /** Whether many points are bad news or good news. */
    public enum Direction {
        HIGHER_IS_WORSE,
        LOWER_IS_WORSE
    }

    /** From (or up to) so many points, at least this outcome. */
    public record Band(@Nullable BigDecimal from, @Nullable BigDecimal upTo, String outcome, List<String> source) {
        public Band {
            source = orEmpty(source);
        }

        /** The one of the two thresholds that the file gives. */
        public BigDecimal threshold() {
            return Objects.requireNonNull(from == null ? upTo : from);
        }
    }

    /** The least outcome recommended while a must-see finding is unseen, and how soon to look again for it. */
    public record Precaution(
            String outcome,
            @Nullable String headline,
            @Nullable Duration lookAgainAfter,
            @Nullable String reason,
            List<String> source) {
        public Precaution {
            source = orEmpty(source);
        }
    }

    /**
     * What the order of the next looks is worked out from.
     *
     * @param chanceReassuring how likely an unanswered finding is taken to be reassuring, 0 to 1
     * @param losses what deciding on outcome i costs when j was needed: one row for each outcome decided on
     */
    public record NextLook(BigDecimal chanceReassuring, List<List<BigDecimal>> losses, List<String> source) {
        public NextLook {
            losses = orEmpty(losses);
            source = orEmpty(source);
        }
    }

    /** Something known about the animal rather than looked for. */
    public record Attribute(
            String id,
            @Nullable String label,
            List<Value> values,
            @Nullable String ifAbsent) {
        public Attribute {
            values = orEmpty(values);
        }

        /** One value; {@code countsAs} names the value that it is scored as. */
        public record Value(
                String code,
                @Nullable String label,
                @Nullable String meaning,
                @Nullable String countsAs) {}
    }

    /** The second thing a checklist may decide: how strictly apart. */
    public record Isolation(
            List<String> codes,
            List<Route> routes,
            @Nullable UnknownExposure unknownExposure) {
        public Isolation {
            codes = orEmpty(codes);
            routes = orEmpty(routes);
        }

        /** A way in which a thing may spread. */
        public record Route(
                String code,
                @Nullable String label,
                @Nullable String meaning) {}

        /** While these findings are unknown in an animal of these attribute values, keep it apart by this route. */
        public record UnknownExposure(
                List<String> findings,
                String attribute,
                List<String> values,
                String route,
                @Nullable String reason,
                List<String> source) {
            public UnknownExposure {
                findings = orEmpty(findings);
                values = orEmpty(values);
                source = orEmpty(source);
            }
        }
    }

    public record Section(String id, @Nullable String title, List<Band> bands) {
        public Section {
            bands = orEmpty(bands);
        }
    }

    public record Family(
            String id, @Nullable String title, @Nullable String reason) {}

    /** A circumstance of the look that makes some answers less trustworthy. */
    public record Condition(
            String id,
            @Nullable String label,
            @Nullable String help,
            List<String> masks,
            List<Explains> explains,
            List<String> mustSee,
            @Nullable String reason,
            List<String> source) {
        public Condition {
            masks = orEmpty(masks);
            explains = orEmpty(explains);
            mustSee = orEmpty(mustSee);
            source = orEmpty(source);
        }

        /** A mild level that this condition may be the whole reason for, and when to look again without it. */
        public record Explains(
                String finding,
                String level,
                @Nullable Duration lookAgainAfter,
                @Nullable Duration atLatest,
                @Nullable String meanwhile) {}
    }

    public record Finding(
            String id,
            String section,
            @Nullable String family,
            boolean mustSee,
            @Nullable Integer effort,
            @Nullable String question,
            @Nullable String help,
            @Nullable String lookAlike,
            boolean ifSeenByChance,
            @Nullable NotYetDue notYetDue,
            @Nullable Measure measure,
            List<Level> levels,
            List<List<String>> chains,
            List<Case> bands,
            @Nullable String reason,
            List<String> pointsSource,
            List<String> source) {
        public Finding {
            levels = orEmpty(levels);
            chains = orEmpty(chains);
            bands = orEmpty(bands);
            pointsSource = orEmpty(pointsSource);
            source = orEmpty(source);
        }

        /** 1 is a glance, 5 is minutes of waiting. */
        public int effortOrDefault() {
            return effort == null ? 1 : effort;
        }
    }

    /** The finding can only be answered later: when, and what is then to be looked at. */
    public record NotYetDue(Duration after, @Nullable String meaning) {}

    /** A number, its UCUM unit and the step to which it is rounded before it is compared. */
    public record Measure(
            String unit,
            @Nullable String label,
            BigDecimal step,
            BigDecimal min,
            BigDecimal max,
            @Nullable Companion companion) {}

    /** A second number without which the first cannot be judged, such as the days between two weighings. */
    public record Companion(String id, @Nullable String label, String unit, BigDecimal min, BigDecimal max) {}

    public record Level(
            String code,
            @Nullable String label,
            BigDecimal points,
            @Nullable String floor,
            @Nullable String floorReason,
            List<String> floorSource,
            @Nullable String isolate) {
        public Level {
            floorSource = orEmpty(floorSource);
        }
    }

    /** Which numbers are which level, in the animals and circumstances that {@code when} names. */
    public record Case(
            Map<String, List<String>> when, @Nullable BigDecimal companionUpTo, List<Start> from, List<String> source) {
        public Case {
            when = when == null ? Map.of() : Map.copyOf(when);
            from = orEmpty(from);
            source = orEmpty(source);
        }
    }

    /** From this number on (inclusive), this level. */
    public record Start(BigDecimal at, String level) {}

    public record Implication(
            String finding,
            String level,
            String then,
            String is,
            @Nullable String reason) {}

    public record Combination(
            String id,
            @Nullable String title,
            @Nullable String reason,
            Map<String, List<String>> when,
            List<Group> groups,
            @Nullable String outcome,
            @Nullable String isolate,
            List<String> source) {
        public Combination {
            when = when == null ? Map.of() : Map.copyOf(when);
            groups = orEmpty(groups);
            source = orEmpty(source);
        }
    }

    /** Either so many of these terms, or so many points from findings that the combination does not name. */
    public record Group(
            @Nullable Integer atLeast,
            List<Term> of,
            @Nullable BigDecimal pointsFromOthers) {
        public Group {
            of = orEmpty(of);
        }

        /** How many terms must hold: one, unless the file says more. */
        public int needed() {
            return atLeast == null ? 1 : atLeast;
        }
    }

    /** This level of the finding, or a worse one along its chain. */
    public record Term(String finding, String level) {}

    public record Advice(String id, String kind, String text, When when, List<String> source) {
        public Advice {
            source = orEmpty(source);
        }

        /** Any one of these is enough. */
        public record When(
                boolean always,
                List<Term> findings,
                List<String> conditions,
                List<String> outcomes,
                Map<String, List<String>> attributes) {
            public When {
                findings = orEmpty(findings);
                conditions = orEmpty(conditions);
                outcomes = orEmpty(outcomes);
                attributes = attributes == null ? Map.of() : Map.copyOf(attributes);
            }
        }
    }

    public record Source(String id, String kind, String text) {}

    private static <T> List<T> orEmpty(@Nullable List<T> list) {
        return list == null ? List.of() : List.copyOf(list);
    }
}
