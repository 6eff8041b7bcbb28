package varanid.intake.quarantine;

import java.io.IOException;
import java.io.InputStream;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.cfg.EnumFeature;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** Reads the policy that the program is shipped with. */
final class PolicyFile {

    private static final String PATH = "/shared/reference/quarantine-policy.yaml";

    private PolicyFile() {}

    /** @throws IllegalStateException where it is missing or faulty, with every fault */
    static QuarantinePolicy read() {
        YAMLMapper yaml = YAMLMapper.builder()
                .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
                .enable(EnumFeature.READ_ENUMS_USING_TO_STRING)
                .build();
        try (InputStream file = PolicyFile.class.getResourceAsStream(PATH)) {
            if (file == null) {
                throw new IllegalStateException("missing from the program: " + PATH);
            }
            return yaml.readValue(file, QuarantinePolicy.class);
        } catch (IOException e) {
            throw new IllegalStateException("cannot be read: " + PATH, e);
        }
    }
}
