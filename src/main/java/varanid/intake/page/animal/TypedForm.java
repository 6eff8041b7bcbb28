package varanid.intake.page.animal;

import jakarta.servlet.http.HttpServletRequest;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;

/**
 * What was typed into a form. A number may be typed with a comma; what is no number goes on as it was typed, so that it is
 * refused with its name.
 */
final class TypedForm {

    /** The field with the form's own key, of which its effect happens once. */
    static final String KEY = "key";

    private static final Pattern NUMERAL = Pattern.compile("[+-]?\\d{1,9}([.,]\\d{1,9})?");
    private static final int LONGEST_KEY = 200;

    private final Map<String, String> typed;

    private TypedForm(Map<String, String> typed) {
        this.typed = typed;
    }

    static TypedForm empty() {
        return new TypedForm(Map.of());
    }

    static TypedForm of(HttpServletRequest request) {
        Map<String, String> typed = new LinkedHashMap<>();
        try {
            request.getParameterMap().forEach((name, values) -> typed.put(name, values[0].replace("\r\n", "\n")));
        } catch (IllegalStateException e) {
            // That is how the container says that it is too large, or cannot be decoded.
            throw new ProblemException(
                    ProblemType.TOO_LARGE, "The form cannot be read, or is larger than is taken here. Shorten it.");
        }
        return new TypedForm(typed);
    }

    Map<String, String> typed() {
        return typed;
    }

    Optional<String> find(String field) {
        return Optional.ofNullable(typed.get(field)).filter(text -> !text.isBlank());
    }

    Optional<String> key() {
        return find(KEY).filter(key -> key.length() <= LONGEST_KEY);
    }

    /** Puts what was typed into a field, where anything was, under the same name. */
    void text(ObjectNode into, String field) {
        find(field).ifPresent(text -> into.put(field, text));
    }

    /** The same for a number under another name. */
    void number(ObjectNode into, String name, String field) {
        find(field).map(String::strip).ifPresent(text -> {
            if (NUMERAL.matcher(text).matches()) {
                into.put(name, new BigDecimal(text.replace(',', '.')));
            } else {
                into.put(name, text);
            }
        });
    }

    /** What is wrong, by the field it is wrong in, in the words of the interface. */
    static Map<String, List<String>> faults(List<Fault> faults, Map<String, String> fieldOf) {
        Map<String, List<String>> byField = new LinkedHashMap<>();
        for (Fault fault : faults) {
            String pointer = String.valueOf(fault.pointer());
            String field = fieldOf.entrySet().stream()
                    .filter(entry -> pointer.startsWith(entry.getKey()))
                    .map(Map.Entry::getValue)
                    .findFirst()
                    .orElseGet(() -> pointer.replaceFirst("^#/", "").replaceFirst("/.*", ""));
            byField.computeIfAbsent(field, each -> new ArrayList<>())
                    .add("It " + fault.wrong() + ". Right would be: " + fault.right() + ".");
        }
        return byField;
    }
}
