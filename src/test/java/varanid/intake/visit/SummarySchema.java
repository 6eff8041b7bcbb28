package varanid.intake.visit;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** The published schema of the summary, by an independent validator. */
final class SummarySchema {

    private static final Schema SCHEMA = read();

    private SummarySchema() {}

    private static Schema read() {
        try (InputStream in = SummarySchema.class.getResourceAsStream("/shared/schemas/summary.schema.json")) {
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(
                            new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8),
                            InputFormat.JSON);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Everything that is wrong with it. */
    static List<String> faults(String json) {
        return SCHEMA
                .validate(
                        json,
                        InputFormat.JSON,
                        context -> context.executionConfig(config -> config.formatAssertionsEnabled(true)))
                .stream()
                .map(Object::toString)
                .toList();
    }
}
