package varanid.intake.page.record;

import java.util.List;
import org.jspecify.annotations.Nullable;
import varanid.intake.page.JsonForm;

/**
 * A field of a form.
 *
 * @param name the way to its place in the request, as {@link JsonForm} reads it
 * @param label what is asked; null where the message {@code field.} and its name says it
 * @param hint how to find it out, or what is mistaken for it
 * @param options what can be chosen
 */
public record FormField(
        String name, @Nullable String label, @Nullable String hint, Kind kind, List<Option> options) {

    public FormField {
        options = List.copyOf(options);
    }

    /** How it is filled in. */
    public enum Kind {
        LINE,
        PROSE,
        NUMBER,
        DAY,
        /** One of several, or nothing. */
        CHOICE,
        /** One of several; it says nothing where the value beside it is empty. */
        UNIT,
        /** Any of several. */
        SEVERAL,
        TICK,
        /** A box that stands by a value. It is shown where the value was asked about. */
        CONFIRMATION,
        /** Lines, each for itself. */
        LINES,
        /** Not seen: it says of what the form is. */
        HIDDEN
    }

    /** @param label null where the message {@code option.}, the field's name and the code says it */
    public record Option(String code, @Nullable String label) {}

    static FormField of(Kind kind, String name) {
        return new FormField(name, null, null, kind, List.of());
    }

    static FormField choice(String name, List<String> codes) {
        return new FormField(
                name,
                null,
                null,
                Kind.CHOICE,
                codes.stream().map(code -> new Option(code, null)).toList());
    }

    static FormField choice(Kind kind, String name, List<Option> options) {
        return new FormField(name, null, null, kind, options);
    }

    FormField asking(String label, @Nullable String hint) {
        return new FormField(name, label, hint, kind, options);
    }

    static FormField unit(String name, List<String> codes) {
        return choice(
                Kind.UNIT,
                name,
                codes.stream().map(code -> new Option(code, null)).toList());
    }

    FormField hinted(@Nullable String hint) {
        return new FormField(name, label, hint, kind, options);
    }

    /** The value that a unit or a confirmation stands beside. */
    public String value() {
        return name.substring(0, name.lastIndexOf('.') + 1) + "value";
    }

    /** The last part of its name, by which fields that are asked alike have one text. */
    public String last() {
        return name.substring(name.lastIndexOf('.') + 1);
    }

    void read(JsonForm form) {
        switch (kind) {
            case NUMBER -> form.numbers(name);
            case SEVERAL -> form.lists(name);
            case TICK, CONFIRMATION -> form.ticks(name);
            case UNIT -> form.units(name);
            case LINES -> form.lines(name);
            default -> form.texts(name);
        }
    }
}
