package varanid.intake.visit;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;
import varanid.intake.platform.web.Documents;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;

/** The forms there are, and which one a request asks for. */
@Component
class SummaryForms {

    private final List<SummaryForm> forms;

    /** @param forms in order of preference */
    SummaryForms(List<SummaryForm> forms) {
        this.forms = List.copyOf(forms);
    }

    /**
     * The form that the request likes best; the first of all where it does not mind.
     *
     * @throws ProblemException 406 where it accepts none of them
     */
    SummaryForm choose(HttpServletRequest request) {
        MediaType chosen = Documents.choose(
                        request, forms.stream().map(SummaryForm::type).toList())
                .orElseThrow(this::notAcceptable);
        return forms.stream()
                .filter(form -> form.type().equals(chosen))
                .findFirst()
                .orElseThrow();
    }

    /** As {@link #choose}, but a reader that does not mind gets the page. */
    SummaryForm chooseForReader(HttpServletRequest request) {
        return Collections.list(request.getHeaders(HttpHeaders.ACCEPT)).stream()
                        .allMatch(accept -> accept.strip().equals("*/*"))
                ? find("html").orElseThrow()
                : choose(request);
    }

    /** The form of that name: html, pdf, json or fhir. */
    Optional<SummaryForm> find(String code) {
        return forms.stream().filter(form -> code(form).equals(code)).findFirst();
    }

    String code(SummaryForm form) {
        String subtype = form.type().getSubtype();
        return subtype.equals("fhir+json") ? "fhir" : subtype;
    }

    private ProblemException notAcceptable() {
        return new ProblemException(
                ProblemType.NOT_ACCEPTABLE,
                "A summary is there as "
                        + forms.stream().map(form -> form.type().toString()).collect(Collectors.joining(", ")) + ".",
                List.of());
    }

    ResponseEntity<byte[]> reply(SummaryForm form, Summary summary, Optional<URI> link) {
        return Documents.reply(form.type(), fileName(form, summary)).body(form.write(summary, link));
    }

    private String fileName(SummaryForm form, Summary summary) {
        String ending = form.type().getSubtype().equals("fhir+json")
                ? "fhir.json"
                : form.type().getSubtype();
        return "summary-" + Documents.inFileName(summary.animal().title()) + summary.asOf() + "." + ending;
    }
}
