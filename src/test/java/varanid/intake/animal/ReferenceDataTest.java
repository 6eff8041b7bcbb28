package varanid.intake.animal;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ReferenceDataTest {

    private final ReferenceData reference = new ReferenceData();

    /** CITES Appendices, read in two copies, one dated 2012-09-25. */
    @Test
    void fiveSpeciesOfMonitorAreInAppendixOne() {
        assertThat(reference.listSpecies())
                .filteredOn(ReferenceData.Species::appendixOne)
                .extracting(ReferenceData.Species::name)
                .containsExactlyInAnyOrder(
                        "Varanus bengalensis",
                        "Varanus flavescens",
                        "Varanus griseus",
                        "Varanus komodoensis",
                        "Varanus nebulosus");
        assertThat(reference.findSpecies("varanus  SALVATOR")).get().satisfies(salvator -> {
            assertThat(salvator.name()).isEqualTo("Varanus salvator");
            assertThat(salvator.appendixOne()).isFalse();
        });
    }

    /** ICZN article 51: an author and a year, in brackets where the genus was another. */
    @Test
    void everySpeciesHasAnAuthorAndAYear() {
        assertThat(reference.listSpecies()).hasSizeGreaterThan(80).allSatisfy(species -> {
            assertThat(species.name()).matches("Varanus [a-z]+");
            assertThat(species.authority()).matches("\\(?\\p{Lu}.*, (17|18|19|20)\\d\\d\\)?");
            assertThat(species.authority().startsWith("("))
                    .isEqualTo(species.authority().endsWith(")"));
        });
    }

    /** CITES Resolution Conf. 12.3. */
    @Test
    void knowsTheElevenSourceCodes() {
        assertThat(reference.listSourceCodes())
                .extracting(SourceCode::code)
                .containsExactlyInAnyOrder("W", "R", "D", "A", "C", "F", "U", "I", "O", "X", "Y");
        assertThat(reference.listSourceCodes())
                .filteredOn(code -> code.use() == SourceCode.Use.PLANTS_ONLY)
                .extracting(SourceCode::code)
                .containsExactlyInAnyOrder("A", "Y");
    }

    /** ISO 3166-1. */
    @Test
    void knowsCountryNumbers() {
        assertThat(reference.isCountry("276")).isTrue();
        assertThat(reference.isCountry("360")).isTrue();
        assertThat(reference.isCountry("899")).isFalse();
    }
}
