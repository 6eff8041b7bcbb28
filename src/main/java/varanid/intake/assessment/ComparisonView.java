package varanid.intake.assessment;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.StreamSupport;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import varanid.intake.assessment.StoredLooks.StoredLook;
import varanid.intake.checklist.Edition;
import varanid.intake.scoring.ChecklistDraft;
import varanid.intake.scoring.LookComparison;
import varanid.intake.scoring.LookReading;

/** Two looks at one animal beside each other, and whether to call because of the difference. */
@Schema(name = "AssessmentComparison")
@JsonInclude(JsonInclude.Include.NON_NULL)
record ComparisonView(
        @Schema(description = "the look that occurred first; absent where there is nothing to compare with") @Nullable
        Side before,

        Side after,

        @Schema(description = "the difference in one or two sentences")
        String headline,

        @Schema(allowableValues = {"higher", "lower", "same"}) @Nullable
        String urgencyBecame,

        Call call,

        @Schema(description = "of the signs that are there, the next worse level that would make it more urgent")
        List<CallIf> callIf,

        @JsonProperty("new") @Schema(name = "new", description = "was reassuring, and is not")
        List<FindingChange> appeared,

        @Schema(description = "further along a chain") List<FindingChange> worse,

        @Schema(description = "of another kind, neither worse nor better")
        List<FindingChange> changed,

        @Schema(description = "was not known before; it may have been there all the time")
        List<FindingChange> firstSeen,

        @Schema(description = "was known before and is not now; it may still be there")
        List<FindingChange> noLongerSeen,

        @Schema(description = "not known exactly enough to say which way it went")
        List<FindingChange> cannotTell,

        @Schema(description = "less far along a chain") List<FindingChange> better,

        @Schema(description = "was not reassuring, and is") List<FindingChange> gone,

        List<FindingChange> same,

        @Schema(description = "findings that were known in neither look")
        List<String> stillUnknown,

        @Schema(description = "what two versions of the checklist do not both know")
        List<NotComparable> notComparable) {

    /** A sign for which this soon has to be acted is worth a call when it is new or worse. */
    private static final Duration SOON = Duration.ofHours(24);

    private static final int MOST_NAMED = 3;

    @Schema(name = "ComparedLook")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Side(
            UUID id,
            Instant occurredAt,
            ScoreView.ChecklistRef checklist,
            List<String> conditions,
            String urgency,
            String urgencyLabel,

            @Schema(description = "act by then, where the urgency says how soon") @Nullable
            Instant by,

            @Nullable String isolation,
            List<String> isolationRoutes,
            Points points,
            String path) {

        static Side of(StoredLook look) {
            AssessmentRow row = look.row();
            JsonNode document = look.document();
            JsonNode by = document.at("/urgency/by");
            return new Side(
                    row.id(),
                    row.occurredAt(),
                    new ScoreView.ChecklistRef(row.checklistId(), row.checklistVersion(), row.checklistSha256()),
                    texts(document.path("conditions")),
                    row.urgency(),
                    document.at("/urgency/label").stringValue(row.urgency()),
                    by.isString() ? Instant.parse(by.stringValue()) : null,
                    row.isolation(),
                    texts(document.at("/isolation/routes")),
                    new Points(
                            document.at("/score/lowest").decimalValue(),
                            document.at("/score/highest").decimalValue(),
                            document.at("/score/maximum").decimalValue()),
                    AssessmentController.path(row.animalId(), row.id()));
        }
    }

    @Schema(name = "PointBounds", description = "least and most that the answers may come to, and the most there is")
    record Points(BigDecimal lowest, BigDecimal highest, BigDecimal maximum) {}

    @Schema(name = "FindingChange")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record FindingChange(
            String finding,
            String question,
            @Nullable Seen before,
            @Nullable Seen after) {

        static FindingChange of(LookComparison.Change change) {
            return new FindingChange(
                    change.finding().id(),
                    StoredLooks.questionOf(change.finding()),
                    Seen.of(change.before()),
                    Seen.of(change.after()));
        }
    }

    @Schema(name = "SeenLevel")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Seen(
            String level,
            String label,

            @Schema(
                    description = "why it does not count plainly",
                    allowableValues = {"explained", "masked", "interval", "implied"})
            @Nullable
            String but,

            @Schema(description = "the least urgency that the level allows") @Nullable
            String floor) {

        static @Nullable Seen of(LookReading.@Nullable State state) {
            if (state == null) {
                return null;
            }
            ChecklistDraft.Level level = Objects.requireNonNull(state.level());
            return new Seen(
                    level.code(),
                    SignWords.label(level),
                    state.unknownBecause() == null ? null : ScoreView.code(state.unknownBecause()),
                    level.floor());
        }
    }

    @Schema(
            name = "CallAdvice",
            description = "whether to call the vet because of what is new or worse, and how soon: as soon as the later"
                    + " look asks for. needed: false says nothing about what was known before.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Call(
            boolean needed,
            @Nullable String urgency,
            @Nullable String label,
            @Nullable Instant by,
            List<String> because,

            @Schema(description = "the urgency rose only because something was not seen: look for it again by then")
            @Nullable
            Instant lookAgainAt) {}

    @Schema(name = "CallIf")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record CallIf(
            String finding,
            String question,
            String level,
            String label,
            String urgency,
            String urgencyLabel,
            @Nullable Duration within) {

        static CallIf of(LookReading.WouldRaise it) {
            return new CallIf(
                    it.finding().id(),
                    StoredLooks.questionOf(it.finding()),
                    it.level().code(),
                    SignWords.label(it.level()),
                    it.outcome(),
                    it.outcomeLabel() == null ? it.outcome() : it.outcomeLabel(),
                    it.within());
        }
    }

    record NotComparable(String finding, String why) {}

    /** The first look: nothing to compare with, but something to watch for. */
    static ComparisonView first(StoredLook look) {
        return of(LookComparison.first(look.reading()), null, look);
    }

    static ComparisonView of(StoredLook before, StoredLook after) {
        return of(LookComparison.of(before.reading(), after.reading()), before, after);
    }

    private static ComparisonView of(LookComparison it, @Nullable StoredLook before, StoredLook after) {
        Integer rose = before == null ? null : Integer.compare(rank(after, after), rank(before, after));
        return new ComparisonView(
                before == null ? null : Side.of(before),
                Side.of(after),
                headline(it, before, after, rose),
                rose == null ? null : rose > 0 ? "higher" : rose < 0 ? "lower" : "same",
                call(it, before == null, after, rose),
                after.reading().wouldRaise().stream().map(CallIf::of).toList(),
                list(it, LookComparison.Kind.NEW),
                list(it, LookComparison.Kind.WORSE),
                list(it, LookComparison.Kind.CHANGED),
                list(it, LookComparison.Kind.FIRST_SEEN),
                list(it, LookComparison.Kind.NO_LONGER_SEEN),
                list(it, LookComparison.Kind.CANNOT_TELL),
                list(it, LookComparison.Kind.BETTER),
                list(it, LookComparison.Kind.GONE),
                list(it, LookComparison.Kind.SAME),
                it.stillUnknown(),
                it.notComparable().stream()
                        .map(each -> new NotComparable(each.finding(), each.why()))
                        .toList());
    }

    private static List<FindingChange> list(LookComparison it, LookComparison.Kind kind) {
        return it.changes().stream()
                .filter(change -> change.kind() == kind)
                .map(FindingChange::of)
                .toList();
    }

    /** How far up the later look's scale of urgency. */
    private static int rank(StoredLook look, StoredLook scale) {
        List<String> codes = scale.edition().checklist().draft().outcomes().stream()
                .map(ChecklistDraft.Outcome::code)
                .toList();
        return codes.indexOf(look.row().urgency());
    }

    private static boolean onlyUnseen(StoredLook look) {
        return look.document().at("/urgency/basis").stringValue("").equals("unseen");
    }

    private static Call call(LookComparison it, boolean first, StoredLook after, @Nullable Integer rose) {
        List<String> because = new ArrayList<>();
        it.changes().stream()
                .filter(LookComparison.Change::isNewOrWorse)
                .map(LookComparison.Change::after)
                .filter(Objects::nonNull)
                .filter(state -> isSoon(
                        after.edition(), Objects.requireNonNull(state.level()).floor()))
                .map(state -> SignWords.tell(state.finding(), Objects.requireNonNull(state.level())))
                .forEach(because::add);
        JsonNode urgency = after.document().path("urgency");
        String label = urgency.path("label").stringValue(after.row().urgency());
        boolean higher = rose != null && rose > 0
                || first && isSoon(after.edition(), after.row().urgency());
        if (higher && !onlyUnseen(after)) {
            because.add(first ? "the look asks for: " + label : "the look now asks for: " + label);
        }
        Instant lookAgainAt = higher && onlyUnseen(after) ? instant(urgency.path("lookAgainAt")) : null;
        return because.isEmpty()
                ? new Call(false, null, null, null, because, lookAgainAt)
                : new Call(true, after.row().urgency(), label, instant(urgency.path("by")), because, lookAgainAt);
    }

    private static boolean isSoon(Edition edition, @Nullable String outcome) {
        return edition.checklist().draft().outcomes().stream()
                .filter(each -> each.code().equals(outcome))
                .map(ChecklistDraft.Outcome::within)
                .filter(Objects::nonNull)
                .anyMatch(within -> within.compareTo(SOON) <= 0);
    }

    private static String headline(
            LookComparison it, @Nullable StoredLook before, StoredLook after, @Nullable Integer rose) {
        String urgency =
                after.document().at("/urgency/label").stringValue(after.row().urgency());
        if (before == null || rose == null) {
            return "There is no earlier look to compare with. This one asks for: " + urgency + '.';
        }
        List<String> parts = new ArrayList<>();
        part(parts, "new", it, LookComparison.Kind.NEW);
        part(parts, "worse", it, LookComparison.Kind.WORSE);
        part(parts, "changed", it, LookComparison.Kind.CHANGED);
        part(parts, "seen for the first time", it, LookComparison.Kind.FIRST_SEEN);
        part(parts, "better", it, LookComparison.Kind.BETTER);
        part(parts, "gone", it, LookComparison.Kind.GONE);
        String differences = parts.isEmpty() ? "No difference in what was seen both times." : String.join(" ", parts);
        List<String> lost = it.changes().stream()
                .filter(LookComparison.Change::isLostSign)
                .map(change -> tell(change.before()))
                .toList();
        String unseen =
                lost.isEmpty() ? "" : " Not seen this time, which is not the same as gone. " + names(lost) + '.';
        return differences + unseen + " Urgency: " + urgency + urgencyBefore(before, rose) + '.';
    }

    private static String urgencyBefore(StoredLook before, int rose) {
        String was =
                before.document().at("/urgency/label").stringValue(before.row().urgency());
        return rose == 0 ? ", as before" : (rose > 0 ? ", up from " : ", down from ") + was;
    }

    /** What is reassuring is not worth a word in the headline, except that something is gone. */
    private static void part(List<String> parts, String word, LookComparison it, LookComparison.Kind kind) {
        boolean gone = kind == LookComparison.Kind.GONE;
        List<String> labels = it.changes().stream()
                .filter(change -> change.kind() == kind)
                .map(change -> gone ? change.before() : change.after())
                .filter(state -> state != null && state.isSign())
                .map(ComparisonView::tell)
                .toList();
        if (!labels.isEmpty()) {
            parts.add(capital(word) + ". " + names(labels) + '.');
        }
    }

    private static String names(List<String> labels) {
        String named = String.join("; ", labels.subList(0, Math.min(MOST_NAMED, labels.size())));
        return labels.size() > MOST_NAMED ? named + "; and " + (labels.size() - MOST_NAMED) + " more" : named;
    }

    private static String tell(LookReading.@Nullable State state) {
        LookReading.State it = Objects.requireNonNull(state);
        return SignWords.tell(it.finding(), Objects.requireNonNull(it.level()));
    }

    private static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    private static @Nullable Instant instant(JsonNode node) {
        return node.isString() ? Instant.parse(node.stringValue()) : null;
    }

    private static List<String> texts(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false)
                .map(JsonNode::stringValue)
                .toList();
    }
}
