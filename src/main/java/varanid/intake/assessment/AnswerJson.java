package varanid.intake.assessment;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;
import varanid.intake.platform.web.JsonValue;
import varanid.intake.scoring.Answer;
import varanid.intake.scoring.ChecklistDraft;

/**
 * Answers as they are written in JSON: a level code, a number, {@code "not-observed"}, {@code "not-yet-due"}, or an
 * object {@code {"value": -9.2, "overDays": 14}} or {@code {"low": 3, "high": 5}} for a measured finding.
 */
final class AnswerJson {

    static final String NOT_OBSERVED = "not-observed";
    static final String NOT_YET_DUE = "not-yet-due";

    private static final BigDecimal FAR = new BigDecimal(1_000_000);
    private static final String RIGHT =
            "a level code, a number, an object with value or with low and high, " + NOT_OBSERVED + " or " + NOT_YET_DUE;

    private AnswerJson() {}

    /**
     * @param finding what is answered, for the name of the second number that it may take
     */
    static Given<Answer> read(JsonValue value, ChecklistDraft.@Nullable Finding finding) {
        if (value.isText()) {
            return value.text(60).map(RIGHT, AnswerJson::ofText);
        }
        if (value.isNumber()) {
            return value.decimal(FAR.negate(), FAR, 6).map(RIGHT, Answer.Measured::exactly);
        }
        if (value.isObject()) {
            return value.object(fields -> readInterval(fields, finding));
        }
        return value.isGiven() ? value.faulty("is of the wrong kind", RIGHT) : value.faulty("is null", RIGHT);
    }

    private static java.util.function.Supplier<Answer> readInterval(
            JsonFields fields, ChecklistDraft.@Nullable Finding finding) {
        boolean exact = fields.field("value").isGiven();
        Given<BigDecimal> value = fields.decimal("value", FAR.negate(), FAR, 6);
        Given<BigDecimal> low = fields.decimal("low", FAR.negate(), FAR, 6);
        Given<BigDecimal> high = fields.decimal("high", FAR.negate(), FAR, 6);
        if (exact) {
            low.check(given -> false, "stands beside value", "value alone, or low and high");
            high.check(given -> false, "stands beside value", "value alone, or low and high");
        } else {
            low.required();
            high.required();
        }
        ChecklistDraft.Companion companion = companionOf(finding);
        Given<BigDecimal> second = companion == null ? null : fields.decimal(companion.id(), FAR.negate(), FAR, 6);
        return () -> new Answer.Measured(
                exact ? value.get() : low.get(),
                exact ? value.get() : high.get(),
                second == null ? null : second.orNull());
    }

    private static Answer ofText(String text) {
        return switch (text) {
            case NOT_OBSERVED -> Answer.notObserved();
            case NOT_YET_DUE -> Answer.notYetDue();
            default -> Answer.seen(text);
        };
    }

    /** Reads back what {@link #write} wrote. */
    static Answer readKept(JsonNode kept, ChecklistDraft.Finding finding) {
        if (kept.isString()) {
            return ofText(kept.stringValue());
        }
        if (kept.isNumber()) {
            return Answer.Measured.exactly(kept.decimalValue());
        }
        JsonNode value = kept.path("value");
        JsonNode low = value.isMissingNode() ? kept.path("low") : value;
        JsonNode high = value.isMissingNode() ? kept.path("high") : value;
        ChecklistDraft.Companion companion = companionOf(finding);
        JsonNode second = companion == null ? value : kept.path(companion.id());
        return new Answer.Measured(
                low.decimalValue(),
                high.decimalValue(),
                companion == null || second.isMissingNode() ? null : second.decimalValue());
    }

    /** The same answer as JSON would write it. */
    static Object write(Answer answer, ChecklistDraft.Finding finding) {
        return answer.fold(
                Answer.Seen::level, measured -> write(measured, finding), () -> NOT_OBSERVED, () -> NOT_YET_DUE);
    }

    private static Object write(Answer.Measured measured, ChecklistDraft.Finding finding) {
        boolean exact = measured.low().compareTo(measured.high()) == 0;
        ChecklistDraft.Companion companion = companionOf(finding);
        BigDecimal second = measured.companion();
        if (exact && second == null) {
            return measured.low();
        }
        Map<String, Object> object = new LinkedHashMap<>();
        if (exact) {
            object.put("value", measured.low());
        } else {
            object.put("low", measured.low());
            object.put("high", measured.high());
        }
        if (second != null && companion != null) {
            object.put(companion.id(), second);
        }
        return object;
    }

    private static ChecklistDraft.@Nullable Companion companionOf(ChecklistDraft.@Nullable Finding finding) {
        return finding == null || finding.measure() == null
                ? null
                : finding.measure().companion();
    }
}
