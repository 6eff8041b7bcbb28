package varanid.intake.visit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Composition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Against FHIR R4 (4.0.1), by the validator of the HAPI project. */
class FhirFormTest {

    /** LOINC is licensed and not in the validator: it says so of every code of it. */
    private static final List<Pattern> NOT_OUR_FAULT = List.of(
            Pattern.compile(
                    "warning at .*: Unable to expand ValueSet because CodeSystem could not be found: http://loinc.org"),
            Pattern.compile("warning at .*: CodeSystem is unknown and can't be validated: http://loinc.org for"
                    + " 'http://loinc.org#(57133-1|29463-7)'"));

    private final FhirForm form = new FhirForm(FhirValidator.catalogue(), new HandOverTexts());

    static List<Summary> all() {
        return SummaryFixtures.all();
    }

    static List<String> faults(byte[] document) {
        return FhirValidator.shared().complaints(document).stream()
                .filter(complaint -> NOT_OUR_FAULT.stream()
                        .noneMatch(known -> known.matcher(complaint).matches()))
                .toList();
    }

    @ParameterizedTest
    @MethodSource("all")
    void isValidWhateverIsMissingAndWhateverPeopleWrote(Summary summary) {
        assertThat(faults(form.write(summary, Optional.empty()))).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("all")
    void beginsWithACompositionThatHasEverySectionInOrder(Summary summary) {
        Bundle bundle = FhirValidator.shared().parse(form.write(summary, Optional.empty()));

        assertThat(bundle.getType()).isEqualTo(Bundle.BundleType.DOCUMENT);
        Composition composition = (Composition) bundle.getEntryFirstRep().getResource();
        List<String> codes = composition.getSection().stream()
                .map(section -> section.getCode().getCodingFirstRep().getCode())
                .toList();
        assertThat(codes)
                .containsSubsequence(
                        summary.sections().stream().map(Summary.Section::code).toList());
    }

    @Test
    void isRefusedByTheValidatorOnceItIsBroken() {
        String document = new String(form.write(SummaryFixtures.emergency(), Optional.empty()), StandardCharsets.UTF_8);

        assertThat(faults(document.replace("\"status\":\"final\",", "").getBytes(StandardCharsets.UTF_8)))
                .isNotEmpty();
        assertThat(faults(document.replace("\"code\":\"g\"", "\"code\":\"grammes\"")
                        .getBytes(StandardCharsets.UTF_8)))
                .isNotEmpty();
    }

    @Test
    void isTheSameBytesForTheSameSummary() {
        assertThat(form.write(SummaryFixtures.stableSick(), Optional.empty()))
                .isEqualTo(form.write(SummaryFixtures.stableSick(), Optional.empty()));
    }
}
