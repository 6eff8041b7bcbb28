package varanid.intake.visit;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.PublicAddress;
import varanid.intake.share.LinkKind;
import varanid.intake.share.Links;

/** The page that a vet reads, for those who have an account. */
@RestController
@Tag(name = "Hand-over")
class SummaryController {

    /** So that a page or PDF that is printed can show the link. */
    private static final String SECRET = "Summary-Link";

    private final SummaryReader summaries;
    private final SummaryForms forms;
    private final Links links;
    private final PublicAddress address;

    SummaryController(SummaryReader summaries, SummaryForms forms, Links links, PublicAddress address) {
        this.summaries = summaries;
        this.forms = forms;
        this.links = links;
        this.address = address;
    }

    @GetMapping("/api/v1/animals/{animalId}/summary")
    @Operation(
            summary = "What a vet should know of the animal, in the order a clinician thinks",
            description =
                    "The same content as JSON, as a page, as a PDF or as a FHIR R4 document, by Accept, or by form:"
                            + " html, pdf, json or fhir."
                            + " With the secret of an open link in the header Summary-Link, a page shows that link and its QR code.")
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
    public ResponseEntity<byte[]> summary(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestParam(name = "form", required = false) Optional<String> wanted,
            HttpServletRequest request) {
        SummaryForm form = wanted.flatMap(forms::find).orElseGet(() -> forms.choose(request));
        Summary summary = summaries
                .find(caller.organisationId(), caller.zone(), animalId)
                .orElseThrow(() -> ProblemException.notFound("animal"));
        return forms.reply(form, summary, link(caller, animalId, request));
    }

    /** The address of a link, where its secret came along: it is stored nowhere, so only whoever has it can say it. */
    private Optional<URI> link(Caller caller, UUID animalId, HttpServletRequest request) {
        @Nullable String secret = request.getHeader(SECRET);
        if (secret == null) {
            return Optional.empty();
        }
        if (!links.opens(LinkKind.SUMMARY, caller.organisationId(), animalId, secret)) {
            throw ProblemException.malformed(
                    "The header " + SECRET + " has no secret of an open link to this summary.");
        }
        return Optional.of(address.resolve(request, LinkKind.SUMMARY.path() + secret));
    }
}
