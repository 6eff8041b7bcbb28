package varanid.intake.demo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.Period;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.core.io.ClassPathResource;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.databind.node.StringNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

/**
 * The file that describes the demo. Its requests are those of the API, but for this: {@code now-PT3H} and {@code
 * today-P1D} stand for a moment and a date; names stand for ids that there are only once it is loaded; {@code as} stands
 * for all that is said once under a name, where nothing else is said instead; and a list of moments for one request each.
 *
 * @param content the file as it is
 */
record DemoScript(JsonNode content) {

    /** Stands for the moment at which its request is sent. */
    static final String RECORDED_SO_FAR = "recorded-so-far";

    private static final Pattern MOMENT = Pattern.compile("now(-P.+)?");
    private static final Pattern DATE = Pattern.compile("today(?:([+-])(P.+))?");

    static DemoScript read() {
        try {
            byte[] file = new ClassPathResource("demo/reed-bank.yaml").getContentAsByteArray();
            return new DemoScript(YAMLMapper.builder()
                    .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
                    .build()
                    .readTree(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    String organisationName() {
        return content.at("/organisation/name").stringValue();
    }

    String phone() {
        return content.at("/organisation/phone").stringValue();
    }

    ZoneId zone() {
        return ZoneId.of(content.at("/organisation/zone").stringValue());
    }

    /**
     * The same with moments and dates counted from now, and ids in place of names.
     *
     * @param ids by name
     */
    JsonNode resolve(JsonNode node, Instant now, Map<String, String> ids) {
        if (node instanceof ObjectNode object) {
            ObjectNode resolved = object.objectNode();
            completed(object)
                    .properties()
                    .forEach(entry -> resolved.set(entry.getKey(), resolve(entry.getValue(), now, ids)));
            return resolved;
        } else if (node instanceof ArrayNode array) {
            ArrayNode resolved = array.arrayNode();
            array.forEach(each -> resolved.add(resolve(each, now, ids)));
            return resolved;
        } else if (node instanceof StringNode text) {
            return StringNode.valueOf(resolve(text.stringValue(), now, ids));
        }
        return node;
    }

    /** One request for each moment at which it is said to have occurred. */
    List<JsonNode> unfold(JsonNode written) {
        if (!(written instanceof ObjectNode object)
                || !completed(object).path("occurredAt").isArray()) {
            return List.of(written);
        }
        List<JsonNode> unfolded = new ArrayList<>();
        for (JsonNode moment : completed(object).get("occurredAt")) {
            unfolded.add(object.deepCopy().set("occurredAt", moment));
        }
        return unfolded;
    }

    /** With what is said once. */
    private ObjectNode completed(ObjectNode object) {
        if (!(object.path("as") instanceof StringNode name)) {
            return object;
        }
        ObjectNode said = (ObjectNode) content.get("said-once").get(name.stringValue());
        ObjectNode completed = completed(said).deepCopy();
        object.properties().forEach(entry -> completed.set(entry.getKey(), entry.getValue()));
        completed.remove("as");
        return completed;
    }

    private String resolve(String text, Instant now, Map<String, String> ids) {
        Matcher moment = MOMENT.matcher(text);
        Matcher date = DATE.matcher(text);
        if (moment.matches()) {
            return (moment.group(1) == null ? now : now.plus(Duration.parse(moment.group(1)))).toString();
        } else if (date.matches()) {
            LocalDate today = LocalDate.ofInstant(now, zone());
            return (date.group(2) == null ? today : today.plus(Period.parse(date.group(1) + date.group(2)))).toString();
        }
        return ids.getOrDefault(text, text);
    }
}
