package varanid.intake.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.node.JsonNodeFactory;

/**
 * The query parameters of a GET: a controller takes it as a parameter, asks for its filters, then for the
 * {@link #page()}. A parameter nobody asked for is a fault: a misspelt filter would silently list everything.
 */
public final class Query {

    static final int DEFAULT_LIMIT = 50;
    static final int HIGHEST_LIMIT = 200;

    /** A cursor may hold a name of 200 characters. */
    private static final int LONGEST_CURSOR = 2_000;

    private final String path;
    private final Map<String, List<String>> parameters;
    private final Set<String> asked = new LinkedHashSet<>();
    private final Faults faults = new Faults();

    Query(String path, Map<String, List<String>> parameters) {
        this.path = path;
        this.parameters = parameters;
    }

    static Query of(HttpServletRequest request) {
        Map<String, List<String>> parameters = new LinkedHashMap<>();
        try {
            request.getParameterMap().forEach((name, values) -> parameters.put(name, List.of(values)));
        } catch (IllegalStateException e) {
            // That is how the container says that it cannot decode them.
            throw ProblemException.malformed("The query cannot be read: it is UTF-8, percent-encoded.");
        }
        return new Query(request.getRequestURI(), parameters);
    }

    /** An id to filter by. */
    public Given<UUID> id(String name) {
        return value(name).id();
    }

    /** A text to filter by. */
    public Given<String> text(String name, int longest) {
        return value(name).text(longest);
    }

    /** A date to filter by, such as the day a plan is asked for. */
    public Given<LocalDate> date(String name) {
        return value(name).date();
    }

    /** A code to filter by. */
    public <T> Given<T> choice(String name, List<T> choices, Function<? super T, String> code) {
        return value(name).choice(choices, code);
    }

    /**
     * Which page is asked for, by {@code limit} (1 to 200, else 50) and {@code cursor}. Asked last.
     *
     * @throws ProblemException 422 with every fault of the query
     */
    public Page page() {
        return new Page(page(CursorForm.OF_IDS));
    }

    /**
     * Which page of a list in an order of its own is asked for. Asked last.
     *
     * @throws ProblemException 422 with every fault of the query
     */
    public <K> SortedPage<K> page(CursorForm<K> form) {
        Given<Integer> limit = value("limit").text(20).map("a whole number from 1 to " + HIGHEST_LIMIT, text -> {
            int number;
            try {
                number = Integer.parseInt(text);
            } catch (NumberFormatException e) {
                throw new IllegalArgumentException(Texts.quote(text) + " is not a whole number", e);
            }
            if (number < 1 || number > HIGHEST_LIMIT) {
                throw new IllegalArgumentException(number + " is out of range");
            }
            return number;
        });
        Given<K> after = value("cursor")
                .text(LONGEST_CURSOR)
                .map("a cursor as a Link header of this list gave it out", form::read);
        orThrow();
        return new SortedPage<>(path, filters(), limit.orElse(DEFAULT_LIMIT), form, after.find());
    }

    /**
     * For a GET that has no pages.
     *
     * @throws ProblemException 422 with every fault of the query
     */
    public void orThrow() {
        for (String name : parameters.keySet()) {
            if (!asked.contains(name)) {
                String right = asked.isEmpty() ? "no parameter at all" : "only: " + String.join(", ", asked);
                faults.add(Fault.inParameter(Texts.quote(name), "is not a parameter here", right));
            }
        }
        faults.orThrow();
    }

    private Map<String, String> filters() {
        Map<String, String> filters = new LinkedHashMap<>();
        parameters.forEach((name, values) -> {
            if (!name.equals("cursor") && !name.equals("limit")) {
                filters.put(name, values.get(0));
            }
        });
        return filters;
    }

    private JsonValue value(String name) {
        asked.add(name);
        List<String> values = Optional.ofNullable(parameters.get(name)).orElse(List.of());
        if (values.size() > 1) {
            faults.add(Fault.inParameter(name, "is given " + values.size() + " times", "once"));
        }
        @Nullable String only = values.size() == 1 ? values.get(0) : null;
        return new JsonValue(only == null ? null : JsonNodeFactory.instance.stringNode(only), name, faults, true);
    }
}
