package varanid.intake.checklist;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import varanid.intake.scoring.ChecklistDraft;

/** What every checklist that people are asked by must hold beyond what the format asks. */
class ShippedChecklistsTest {

    private static final List<ChecklistDraft> SHIPPED = new Catalogue()
            .list().stream().map(edition -> edition.checklist().draft()).toList();

    @Test
    void everyFindingIsAskedExplainedAndToldFromItsNormalLookAlike() {
        assertThat(SHIPPED).isNotEmpty();
        assertThat(SHIPPED).flatExtracting(ChecklistDraft::findings).allSatisfy(finding -> {
            assertThat(finding.question()).as(finding.id()).endsWith("?");
            assertThat(finding.help()).as(finding.id()).isNotBlank();
            assertThat(finding.lookAlike()).as(finding.id()).isNotBlank();
            assertThat(finding.reason()).as(finding.id()).isNotBlank();
            assertThat(finding.levels())
                    .as(finding.id())
                    .allSatisfy(level -> assertThat(level.label()).isNotBlank());
        });
    }

    @Test
    void everyWeightFloorAndThresholdNamesItsSource() {
        for (ChecklistDraft draft : SHIPPED) {
            assertThat(draft.total().bands())
                    .allSatisfy(band -> assertThat(band.source()).isNotEmpty());
            assertThat(draft.sections())
                    .flatExtracting(ChecklistDraft.Section::bands)
                    .allSatisfy(band ->
                            assertThat(((ChecklistDraft.Band) band).source()).isNotEmpty());
            assertThat(draft.findings()).allSatisfy(finding -> {
                assertThat(finding.pointsSource()).as(finding.id()).isNotEmpty();
                assertThat(finding.bands())
                        .as(finding.id())
                        .allSatisfy(bands -> assertThat(bands.source()).isNotEmpty());
                assertThat(finding.levels())
                        .as(finding.id())
                        .filteredOn(level -> level.floor() != null)
                        .allSatisfy(level -> {
                            assertThat(level.floorReason()).isNotBlank();
                            assertThat(level.floorSource()).isNotEmpty();
                        });
            });
            assertThat(draft.combinations()).allSatisfy(it -> {
                assertThat(it.reason()).as(it.id()).isNotBlank();
                assertThat(it.source()).as(it.id()).isNotEmpty();
            });
            assertThat(draft.conditions())
                    .allSatisfy(it -> assertThat(it.source()).as(it.id()).isNotEmpty());
            assertThat(draft.advice())
                    .allSatisfy(it -> assertThat(it.source()).as(it.id()).isNotEmpty());
        }
    }

    @Test
    void nothingAsksToOpenAMouthTurnAnAnimalOverOrPutItIntoWater() {
        assertThat(SHIPPED)
                .flatExtracting(ChecklistDraft::findings)
                .extracting(ChecklistDraft.Finding::question)
                .noneMatch(question -> question.toLowerCase(java.util.Locale.ROOT)
                        .matches(".*(open its mouth|pinch|turn it over|flip|probe|put it into).*"));
    }

    /** HL7 FHIR R4 request-priority, http://hl7.org/fhir/request-priority: asap is above urgent, stat above all. */
    @Test
    void urgencyIsInTheOrderOfTheFhirCodes() {
        assertThat(SHIPPED)
                .filteredOn(draft -> draft.id().equals("varanid-intake"))
                .allSatisfy(draft -> assertThat(draft.outcomes())
                        .extracting(ChecklistDraft.Outcome::code)
                        .containsExactly("routine", "urgent", "asap", "stat"));
    }

    /** Res. Conf. 12.3 of CITES: the codes that a live animal can have (A and Y are for plants, D for Appendix I). */
    @Test
    void originIsASourceCodeThatAnAnimalCanHave() {
        assertThat(SHIPPED)
                .flatExtracting(ChecklistDraft::attributes)
                .filteredOn(attribute -> attribute.id().equals("origin"))
                .flatExtracting(ChecklistDraft.Attribute::values)
                .extracting(ChecklistDraft.Attribute.Value::code)
                .contains("W", "R", "D", "C", "F", "U", "I", "O", "X")
                .doesNotContain("A", "Y");
    }

    @Test
    void aFileThatWasEditedAfterItWasPublishedIsRefused() {
        byte[] bytes = new Catalogue()
                .find("varanid-intake", 1)
                .orElseThrow()
                .file()
                .replace("points: 10", "points: 9")
                .getBytes(java.nio.charset.StandardCharsets.UTF_8);
        Map<String, byte[]> files = Map.of("varanid-intake.v1.yaml", bytes);
        String digest = new Catalogue().find("varanid-intake", 1).orElseThrow().sha256();

        org.assertj.core.api.Assertions.assertThatThrownBy(
                        () -> new Catalogue(files, Map.of("varanid-intake.v1.yaml", digest)))
                .hasMessageContaining("was edited after it was published");
    }
}
