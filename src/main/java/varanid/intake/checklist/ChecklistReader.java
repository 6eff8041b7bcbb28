package varanid.intake.checklist;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.deser.std.StdDeserializer;
import tools.jackson.databind.module.SimpleModule;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.scoring.Checklist;
import varanid.intake.scoring.ChecklistDraft;
import varanid.intake.scoring.ChecklistRefused;
import varanid.intake.scoring.Fault;
import varanid.intake.scoring.Scorer;

/**
 * Reads a checklist file: its shape is held against the JSON Schema, then its meaning is checked.
 *
 * <p>Either way every fault is named at once.
 */
public final class ChecklistReader {

    private static final String SCHEMA = "/shared/schemas/checklist.schema.json";

    private final Schema schema;
    private final YAMLMapper yaml = YAMLMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .disable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .addModule(new SimpleModule()
                    .addDeserializer(
                            ChecklistDraft.Direction.class, new StdDeserializer<>(ChecklistDraft.Direction.class) {
                                @Override
                                public ChecklistDraft.Direction deserialize(
                                        JsonParser parser, DeserializationContext context) {
                                    return ChecklistDraft.Direction.valueOf(
                                            parser.getString().replace('-', '_').toUpperCase(Locale.ROOT));
                                }
                            }))
            .build();

    public ChecklistReader() {
        try (InputStream in = ChecklistReader.class.getResourceAsStream(SCHEMA)) {
            if (in == null) {
                throw new IllegalStateException("the schema " + SCHEMA + " is not on the class path");
            }
            schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(new String(in.readAllBytes(), StandardCharsets.UTF_8), InputFormat.JSON);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * @param name what to call the file in a refusal
     * @throws ChecklistRefused with every fault of the shape, or of the meaning
     */
    public Checklist read(String name, byte[] file) {
        return read(name, parse(name, file));
    }

    /** Reads a checklist with the digest of its file. */
    Edition readEdition(String name, byte[] file) {
        JsonNode tree = parse(name, file);
        Checklist checklist = read(name, tree);
        return new Edition(
                checklist.draft().id(),
                checklist.draft().version(),
                Catalogue.sha256(file),
                checklist.draft().status().equals("published"),
                new String(file, StandardCharsets.UTF_8),
                tree,
                new Scorer(checklist));
    }

    private Checklist read(String name, JsonNode tree) {
        List<Fault> shape = schema.validate(tree).stream()
                .map(error -> new Fault(
                        error.getInstanceLocation().toString(),
                        error.getMessage(),
                        "see " + SCHEMA.substring(1) + " at "
                                + error.getSchemaLocation().getFragment()))
                .toList();
        if (!shape.isEmpty()) {
            throw new ChecklistRefused(name, shape);
        }
        return Checklist.from(yaml.treeToValue(tree, ChecklistDraft.class));
    }

    private JsonNode parse(String name, byte[] file) {
        try {
            return yaml.readTree(file);
        } catch (JacksonException e) {
            throw new ChecklistRefused(
                    name, List.of(new Fault("", "is not YAML: " + e.getOriginalMessage(), "YAML 1.2, each key once")));
        }
    }
}
