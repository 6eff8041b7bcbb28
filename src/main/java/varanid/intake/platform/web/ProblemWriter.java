package varanid.intake.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Writes problems, from controllers and from where there is no controller yet: a page for a browser, else JSON. */
@Component
class ProblemWriter {

    private static final MediaType MEDIA_TYPE = MediaType.parseMediaType(Problem.MEDIA_TYPE);
    private static final MediaType HTML = new MediaType("text", "html", StandardCharsets.UTF_8);
    private static final String NOTHING_ACTIVE =
            "default-src 'none'; style-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    private final JsonMapper json;
    private final ObjectProvider<ErrorPage> page;

    ProblemWriter(JsonMapper json, ObjectProvider<ErrorPage> page) {
        this.json = json;
        this.page = page;
    }

    /** The problem's own page, where it has one and the request asks for pages; or that of all errors; or JSON. */
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
        Body body = body(problem, request);
        return builder.contentType(body.type()).body(body.bytes());
    }

    void write(ProblemException problem, HttpServletRequest request, HttpServletResponse response) throws IOException {
        if (response.isCommitted()) {
            return;
        }
        Body body = body(problem, request);
        response.setStatus(problem.type().status());
        response.setHeader(HttpHeaders.CONTENT_TYPE, body.type().toString());
        problem.headers().forEach(response::setHeader);
        response.getOutputStream().write(body.bytes());
    }

    private Body body(ProblemException problem, HttpServletRequest request) {
        @Nullable ErrorPage html = Requests.wantsPage(request) ? page.getIfAvailable() : null;
        if (html != null) {
            return new Body(HTML, html.write(problem));
        }
        ProblemType type = problem.type();
        return new Body(
                MEDIA_TYPE,
                json.writeValueAsBytes(new Problem(
                        type.uri(),
                        type.title(),
                        type.status(),
                        problem.detail(),
                        Requests.shownPath(request),
                        problem.faults())));
    }

    private record Body(MediaType type, byte[] bytes) {}
}
