package varanid.intake.checklist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import varanid.intake.scoring.ChecklistRefused;

class CatalogueTest {

    private static final String NAME = "varanid-intake.v1.yaml";

    private String draft = "";
    private String published = "";

    @BeforeEach
    void readTheShippedOne() throws IOException {
        try (var in = Objects.requireNonNull(getClass().getResourceAsStream("/shared/checklists/" + NAME))) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            draft = text.replaceFirst("(?m)^status: \\w+$", "status: draft");
            published = text.replaceFirst("(?m)^status: \\w+$", "status: published");
        }
    }

    @Test
    void takesADraftThatNobodyPublished() {
        Catalogue catalogue = catalogue(NAME, draft, Map.of());
        assertThat(catalogue.find("varanid-intake", 1)).get().matches(edition -> !edition.published());
        assertThat(catalogue.findNewest("varanid-intake")).isPresent();
        assertThat(catalogue.find("varanid-intake", 2)).isEmpty();
        assertThat(catalogue.findNewest("another")).isEmpty();
    }

    @Test
    void takesAPublishedFileAsItWasPublished() {
        Catalogue catalogue = catalogue(NAME, published, Map.of(NAME, digest(published)));
        assertThat(catalogue.list()).hasSize(1).allMatch(Edition::published);
        assertThat(catalogue.list().get(0).sha256()).isEqualTo(digest(published));
    }

    @Test
    void refusesAPublishedFileOfWhichOneByteWasEdited() {
        String edited = published + "#";
        refuses(NAME, edited, Map.of(NAME, digest(published)), "was edited after it was published");
    }

    @Test
    void refusesAPublishedFileThatTheListDoesNotKnow() {
        refuses(NAME, published, Map.of(), "published.yaml does not know it");
    }

    @Test
    void refusesAListedFileThatIsMissing() {
        refuses(NAME, draft, Map.of("varanid-intake.v2.yaml", digest(published)), "was published and is missing");
    }

    @Test
    void refusesAPublishedFileThatCallsItselfADraftAgain() {
        refuses(NAME, draft, Map.of(NAME, digest(draft)), "was published and now says it is a draft");
    }

    @Test
    void refusesAFileWhoseNameIsThatOfAnotherVersion() {
        refuses("varanid-intake.v2.yaml", draft, Map.of(), "holds varanid-intake version 1");
    }

    @Test
    void prefersTheNewestPublishedVersionToANewerDraft() {
        String second = draft.replaceFirst("(?m)^version: 1$", "version: 2");
        Catalogue catalogue = new Catalogue(
                Map.of(NAME, bytes(published), "varanid-intake.v2.yaml", bytes(second)),
                Map.of(NAME, digest(published)));
        assertThat(catalogue.list()).extracting(Edition::version).containsExactly(1, 2);
        assertThat(catalogue.findNewest("varanid-intake")).get().matches(edition -> edition.version() == 1);
    }

    private static void refuses(String name, String file, Map<String, String> list, String why) {
        assertThatExceptionOfType(ChecklistRefused.class)
                .isThrownBy(() -> catalogue(name, file, list))
                .withMessageContaining(why);
    }

    private static Catalogue catalogue(String name, String file, Map<String, String> list) {
        return new Catalogue(Map.of(name, bytes(file)), list);
    }

    private static String digest(String file) {
        return Catalogue.sha256(bytes(file));
    }

    private static byte[] bytes(String file) {
        return file.getBytes(StandardCharsets.UTF_8);
    }
}
