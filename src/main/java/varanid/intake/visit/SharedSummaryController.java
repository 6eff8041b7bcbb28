package varanid.intake.visit;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.security.SecurityRequirements;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.util.Optional;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.PublicAddress;
import varanid.intake.share.LinkKind;
import varanid.intake.share.Links;
import varanid.intake.share.OpenedLink;

/** The page that a vet reads, for whoever has a link to it. */
@RestController
@Tag(name = "Hand-over")
class SharedSummaryController {

    private final SummaryReader summaries;
    private final SummaryForms forms;
    private final Links links;
    private final PublicAddress address;

    SharedSummaryController(SummaryReader summaries, SummaryForms forms, Links links, PublicAddress address) {
        this.summaries = summaries;
        this.forms = forms;
        this.links = links;
        this.address = address;
    }

    @GetMapping("/summary/{secret}")
    @Operation(
            summary = "The summary that a link opens",
            description = "Without a token. A page unless another form is asked for by Accept, or by form: html, pdf,"
                    + " json or fhir. A link that does not open, whatever the reason, is 404.")
    @SecurityRequirements
    public ResponseEntity<byte[]> open(
            @PathVariable String secret,
            @RequestParam(name = "form", required = false) Optional<String> wanted,
            HttpServletRequest request) {
        SummaryForm form = wanted.flatMap(forms::find).orElseGet(() -> forms.chooseForReader(request));
        OpenedLink link = links.open(LinkKind.SUMMARY, secret, forms.code(form), request.getRemoteAddr());
        Summary summary = summaries
                .find(link.organisationId(), link.zone(), link.animalId())
                .orElseThrow(() -> ProblemException.notFound("animal"));
        return forms.reply(form, summary, Optional.of(address.resolve(request, "/summary/" + secret)));
    }
}
