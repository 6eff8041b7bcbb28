package varanid.intake.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Writes problems, from controllers and from where there is no controller yet. */
@Component
class ProblemWriter {

    private static final MediaType MEDIA_TYPE = MediaType.parseMediaType(Problem.MEDIA_TYPE);

    private final JsonMapper json;

    ProblemWriter(JsonMapper json) {
        this.json = json;
    }

    ResponseEntity<byte[]> entity(ProblemException problem, String instance) {
        ResponseEntity.BodyBuilder builder =
                ResponseEntity.status(problem.type().status()).contentType(MEDIA_TYPE);
        problem.headers().forEach(builder::header);
        return builder.body(json.writeValueAsBytes(body(problem, instance)));
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
