package varanid.intake.visit;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.util.Optional;
import java.util.UUID;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.ProblemException;

/** The page that a vet reads, for those who have an account. */
@RestController
@Tag(name = "Hand-over")
class SummaryController {

    private final SummaryReader summaries;
    private final SummaryForms forms;

    SummaryController(SummaryReader summaries, SummaryForms forms) {
        this.summaries = summaries;
        this.forms = forms;
    }

    @GetMapping("/api/v1/animals/{animalId}/summary")
    @Operation(
            summary = "What a vet should know of the animal, in the order a clinician thinks",
            description =
                    "The same content as JSON, as a page, as a PDF or as a FHIR R4 document, by the Accept header.")
    @ApiResponse(
            responseCode = "200",
            description = "the summary as of now",
            content = {
                @Content(
                        mediaType = MediaType.APPLICATION_JSON_VALUE,
                        schema = @Schema(implementation = Summary.class)),
                @Content(mediaType = MediaType.TEXT_HTML_VALUE),
                @Content(mediaType = MediaType.APPLICATION_PDF_VALUE),
                @Content(mediaType = "application/fhir+json")
            })
    public ResponseEntity<byte[]> summary(Caller caller, @PathVariable UUID animalId, HttpServletRequest request) {
        SummaryForm form = forms.choose(request);
        Summary summary = summaries
                .find(caller.organisationId(), caller.zone(), animalId)
                .orElseThrow(() -> ProblemException.notFound("animal"));
        return forms.reply(form, summary, Optional.empty());
    }
}
