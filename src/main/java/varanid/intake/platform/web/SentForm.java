package varanid.intake.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import tools.jackson.databind.node.ObjectNode;

/**
 * The fields of a form as a browser sent them, to be turned into the JSON that a program would send.
 *
 * <p>A browser sends every line break of a text as two characters (HTML, "form submission": newlines are normalised to
 * CR LF); they become one again, as they were typed.
 */
public final class SentForm {

    /** What people type; more is left as it is, to be refused with the reason. */
    private static final Pattern WHOLE = Pattern.compile("[+-]?\\d{1,9}");

    private static final Pattern NUMERAL = Pattern.compile("[+-]?\\d{1,9}([.,]\\d{1,9})?");

    private static final int LONGEST_KEY = 200;

    private final Map<String, List<String>> fields;

    private SentForm(Map<String, List<String>> fields) {
        this.fields = fields;
    }

    /** One that nobody has filled in yet. */
    public static SentForm empty() {
        return new SentForm(Map.of());
    }

    /** One that is filled in already, by what is known. */
    public static SentForm filled(Map<String, List<String>> fields) {
        return new SentForm(new LinkedHashMap<>(fields));
    }

    /** The same, each field with one value. */
    public static SentForm filledWith(Map<String, String> typed) {
        Map<String, List<String>> fields = new LinkedHashMap<>();
        typed.forEach((name, text) -> fields.put(name, List.of(text)));
        return new SentForm(fields);
    }

    /** @throws ProblemException 413 where it cannot be read */
    public static SentForm of(HttpServletRequest request) {
        Map<String, List<String>> fields = new LinkedHashMap<>();
        try {
            request.getParameterMap().forEach((name, values) -> fields.put(name, List.of(values)));
        } catch (IllegalStateException e) {
            // That is how the container says that it is too large, or cannot be decoded.
            throw new ProblemException(
                    ProblemType.TOO_LARGE, "The form cannot be read, or is larger than is taken here. Shorten it.");
        }
        return new SentForm(fields);
    }

    /** The same without a field. */
    public SentForm without(String field) {
        Map<String, List<String>> rest = new LinkedHashMap<>(fields);
        rest.remove(field);
        return new SentForm(rest);
    }

    /** The names of its fields, in the order they were sent. */
    public Set<String> names() {
        return fields.keySet();
    }

    /** All that was chosen in a field, as it was sent. */
    public List<String> values(String field) {
        return fields.getOrDefault(field, List.of());
    }

    /** What was typed into a field; empty where nothing was. */
    public String typed(String field) {
        List<String> values = values(field);
        return values.isEmpty() ? "" : values.get(0).replace("\r\n", "\n");
    }

    /** The same, where it is more than blanks. */
    public Optional<String> find(String field) {
        return Optional.of(typed(field)).filter(text -> !text.isBlank());
    }

    /** The id in a field; nothing where that is none. */
    public Optional<UUID> findId(String field) {
        try {
            return find(field).map(UUID::fromString);
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** The form's own key, of which its effect happens once; nothing for one that cannot be a key. */
    public Optional<String> key(String field) {
        return find(field).filter(key -> key.length() <= LONGEST_KEY);
    }

    /** Puts what was typed into a field, where anything was, under the same name. */
    public void putText(ObjectNode into, String field) {
        find(field).ifPresent(text -> into.put(field, text));
    }

    /** Puts {@code true} where a box is ticked. */
    public void putTick(ObjectNode into, String field) {
        find(field).ifPresent(ticked -> into.put(field, true));
    }

    /** Puts the number typed into a field, where anything was, under another name. */
    public void putNumber(ObjectNode into, String name, String field) {
        find(field).ifPresent(typed -> number(into, name, typed));
    }

    /** Puts a number that was typed, with a point or a comma; what is none goes on as it was typed, to be refused. */
    public static void number(ObjectNode into, String name, String typed) {
        String numeral = typed.strip();
        if (WHOLE.matcher(numeral).matches()) {
            into.put(name, Long.parseLong(numeral));
        } else if (NUMERAL.matcher(numeral).matches()) {
            into.put(name, new BigDecimal(numeral.replace(',', '.')));
        } else {
            into.put(name, typed);
        }
    }

    /** What is wrong, as a sentence that stands at its field. */
    public static String words(Fault fault) {
        return "It " + fault.wrong() + ". Right would be: " + fault.right() + ".";
    }
}
