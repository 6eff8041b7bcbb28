package varanid.intake.platform.web;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A file and the fields that were sent with it. Fields are {@linkplain #read read} like those of a JSON object, each a
 * text; the field {@code file} stands for the file and is given where a file was sent.
 */
public final class FileRequest implements KeyedRequest {

    /** The name of the part that is the file. */
    public static final String FILE = "file";

    /** The part that proves that a page of this service sent a form; the security of the pages has read it. */
    private static final String FORM_PROOF = "_csrf";

    private final String target;
    private final Map<String, String> fields;
    private final byte @Nullable [] file;
    private final @Nullable String key;

    FileRequest(String target, Map<String, String> fields, byte @Nullable [] file, @Nullable String key) {
        this.target = target;
        this.fields = new TreeMap<>(fields);
        this.file = file;
        this.key = key;
    }

    /**
     * The same as a program would send it, where a browser sent a form: without the proof that a page of this service
     * sent it and without what was left empty, and kept once for the form's own key.
     *
     * @param keyField the field with that key
     */
    public FileRequest ofForm(String keyField) {
        Map<String, String> filledIn = new TreeMap<>(fields);
        filledIn.remove(FORM_PROOF);
        @Nullable String formKey = filledIn.remove(keyField);
        filledIn.values().removeIf(String::isBlank);
        return new FileRequest(target, filledIn, file == null || file.length == 0 ? null : file, formKey);
    }

    /** What was sent as the file, whatever it is. */
    public Optional<byte[]> file() {
        return Optional.ofNullable(file);
    }

    /**
     * Reads the fields.
     *
     * @throws ProblemException 422 with every fault in them
     */
    public <R> R read(ObjectReader<R> reader) {
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        fields.forEach(object::put);
        if (file != null) {
            object.put(FILE, "");
        }
        Faults faults = new Faults();
        @Nullable R result = JsonFields.read(object, "#", faults, reader);
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

    /** Of the parts by name: their order, the boundary between them and the file's name do not count. */
    @Override
    public byte[] hash() {
        StringBuilder text = new StringBuilder(target);
        fields.forEach((name, value) -> text.append('\n')
                .append(name.length())
                .append(' ')
                .append(value.length())
                .append('\n')
                .append(name)
                .append(value));
        byte[] sent = file;
        return sent == null
                ? Once.sha256(text.toString(), "no file".getBytes(StandardCharsets.UTF_8))
                : Once.sha256(text.toString(), Once.sha256("a file", sent));
    }
}
