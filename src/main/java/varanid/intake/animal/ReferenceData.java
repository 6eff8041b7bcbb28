package varanid.intake.animal;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.platform.reference.ReferenceFile;

/** What {@code shared/reference} says about species, source codes, evidence of origin and country numbers. */
@Component
class ReferenceData {

    private static final YAMLMapper YAML = YAMLMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .build();

    private final Map<String, Species> species;
    private final List<SourceCode> sourceCodes;
    private final ProvenanceRules provenance;
    private final Set<String> countries;

    ReferenceData() {
        species = load("species", SpeciesFile.class).species().stream()
                .map(line -> new Species(
                        line.name(), line.authority(), line.appendix().equals("I")))
                .collect(Collectors.toUnmodifiableMap(each -> key(each.name()), Function.identity()));
        sourceCodes = load("cites-source-codes", SourceCodeFile.class).codes().stream()
                .map(line -> new SourceCode(
                        line.code(),
                        SourceCode.Use.valueOf(constant(line.use())),
                        OriginRisk.valueOf(constant(line.risk())),
                        line.points(),
                        line.meaning()))
                .toList();
        ProvenanceFile file = load("provenance", ProvenanceFile.class);
        provenance = new ProvenanceRules(file.wildLikelyFrom(), file.captiveLikelyUpTo(), file.questions());
        countries = Set.copyOf(load("country-numbers", CountryFile.class).numbers());
    }

    /** The listed species of that name, whatever its capitals. */
    Optional<Species> findSpecies(String name) {
        return Optional.ofNullable(species.get(key(name)));
    }

    /** Every listed species. */
    List<Species> listSpecies() {
        return List.copyOf(species.values());
    }

    /** Every source code, those for plants too. */
    List<SourceCode> listSourceCodes() {
        return sourceCodes;
    }

    /** @throws IllegalArgumentException for what is no source code */
    SourceCode getSourceCode(String code) {
        return sourceCodes.stream()
                .filter(each -> each.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no source code: " + code));
    }

    ProvenanceRules provenance() {
        return provenance;
    }

    boolean isCountry(String number) {
        return countries.contains(number);
    }

    private static String key(String name) {
        return name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }

    private static String constant(String word) {
        return word.toUpperCase(Locale.ROOT).replace('-', '_');
    }

    private static <T> T load(String name, Class<T> type) {
        String path = "/shared/reference/" + name + ".yaml";
        return ReferenceFile.read(path, file -> YAML.readValue(file, type));
    }

    /**
     * A species of monitor.
     *
     * @param name genus and species
     * @param authority who described it, and when
     * @param appendixOne whether CITES has it in Appendix I; the others are in II
     */
    record Species(String name, String authority, boolean appendixOne) {}

    private record Source(String source, String asOf) {}

    private record SpeciesFile(Source names, Appendices appendices, List<SpeciesLine> species) {}

    private record Appendices(
            String source, String validFrom, String checkedUpTo, String genus, String genusAppendix) {}

    private record SpeciesLine(String name, String authority, String appendix) {}

    private record SourceCodeFile(String source, String asOf, List<SourceCodeLine> codes) {}

    private record SourceCodeLine(String code, String use, String risk, int points, String meaning) {}

    private record ProvenanceFile(
            String source,
            String asOf,
            int wildLikelyFrom,
            int captiveLikelyUpTo,
            List<ProvenanceRules.Question> questions) {}

    private record CountryFile(String source, String asOf, List<String> numbers) {}
}
