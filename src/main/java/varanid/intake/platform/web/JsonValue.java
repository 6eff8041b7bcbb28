package varanid.intake.platform.web;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** One value of a JSON document and where it stands: asked for as what it should be, it notes a fault if it is not. */
public final class JsonValue {

    private static final LocalDate EARLIEST = LocalDate.of(1900, 1, 1);
    private static final LocalDate LATEST = LocalDate.of(2199, 12, 31);
    private static final Pattern UUID_FORM = Pattern.compile("[0-9a-fA-F]{8}(-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}");

    private final @Nullable JsonNode node;
    private final String pointer;
    private final Faults faults;
    private final boolean inQuery;

    JsonValue(@Nullable JsonNode node, String pointer, Faults faults) {
        this(node, pointer, faults, false);
    }

    JsonValue(@Nullable JsonNode node, String pointer, Faults faults, boolean inQuery) {
        this.node = node;
        this.pointer = pointer;
        this.faults = faults;
        this.inQuery = inQuery;
    }

    public boolean isGiven() {
        return node != null;
    }

    public boolean isText() {
        return node != null && node.isString();
    }

    public boolean isNumber() {
        return node != null && node.isNumber();
    }

    public boolean isObject() {
        return node != null && node.isObject();
    }

    /** Notes a fault here. */
    public void fault(String wrong, String right) {
        faults.add(inQuery ? Fault.inParameter(pointer, wrong, right) : Fault.at(pointer, wrong, right));
    }

    /** Notes a fault here, as a {@link Given} that is known to be faulty. */
    public <T> Given<T> faulty(String wrong, String right) {
        return Given.faulty(this::fault, wrong, right);
    }

    /** A value made from this place by other means. */
    public <T> Given<T> given(T value, String right) {
        return Given.value(this::fault, right, value);
    }

    /** One line, in normal form C, without blanks around it, of 1 to {@code longest} characters, none of them control. */
    public Given<String> text(int longest) {
        return text(longest, false);
    }

    /** Like {@link #text}, but line breaks and tabs may be in it. */
    public Given<String> prose(int longest) {
        return text(longest, true);
    }

    private Given<String> text(int longest, boolean lines) {
        String right = "text of 1 to " + longest + " characters" + (lines ? "" : " in one line");
        return read(right, given -> {
            if (!given.isString()) {
                return faulty("is " + kind(given), right);
            }
            Optional<String> forbidden = Texts.forbiddenCharacter(given.stringValue(), lines);
            if (forbidden.isPresent()) {
                return faulty(forbidden.get(), right + ", none of them control characters");
            }
            String text = Texts.tidy(given.stringValue());
            if (text.isEmpty()) {
                return faulty("is empty", right + ", or leave it out");
            }
            if (Texts.length(text) > longest) {
                return faulty("has " + Texts.length(text) + " characters", right);
            }
            return given(text, right);
        });
    }

    /** A JSON number between the two, ends included, with at most so many decimals. Never a text, never rounded. */
    public Given<BigDecimal> decimal(BigDecimal least, BigDecimal greatest, int decimals) {
        String right = "a number from " + least.toPlainString() + " to " + greatest.toPlainString() + " with at most "
                + decimals + " decimals";
        return read(right, given -> {
            if (!given.isNumber()) {
                return faulty("is " + kind(given), right);
            }
            BigDecimal value = given.decimalValue();
            if (value.compareTo(least) < 0) {
                return faulty("is less than " + least.toPlainString(), right);
            }
            if (value.compareTo(greatest) > 0) {
                return faulty("is more than " + greatest.toPlainString(), right);
            }
            // Only now: stripping zeros of a number with a huge exponent would be slow.
            BigDecimal stripped = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
            if (stripped.scale() > decimals) {
                return faulty("has more than " + decimals + " decimals", right);
            }
            return given(stripped.scale() < 0 ? stripped.setScale(0) : stripped, right);
        });
    }

    /** A whole number between the two, ends included. */
    public Given<Integer> integer(int least, int greatest) {
        String right = "a whole number from " + least + " to " + greatest;
        return read(right, given -> {
            if (!given.isIntegralNumber()) {
                return faulty("is " + kind(given), right);
            }
            BigInteger value = given.bigIntegerValue();
            if (value.compareTo(BigInteger.valueOf(least)) < 0) {
                return faulty("is less than " + least, right);
            }
            if (value.compareTo(BigInteger.valueOf(greatest)) > 0) {
                return faulty("is more than " + greatest, right);
            }
            return given(value.intValueExact(), right);
        });
    }

    public Given<Boolean> flag() {
        String right = "true or false";
        return read(
                right,
                given -> given.isBoolean() ? given(given.booleanValue(), right) : faulty("is " + kind(given), right));
    }

    public Given<UUID> id() {
        String right = "an id as it was given out, such as 01890a5d-ac96-774b-bcce-b302099a8057";
        return read(right, given -> {
            if (!given.isString()) {
                return faulty("is " + kind(given), right);
            }
            String text = given.stringValue();
            return UUID_FORM.matcher(text).matches()
                    ? given(UUID.fromString(text), right)
                    : faulty(Texts.quote(text) + " is not an id", right);
        });
    }

    /** A date as ISO 8601 writes it, from 1900 to 2199. */
    public Given<LocalDate> date() {
        String right = "a date such as 2026-03-09";
        return read(right, given -> {
            if (!given.isString()) {
                return faulty("is " + kind(given), right);
            }
            try {
                LocalDate date = LocalDate.parse(given.stringValue());
                return isWithinReach(date) ? given(date, right) : faulty("is out of reach", right + ", 1900 to 2199");
            } catch (DateTimeException e) {
                return faulty(Texts.quote(given.stringValue()) + " is not a date", right);
            }
        });
    }

    /** An instant as RFC 3339 writes it, with its offset, kept to the millisecond, from 1900 to 2199. */
    public Given<Instant> instant() {
        String right = "a moment with its offset, such as 2026-03-09T10:15:00Z";
        return read(right, given -> {
            if (!given.isString()) {
                return faulty("is " + kind(given), right);
            }
            try {
                OffsetDateTime moment = OffsetDateTime.parse(given.stringValue());
                return isWithinReach(moment.toLocalDate())
                        ? given(moment.toInstant().truncatedTo(ChronoUnit.MILLIS), right)
                        : faulty("is out of reach", right + ", 1900 to 2199");
            } catch (DateTimeException e) {
                return faulty(Texts.quote(given.stringValue()) + " is not a moment", right);
            }
        });
    }

    private static boolean isWithinReach(LocalDate date) {
        return !date.isBefore(EARLIEST) && !date.isAfter(LATEST);
    }

    /** One of the codes. */
    public <T> Given<T> choice(List<T> choices, Function<? super T, String> code) {
        String right = "one of: " + choices.stream().map(code).collect(Collectors.joining(", "));
        return read(right, given -> {
            if (!given.isString()) {
                return faulty("is " + kind(given), right);
            }
            return choices.stream()
                    .filter(choice -> code.apply(choice).equals(given.stringValue()))
                    .findFirst()
                    .map(choice -> given(choice, right))
                    .orElseGet(() -> faulty(Texts.quote(given.stringValue()) + " is not known", right));
        });
    }

    public <R> Given<R> object(ObjectReader<R> reader) {
        String right = "an object";
        return read(right, given -> {
            if (!(given instanceof ObjectNode object)) {
                return faulty("is " + kind(given), right);
            }
            @Nullable R result = JsonFields.read(object, pointer, faults, reader);
            return result == null ? Given.alreadyFaulty(this::fault, right) : given(result, right);
        });
    }

    /** A list of at most so many, each read alike. */
    public <R> Given<List<R>> list(int most, Function<JsonValue, Given<R>> item) {
        String right = "a list of at most " + most;
        return read(right, given -> {
            if (!(given instanceof ArrayNode array)) {
                return faulty("is " + kind(given), right);
            }
            if (array.size() > most) {
                return faulty("is a list of " + array.size(), right);
            }
            int before = faults.count();
            List<R> items = new ArrayList<>();
            for (int i = 0; i < array.size(); i++) {
                JsonNode each = array.get(i);
                JsonValue value = new JsonValue(each.isNull() ? null : each, pointer + "/" + i, faults);
                item.apply(value).required().find().ifPresent(items::add);
            }
            return faults.count() > before ? Given.alreadyFaulty(this::fault, right) : given(List.copyOf(items), right);
        });
    }

    /** An object whose names are not ours: at most so many, each read alike, in the order they were sent. */
    public <R> Given<Map<String, R>> entries(int most, BiFunction<String, JsonValue, Given<R>> entry) {
        String right = "an object with at most " + most + " entries";
        return read(right, given -> {
            if (!(given instanceof ObjectNode object)) {
                return faulty("is " + kind(given), right);
            }
            if (object.size() > most) {
                return faulty("has " + object.size() + " entries", right);
            }
            int before = faults.count();
            Map<String, R> entries = new LinkedHashMap<>();
            for (Map.Entry<String, JsonNode> each : object.properties()) {
                String name = each.getKey();
                JsonNode its = each.getValue();
                JsonValue value =
                        new JsonValue(its.isNull() ? null : its, pointer + "/" + Pointers.escape(name), faults);
                entry.apply(name, value).required().find().ifPresent(result -> entries.put(name, result));
            }
            return faults.count() > before ? Given.alreadyFaulty(this::fault, right) : given(entries, right);
        });
    }

    private <T> Given<T> read(String right, Function<JsonNode, Given<T>> given) {
        return node == null ? Given.nothing(this::fault, right) : given.apply(node);
    }

    private static String kind(JsonNode node) {
        if (node.isString()) {
            return "text";
        } else if (node.isIntegralNumber()) {
            return "a whole number";
        } else if (node.isNumber()) {
            return "a number with decimals";
        } else if (node.isBoolean()) {
            return "true or false";
        } else if (node.isArray()) {
            return "a list";
        }
        return "an object";
    }
}
