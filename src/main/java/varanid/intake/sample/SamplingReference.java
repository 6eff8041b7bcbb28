package varanid.intake.sample;

import java.io.IOException;
import java.io.InputStream;
import org.springframework.stereotype.Component;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.infection.SamplingDefaults;

/** What the program is shipped with about infections and tests. */
@Component
class SamplingReference {

    private static final String PATH = "/shared/reference/sampling.yaml";

    private final SamplingDefaults defaults = read();

    SamplingDefaults defaults() {
        return defaults;
    }

    /** @throws IllegalStateException where it is missing or faulty */
    private static SamplingDefaults read() {
        YAMLMapper yaml = YAMLMapper.builder()
                .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
                .build();
        try (InputStream file = SamplingReference.class.getResourceAsStream(PATH)) {
            if (file == null) {
                throw new IllegalStateException("missing from the program: " + PATH);
            }
            return yaml.readValue(file, SamplingDefaults.class);
        } catch (IOException e) {
            throw new IllegalStateException("cannot be read: " + PATH, e);
        }
    }
}
