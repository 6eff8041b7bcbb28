package varanid.intake.checklist;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Breaks the build where a published checklist was edited: the catalogue of this build cannot then be read. */
class ShippedChecklistsTest {

    @Test
    void everyShippedChecklistCanBeReadAndEveryPublishedOneIsAsItWas() {
        assertThat(new Catalogue().list())
                .isNotEmpty()
                .anyMatch(edition -> edition.id().equals("varanid-intake"));
    }

    @Test
    void aShippedFileHasNoCarriageReturnsForTheDigestToDependOn() throws Exception {
        try (var in = getClass().getResourceAsStream("/shared/checklists/varanid-intake.v1.yaml")) {
            assertThat(in).isNotNull();
            assertThat(in.readAllBytes()).doesNotContain((byte) '\r');
        }
    }
}
