package varanid.intake.visit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import varanid.intake.assessment.ReadLook;
import varanid.intake.assessment.SignWords;
import varanid.intake.scoring.ChecklistDraft;
import varanid.intake.scoring.LookReading;
import varanid.intake.scoring.Result;

/** A look in words. */
final class LookShown {

    static final String FINDING = "finding";

    private final ReadLook look;
    private final HandOverTexts texts;
    private final @Nullable String by;

    LookShown(ReadLook look, HandOverTexts texts, @Nullable String by) {
        this.look = look;
        this.texts = texts;
        this.by = by;
    }

    /** What was seen to be other than reassuring: what counts most first. */
    List<Statement> signs() {
        return look.reading().signs().stream()
                .sorted((one, other) -> weight(other) - weight(one))
                .map(this::sign)
                .toList();
    }

    private int weight(LookReading.State state) {
        ChecklistDraft.Level level = Objects.requireNonNull(state.level());
        // The checklist's own scale, from the least urgent on.
        List<String> outcomes = look.edition().checklist().draft().outcomes().stream()
                .map(ChecklistDraft.Outcome::code)
                .toList();
        int floor = level.floor() == null ? 0 : 1 + outcomes.indexOf(level.floor());
        return floor * 1000 + level.points().intValue();
    }

    Statement sign(LookReading.State state) {
        ChecklistDraft.Finding finding = state.finding();
        ChecklistDraft.Level level = Objects.requireNonNull(state.level());
        JsonNode answer = look.document().at("/answers/" + finding.id());
        boolean measured = answer.isNumber() || answer.isObject();
        boolean serious = level.floor() != null && !level.floor().equals("routine");
        String words = level.label() == null ? HandOverTexts.plain(level.code()) : level.label();
        Statement statement = Statement.of(
                        "sign",
                        measured ? Basis.MEASURED : Basis.OBSERVED,
                        SignWords.name(finding.id()),
                        answer.isNumber() ? number(answer, finding) + ": " + words : words)
                .at(look.kept().occurredAt())
                .by(by)
                .qualified(doubt(state).orElse(null))
                .weighing(serious ? Statement.Weight.STRONG : Statement.Weight.PLAIN)
                .coded(FINDING, finding.id(), level.code());
        return answer.isNumber() && finding.measure() != null
                ? statement.measured(answer.decimalValue(), finding.measure().unit())
                : statement;
    }

    private static String number(JsonNode answer, ChecklistDraft.Finding finding) {
        BigDecimal value = answer.decimalValue();
        return value.toPlainString()
                + (finding.measure() == null ? "" : " " + finding.measure().unit());
    }

    /** Why an answer is not to be taken as it is; nothing where it is plain. */
    private Optional<String> doubt(LookReading.State state) {
        Result.Unknown.@Nullable Why why = state.unknownBecause();
        if (why == null) {
            return Optional.empty();
        }
        return switch (why) {
            case MASKED -> Optional.of(texts.say("masked", "conditions", conditions()));
            case EXPLAINED -> Optional.of(texts.say("explained", "conditions", conditions()));
            case INTERVAL -> Optional.of(texts.say("interval"));
            case IMPLIED -> Optional.of(texts.say("implied"));
            case MISSING, NOT_OBSERVED, NOT_YET_DUE -> Optional.empty();
        };
    }

    /** The conditions of the look in the checklist's words. */
    String conditions() {
        List<String> words = new ArrayList<>();
        look.document()
                .path("conditions")
                .forEach(code -> words.add(look.edition().checklist().draft().conditions().stream()
                        .filter(condition -> condition.id().equals(code.stringValue()))
                        .map(condition -> condition.label() == null ? condition.id() : condition.label())
                        .findFirst()
                        .orElse(code.stringValue())));
        return String.join("; ", words);
    }

    /** What must be seen and is not certain. */
    List<LookReading.State> unseenMustSee() {
        return look.reading().unseenMustSee();
    }

    /** What nobody could tell of, beside what must be seen and what is not yet due. */
    List<LookReading.State> unseen() {
        return look.reading().states().stream()
                .filter(state -> !state.isPlain() && !state.isSign())
                .filter(state -> state.unknownBecause() != Result.Unknown.Why.NOT_YET_DUE)
                .filter(state -> !unseenMustSee().contains(state))
                .toList();
    }

    List<LookReading.State> notDue() {
        return look.reading().states().stream()
                .filter(state -> state.unknownBecause() == Result.Unknown.Why.NOT_YET_DUE)
                .toList();
    }

    /** What was looked for, plainly, and is as it should be. */
    List<LookReading.State> absent() {
        return look.reading().states().stream()
                .filter(state -> state.isPlain() && !state.isSign() && state.level() != null)
                .toList();
    }

    /** What a reason says: a level alone does not say of what, and a section not that it is a sum. */
    static String reasonText(JsonNode reason, HandOverTexts texts) {
        String text = reason.path("text").stringValue("");
        return switch (reason.path("kind").stringValue("")) {
            case "level", "excused" -> SignWords.tell(reason.path("id").stringValue(""), text);
            case "section", "total" -> texts.say("together", "what", text);
            default -> text;
        };
    }

    static String names(List<LookReading.State> states) {
        return states.stream()
                .map(state -> SignWords.small(SignWords.name(state.finding().id())))
                .collect(Collectors.joining(", "));
    }
}
