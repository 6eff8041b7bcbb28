package varanid.intake.quarantine;

import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.cfg.EnumFeature;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.platform.reference.ReferenceFile;

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
        return ReferenceFile.read(PATH, file -> yaml.readValue(file, QuarantinePolicy.class));
    }
}
