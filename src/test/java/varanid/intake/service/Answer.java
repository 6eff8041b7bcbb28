package varanid.intake.service;

import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.stream.StreamSupport;
import org.springframework.http.HttpHeaders;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the service answered. */
public record Answer(int status, HttpHeaders headers, String body) {

    private static final JsonMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .build();

    /** What a request is answered. */
    static Answer to(HttpRequest request, HttpClient http) {
        try {
            HttpResponse<String> response = http.send(request, BodyHandlers.ofString(StandardCharsets.UTF_8));
            HttpHeaders received = new HttpHeaders();
            response.headers().map().forEach(received::addAll);
            return new Answer(response.statusCode(), received, response.body());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    public JsonNode json() {
        return JSON.readTree(body);
    }

    public String text(String pointer) {
        return json().at(pointer).asString();
    }

    public String id() {
        return text("/id");
    }

    public Optional<String> header(String name) {
        return Optional.ofNullable(headers.getFirst(name));
    }

    public String etag() {
        return header("ETag").orElseThrow();
    }

    public boolean isProblem(String type) {
        return header("Content-Type").orElse("").equals("application/problem+json")
                && text("/type").equals("/problems/" + type)
                && json().at("/status").intValue() == status;
    }

    /** Where the faults are: pointers, and names of query parameters. */
    public List<String> faults() {
        return StreamSupport.stream(json().at("/faults").spliterator(), false)
                .map(fault -> fault.has("pointer")
                        ? fault.get("pointer").stringValue()
                        : fault.get("parameter").stringValue())
                .toList();
    }

    /** The path of the link of that relation, if there is one. */
    public Optional<String> link(String relation) {
        return headers.getOrEmpty("Link").stream()
                .filter(link -> link.endsWith("; rel=\"" + relation + "\""))
                .map(link -> link.substring(1, link.indexOf('>')))
                .findFirst();
    }
}
