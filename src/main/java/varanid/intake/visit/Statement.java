package varanid.intake.visit;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonValue;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * One thing that a summary says.
 *
 * @param code what sort of statement it is, such as {@code sign} or {@code last-meal}; the same in every summary
 * @param basis how it is known
 * @param label what it is about, in a few words
 * @param text what is said of it: whole, as it is to be read, with its unit; verbatim where it is somebody's words
 * @param at when it was so, where the moment is known
 * @param on the day, where no more than that is known; in the organisation's zone
 * @param by who saw, measured, reported, recorded or said it
 * @param qualifier what a reader must know to trust it: a condition of the look, who doubts it, how old it is
 * @param weight how much it matters on the page
 * @param coding the checklist's or a reference table's code for it
 * @param measure the value behind the text
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record Statement(
        String code,
        Basis basis,
        String label,
        String text,
        @Nullable Instant at,
        @Nullable LocalDate on,
        @Nullable String by,
        @Nullable String qualifier,
        Weight weight,
        @Nullable Coding coding,
        @Nullable Measure measure) {

    /** How much it matters on the page. */
    enum Weight {
        /** To be seen at once. */
        STRONG,
        PLAIN,
        /** For completeness. */
        SMALL;

        @JsonValue
        String code() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * A code of a table of this service.
     *
     * @param system {@code finding} for those of the checklist; else the name of the reference table
     * @param code such as a finding's id
     * @param value such as the level's code
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Coding(String system, String code, @Nullable String value) {}

    /**
     * A number.
     *
     * @param value as it was given or worked out
     * @param unit its UCUM code
     */
    record Measure(BigDecimal value, String unit) {}

    static Statement of(String code, Basis basis, String label, String text) {
        return new Statement(code, basis, label, text, null, null, null, null, Weight.PLAIN, null, null);
    }

    Statement at(@Nullable Instant moment) {
        return new Statement(code, basis, label, text, moment, on, by, qualifier, weight, coding, measure);
    }

    Statement on(@Nullable LocalDate day) {
        return new Statement(code, basis, label, text, at, day, by, qualifier, weight, coding, measure);
    }

    Statement by(@Nullable String who) {
        return new Statement(code, basis, label, text, at, on, who, qualifier, weight, coding, measure);
    }

    Statement qualified(@Nullable String what) {
        return new Statement(code, basis, label, text, at, on, by, what, weight, coding, measure);
    }

    Statement weighing(Weight much) {
        return new Statement(code, basis, label, text, at, on, by, qualifier, much, coding, measure);
    }

    Statement coded(String system, String which, @Nullable String value) {
        return new Statement(
                code, basis, label, text, at, on, by, qualifier, weight, new Coding(system, which, value), measure);
    }

    Statement measured(BigDecimal value, String unit) {
        return new Statement(code, basis, label, text, at, on, by, qualifier, weight, coding, new Measure(value, unit));
    }
}
