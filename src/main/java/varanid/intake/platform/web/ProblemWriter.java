package varanid.intake.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Writes problems, from controllers and from where there is no controller yet. */
@Component
class ProblemWriter {

    private static final MediaType MEDIA_TYPE = MediaType.parseMediaType(Problem.MEDIA_TYPE);
    private static final MediaType HTML = new MediaType("text", "html", StandardCharsets.UTF_8);
    private static final String NOTHING_ACTIVE =
            "default-src 'none'; style-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    private final JsonMapper json;

    ProblemWriter(JsonMapper json) {
        this.json = json;
    }

    /** A page where the problem has one and the request asks for pages; else JSON. */
    ResponseEntity<byte[]> entity(ProblemException problem, HttpServletRequest request) {
        ResponseEntity.BodyBuilder builder =
                ResponseEntity.status(problem.type().status());
        problem.headers().forEach(builder::header);
        if (problem.page().isPresent()) {
            builder.varyBy(HttpHeaders.ACCEPT);
            if (Requests.asksForPages(request)) {
                return builder.contentType(HTML)
                        .header("Content-Security-Policy", NOTHING_ACTIVE)
                        .body(problem.page().get().getBytes(StandardCharsets.UTF_8));
            }
        }
        return builder.contentType(MEDIA_TYPE).body(json.writeValueAsBytes(body(problem, Requests.shownPath(request))));
    }

    void write(ProblemException problem, HttpServletRequest request, HttpServletResponse response) throws IOException {
        if (response.isCommitted()) {
            return;
        }
        response.setStatus(problem.type().status());
        response.setHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE);
        problem.headers().forEach(response::setHeader);
        response.getOutputStream().write(json.writeValueAsBytes(body(problem, Requests.shownPath(request))));
    }

    private static Problem body(ProblemException problem, String instance) {
        ProblemType type = problem.type();
        return new Problem(type.uri(), type.title(), type.status(), problem.detail(), instance, problem.faults());
    }
}
