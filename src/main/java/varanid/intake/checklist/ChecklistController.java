package varanid.intake.checklist;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.JsonNode;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;

@RestController
@RequestMapping("/api/v1/checklists")
@Tag(name = "Checklists", description = "What is asked, what each answer counts for, and where that comes from")
class ChecklistController {

    private final Catalogue catalogue;

    ChecklistController(Catalogue catalogue) {
        this.catalogue = catalogue;
    }

    @GetMapping
    @Operation(summary = "The checklists and their versions")
    public ResponseEntity<Items<EditionView>> list(Caller caller, Query query) {
        Page page = query.page();
        // A place in the list serves as the cursor: the list does not change while the service runs.
        List<Edition> editions = catalogue.list();
        long from = page.after().getLeastSignificantBits();
        List<Integer> places = IntStream.rangeClosed(1, editions.size())
                .filter(place -> place > from)
                .limit(page.fetch().max())
                .boxed()
                .toList();
        return page.reply(places, place -> new UUID(0, place), place -> EditionView.of(editions.get(place - 1)));
    }

    @GetMapping("/{id}/versions/{version}")
    @Operation(
            summary = "One version, whole",
            description = "The findings with their questions, levels, points, floors and sources, as the file holds"
                    + " them: see docs/checklist-format.md. The ETag is the SHA-256 of the file.")
    public ResponseEntity<JsonNode> edition(
            Caller caller, @PathVariable String id, @PathVariable int version, Query query) {
        query.orThrow();
        Edition edition = catalogue.find(id, version).orElseThrow(() -> ProblemException.notFound("checklist"));
        return ResponseEntity.ok().eTag('"' + edition.sha256() + '"').body(edition.content());
    }

    @Schema(name = "ChecklistVersion")
    record EditionView(
            @Schema(example = "varanid-intake") String id,
            int version,
            String title,

            @Schema(allowableValues = {"draft", "published"})
            String status,

            @Schema(description = "SHA-256 of the file's bytes")
            String digest,

            int findings,

            @Schema(example = "/api/v1/checklists/varanid-intake/versions/1")
            String path) {

        static EditionView of(Edition edition) {
            return new EditionView(
                    edition.id(),
                    edition.version(),
                    edition.checklist().draft().title(),
                    edition.published() ? "published" : "draft",
                    edition.sha256(),
                    edition.checklist().draft().findings().size(),
                    "/api/v1/checklists/" + edition.id() + "/versions/" + edition.version());
        }
    }
}
