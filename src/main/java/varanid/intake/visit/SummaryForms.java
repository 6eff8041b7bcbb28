package varanid.intake.visit;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.http.CacheControl;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.InvalidMediaTypeException;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;
import org.springframework.util.InvalidMimeTypeException;
import org.springframework.util.MimeTypeUtils;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;

/** The forms there are, and which one a request asks for. */
@Component
class SummaryForms {

    private static final String NOTHING_ACTIVE = "default-src 'none'; style-src 'self'; img-src 'self' data:;"
            + " base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

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
        List<String> headers = Collections.list(request.getHeaders(HttpHeaders.ACCEPT));
        if (headers.isEmpty()) {
            return forms.get(0);
        }
        List<MediaType> wanted;
        try {
            wanted = MediaType.parseMediaTypes(headers);
            MimeTypeUtils.sortBySpecificity(wanted);
        } catch (InvalidMediaTypeException | InvalidMimeTypeException e) {
            throw notAcceptable();
        }
        wanted.sort((one, other) -> Double.compare(other.getQualityValue(), one.getQualityValue()));
        return wanted.stream()
                .filter(type -> type.getQualityValue() > 0)
                .flatMap(type -> forms.stream().filter(form -> type.includes(form.type())))
                .findFirst()
                .orElseThrow(this::notAcceptable);
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
        return ResponseEntity.ok()
                .contentType(form.type())
                .cacheControl(CacheControl.noStore())
                .varyBy(HttpHeaders.ACCEPT)
                .header(HttpHeaders.CONTENT_DISPOSITION, disposition(form, summary))
                .header("Content-Security-Policy", NOTHING_ACTIVE)
                .body(form.write(summary, link));
    }

    /** Shown where it is opened; the name is what it is saved under. */
    private String disposition(SummaryForm form, Summary summary) {
        String ending = form.type().getSubtype().equals("fhir+json")
                ? "fhir.json"
                : form.type().getSubtype();
        return ContentDisposition.inline()
                .filename(
                        "summary-" + plain(summary.animal().title()) + summary.asOf() + "." + ending,
                        StandardCharsets.UTF_8)
                .build()
                .toString();
    }

    /** Letters and digits alone: a file name is the last place to be hostile in. */
    private static String plain(String title) {
        String plain = title.replaceAll("[^\\p{L}\\p{N}]+", "-").replaceAll("^-|-$", "");
        return plain.isEmpty()
                ? ""
                : plain.substring(0, plain.offsetByCodePoints(0, Math.min(40, plain.codePointCount(0, plain.length()))))
                        + "-";
    }
}
