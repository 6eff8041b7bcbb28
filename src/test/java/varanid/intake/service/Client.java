package varanid.intake.service;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.UUID;

/**
 * A person with a token, asking the service.
 *
 * @param port where it listens
 * @param personId who asks
 * @param token with what; empty: with none
 */
public record Client(int port, UUID personId, String token) {

    private static final HttpClient HTTP = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(Duration.ofSeconds(10))
            .build();

    public Answer get(String path, String... headers) {
        return send("GET", path, BodyPublishers.noBody(), headers);
    }

    public Answer post(String path, String json, String... headers) {
        return sendJson("POST", path, json, headers);
    }

    public Answer put(String path, String json, String... headers) {
        return sendJson("PUT", path, json, headers);
    }

    public Answer sendJson(String method, String path, String json, String... headers) {
        String[] all = new String[headers.length + 2];
        System.arraycopy(headers, 0, all, 0, headers.length);
        all[headers.length] = "Content-Type";
        all[headers.length + 1] = "application/json";
        return send(method, path, BodyPublishers.ofString(json, StandardCharsets.UTF_8), all);
    }

    public Answer send(String method, String path, BodyPublisher body, String... headers) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                .timeout(Duration.ofSeconds(60))
                .method(method, body);
        if (!token.isEmpty()) {
            request.header("Authorization", "Bearer " + token);
        }
        if (headers.length > 0) {
            request.headers(headers);
        }
        return Answer.to(request.build(), HTTP);
    }
}
