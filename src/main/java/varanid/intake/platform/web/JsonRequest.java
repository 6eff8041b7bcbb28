package varanid.intake.platform.web;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** The JSON body of a POST or PUT: a controller takes it as a parameter and {@link #read reads} it. */
public final class JsonRequest implements KeyedRequest {

    private final String target;
    private final byte[] body;
    private final JsonNode document;
    private final @Nullable String key;

    JsonRequest(String target, byte[] body, JsonNode document, @Nullable String key) {
        this.target = target;
        this.body = body;
        this.document = document;
        this.key = key;
    }

    /** A request that stands in a file of ours instead of being sent: read and checked like any other. */
    public static JsonRequest written(JsonNode document) {
        return new JsonRequest("", new byte[0], document, null);
    }

    /**
     * A form, as the JSON that a program would send.
     *
     * @param target method and path that the form is sent to
     * @param key the form's own, of which its effect happens once; nothing where it has none
     */
    public static JsonRequest ofForm(String target, JsonNode document, @Nullable String key) {
        return new JsonRequest(target, document.toString().getBytes(StandardCharsets.UTF_8), document, key);
    }

    /**
     * Reads the body, which has to be an object.
     *
     * @throws ProblemException 422 with every fault in it
     */
    public <R> R read(ObjectReader<R> reader) {
        Faults faults = new Faults();
        @Nullable R result = null;
        if (document instanceof ObjectNode object) {
            result = JsonFields.read(object, "#", faults, reader);
        } else {
            faults.add(Fault.at("#", "is not an object", "a JSON object"));
        }
        faults.orThrow();
        if (result == null) {
            throw new IllegalStateException("neither a value nor a fault");
        }
        return result;
    }

    @Override
    public Optional<String> key() {
        return Optional.ofNullable(key);
    }

    @Override
    public byte[] hash() {
        return Once.sha256(target, body);
    }
}
