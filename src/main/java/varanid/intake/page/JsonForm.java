package varanid.intake.page;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import varanid.intake.platform.web.SentForm;

/**
 * A form as the JSON that a program would send. The name of a field is the way to its place: {@code transport.hours} is
 * the member {@code hours} of the object {@code transport}, {@code treatments.0.what} that of the first treatment. What
 * was left empty is left out, and so is an object in which nothing is.
 */
public final class JsonForm {

    private final SentForm form;
    private final ObjectNode document = JsonNodeFactory.instance.objectNode();
    private final Set<String> fields = new LinkedHashSet<>();

    public JsonForm(SentForm form) {
        this.form = form;
    }

    /** What was typed or chosen, as text. */
    public JsonForm texts(String... names) {
        return each(names, (name, typed) -> parent(name).put(last(name), typed));
    }

    /** What was typed, as a number where it is one. */
    public JsonForm numbers(String... names) {
        return each(names, (name, typed) -> SentForm.number(parent(name), last(name), typed));
    }

    /** {@code true} where a box is ticked. */
    public JsonForm ticks(String... names) {
        return each(names, (name, typed) -> parent(name).put(last(name), true));
    }

    /** All that was chosen of several, as a list. */
    public JsonForm lists(String... names) {
        return each(names, (name, typed) -> {
            ArrayNode list = parent(name).putArray(last(name));
            form.values(name).stream().filter(value -> !value.isBlank()).forEach(list::add);
        });
    }

    /** Each line of what was typed, as a list. */
    public JsonForm lines(String... names) {
        return each(names, (name, typed) -> {
            ArrayNode list = parent(name).putArray(last(name));
            typed.lines().filter(line -> !line.isBlank()).forEach(list::add);
        });
    }

    /** What was chosen in fields that stand beside a field {@code value}, and say nothing where that is empty. */
    public JsonForm units(String... names) {
        return each(names, (name, chosen) -> {
            if (form.find(sibling(name)).isPresent()) {
                parent(name).put(last(name), chosen);
            }
        });
    }

    public ObjectNode document() {
        return document;
    }

    /** The fields that were read, typed in or not, by where they stand in the request. */
    public Map<String, String> fieldsByPointer() {
        Map<String, String> byPointer = new LinkedHashMap<>();
        for (String name : fields) {
            // What is wrong with an object stands at its first field.
            for (int dot = name.lastIndexOf('.'); dot > 0; dot = name.lastIndexOf('.', dot - 1)) {
                byPointer.putIfAbsent(pointer(name.substring(0, dot)), name);
            }
            byPointer.put(pointer(name), name);
        }
        return byPointer;
    }

    private static String pointer(String name) {
        return "#/" + name.replace('.', '/');
    }

    private static String sibling(String name) {
        return name.substring(0, name.lastIndexOf('.') + 1) + "value";
    }

    private JsonForm each(String[] names, BiConsumer<String, String> put) {
        for (String name : names) {
            fields.add(name);
            form.find(name).ifPresent(typed -> put.accept(name, typed));
        }
        return this;
    }

    private ObjectNode parent(String name) {
        List<String> way = List.of(name.split("\\."));
        ObjectNode at = document;
        for (int i = 0; i < way.size() - 1; i++) {
            if (i + 2 < way.size() && isIndex(way.get(i + 1))) {
                at = item(at.withArray(way.get(i)), Integer.parseInt(way.get(i + 1)));
                i++;
            } else {
                at = at.withObject(way.get(i));
            }
        }
        return at;
    }

    /** A list has no gaps: who fills in the third line and not the second has told two things. */
    private static ObjectNode item(ArrayNode list, int index) {
        JsonNode found = list.get(index);
        return found instanceof ObjectNode object ? object : list.addObject();
    }

    private static boolean isIndex(String segment) {
        return segment.chars().allMatch(Character::isDigit);
    }

    private static String last(String name) {
        return name.substring(name.lastIndexOf('.') + 1);
    }
}
