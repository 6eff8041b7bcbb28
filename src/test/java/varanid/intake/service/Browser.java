package varanid.intake.service;

import java.net.CookieManager;
import java.net.CookiePolicy;
import java.net.HttpCookie;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Asks for pages, keeps cookies, and sends forms, as a browser without scripts does. Follows no redirect by itself. */
public final class Browser {

    private static final Pattern PROOF = Pattern.compile("name=\"_csrf\" value=\"([^\"]+)\"");

    private final int port;
    private final CookieManager cookies = new CookieManager(null, CookiePolicy.ACCEPT_ALL);
    private final HttpClient http = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(Duration.ofSeconds(10))
            .cookieHandler(cookies)
            .build();

    public Browser(int port) {
        this.port = port;
    }

    /** One that a person is signed in with, by a link as an administrator makes it. */
    public static Browser signedIn(Organisations.Organisation organisation, Client person) {
        Answer made = organisation.administrator().post("/api/v1/people/" + person.personId() + "/sign-in-links", "{}");
        String address = made.text("/link");
        Browser browser = new Browser(person.port());
        Answer in = browser.submit(
                "/sign-in", "/sign-in/link", Map.of("secret", address.substring(address.lastIndexOf('/') + 1)));
        if (in.status() != 303) {
            throw new AssertionError("not signed in: " + in);
        }
        return browser;
    }

    public Answer get(String path) {
        return send("GET", path, BodyPublishers.noBody(), "Accept", "text/html,application/xhtml+xml,*/*;q=0.8");
    }

    /** Sends a form of the page at {@code from}, with the proof that it is ours. */
    public Answer submit(String from, String path, Map<String, String> fields) {
        Map<String, String> all = new HashMap<>(fields);
        all.put("_csrf", proof(from));
        return post(path, all);
    }

    /** Sends a form just so. */
    public Answer post(String path, Map<String, String> fields) {
        String body = fields.entrySet().stream()
                .map(field -> encode(field.getKey()) + "=" + encode(field.getValue()))
                .collect(Collectors.joining("&"));
        return send(
                "POST",
                path,
                BodyPublishers.ofString(body),
                "Accept",
                "text/html",
                "Content-Type",
                "application/x-www-form-urlencoded");
    }

    /** What proves to the service that a form, or a script, is of its own page at that path. */
    public String proof(String path) {
        return proofIn(get(path));
    }

    public static String proofIn(Answer page) {
        Matcher matcher = PROOF.matcher(page.body());
        if (!matcher.find()) {
            throw new AssertionError("no form in " + page);
        }
        return matcher.group(1);
    }

    /** The values of its cookies, by name. */
    public Map<String, String> cookies() {
        return cookies.getCookieStore().getCookies().stream()
                .collect(Collectors.toMap(HttpCookie::getName, HttpCookie::getValue));
    }

    /** The same cookies in a browser of another service. */
    public Browser at(int otherPort) {
        Browser other = new Browser(otherPort);
        cookies.getCookieStore()
                .getCookies()
                .forEach(cookie ->
                        other.cookies.getCookieStore().add(URI.create("http://127.0.0.1:" + otherPort + "/"), cookie));
        return other;
    }

    public Answer send(String method, String path, BodyPublisher body, String... headers) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                .timeout(Duration.ofSeconds(60))
                .method(method, body);
        if (headers.length > 0) {
            request.headers(headers);
        }
        return Answer.to(request.build(), http);
    }

    private static String encode(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
