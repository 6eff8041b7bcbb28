package varanid.intake.sample;

import org.springframework.stereotype.Component;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.infection.SamplingDefaults;
import varanid.intake.platform.reference.ReferenceFile;

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
        return ReferenceFile.read(PATH, file -> yaml.readValue(file, SamplingDefaults.class));
    }
}
