package varanid.intake.platform.web;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.platform.time.Present;

/**
 * The fields of one JSON object, asked for by name. Whatever is wrong is noted with its JSON Pointer and reading goes
 * on, so that a person learns of all faults at once. A field that nobody asked for is a fault. {@code null} is the same
 * as not given.
 */
public final class JsonFields {

    private final ObjectNode object;
    private final String pointer;
    private final Faults faults;
    private final Set<String> asked = new LinkedHashSet<>();

    JsonFields(ObjectNode object, String pointer, Faults faults) {
        this.object = object;
        this.pointer = pointer;
        this.faults = faults;
    }

    /** The value of a field, whatever it is, given or not. */
    public JsonValue field(String name) {
        asked.add(name);
        @Nullable JsonNode node = object.get(name);
        return new JsonValue(
                node == null || node.isNull() ? null : node, pointer + "/" + Pointers.escape(name), faults);
    }

    /** One line of text; see {@link JsonValue#text}. */
    public Given<String> text(String name, int longest) {
        return field(name).text(longest);
    }

    /** Text that may have lines; see {@link JsonValue#prose}. */
    public Given<String> prose(String name, int longest) {
        return field(name).prose(longest);
    }

    /** A number between the two, ends included; see {@link JsonValue#decimal}. */
    public Given<BigDecimal> decimal(String name, BigDecimal least, BigDecimal greatest, int decimals) {
        return field(name).decimal(least, greatest, decimals);
    }

    /** A whole number between the two, ends included. */
    public Given<Integer> integer(String name, int least, int greatest) {
        return field(name).integer(least, greatest);
    }

    public Given<Boolean> flag(String name) {
        return field(name).flag();
    }

    public Given<UUID> id(String name) {
        return field(name).id();
    }

    /** A date that is not in the future in the organisation's zone. */
    public Given<LocalDate> pastDate(String name, Present present) {
        return field(name)
                .date()
                .check(
                        date -> !present.isFuture(date),
                        "lies in the future",
                        "today in " + present.zone() + " or earlier");
    }

    /** Any date from 1900 to 2199. */
    public Given<LocalDate> date(String name) {
        return field(name).date();
    }

    /** An instant that is not in the future; five minutes are allowed for clocks that differ. */
    public Given<Instant> pastInstant(String name, Present present) {
        return field(name)
                .instant()
                .check(
                        instant -> !present.isFuture(instant),
                        "lies in the future",
                        "now, " + present.now() + ", or earlier");
    }

    /** One of the codes. */
    public <T> Given<T> choice(String name, List<T> choices, Function<? super T, String> code) {
        return field(name).choice(choices, code);
    }

    public <R> Given<R> object(String name, ObjectReader<R> reader) {
        return field(name).object(reader);
    }

    /** A list of at most so many, each read alike. */
    public <R> Given<List<R>> list(String name, int most, Function<JsonValue, Given<R>> item) {
        return field(name).list(most, item);
    }

    /** An object whose names are not ours, such as answers by finding: at most so many, each read alike. */
    public <R> Given<Map<String, R>> entries(String name, int most, BiFunction<String, JsonValue, Given<R>> entry) {
        return field(name).entries(most, entry);
    }

    /** Notes a fault of the object as a whole. */
    public void fault(String wrong, String right) {
        faults.add(Fault.at(pointer, wrong, right));
    }

    /** The names asked for so far. */
    Set<String> asked() {
        return asked;
    }

    /** Reads the object; nothing where it has a fault. */
    static <R> @Nullable R read(ObjectNode object, String pointer, Faults faults, ObjectReader<R> reader) {
        int before = faults.count();
        JsonFields fields = new JsonFields(object, pointer, faults);
        Supplier<R> made = reader.read(fields);
        fields.refuseOthers();
        if (faults.count() > before) {
            return null;
        }
        try {
            R result = made.get();
            return faults.count() > before ? null : result;
        } catch (IllegalArgumentException e) {
            fields.fault(String.valueOf(e.getMessage()), "values that fit together");
            return null;
        }
    }

    private void refuseOthers() {
        for (String name : object.propertyNames()) {
            if (!asked.contains(name)) {
                faults.add(Fault.at(
                        pointer + "/" + Pointers.escape(name),
                        "is not a field here",
                        asked.isEmpty() ? "no field at all" : "only: " + String.join(", ", asked)));
            }
        }
    }
}
