package varanid.intake.reminder;

import jakarta.servlet.http.HttpServletRequest;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Duration;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.http.CacheControl;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.platform.web.Allowance;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;

/** What a calendar program fetches: it sends no token, the address is the secret. */
@RestController
class FeedController {

    static final String PATH = "/calendar/";

    private static final String ENDING = ".ics";
    static final MediaType CALENDAR = new MediaType("text", "calendar", StandardCharsets.UTF_8);
    static final ContentDisposition FILE =
            ContentDisposition.inline().filename("reminders.ics").build();

    private final Feeds feeds;
    private final Allowance<UUID> ofLink;
    private final Allowance<String> ofWrongSecrets;

    FeedController(Feeds feeds, Clock clock) {
        this.feeds = feeds;
        // Programs fetch every few minutes at most; several of one person may share an address.
        this.ofLink = new Allowance<>(clock, 20, Duration.ofMinutes(1));
        this.ofWrongSecrets = new Allowance<>(clock, 20, Duration.ofSeconds(10));
    }

    @GetMapping(PATH + "{secret}")
    public ResponseEntity<byte[]> feed(@PathVariable String secret, HttpServletRequest request) {
        String text = secret.endsWith(ENDING) ? secret.substring(0, secret.length() - ENDING.length()) : secret;
        Optional<Feeds.OpenLink> link = feeds.find(text);
        if (link.isEmpty()) {
            // Counted after looking: somebody else's wrong ones, sent through the same proxy, shut nobody out.
            refuseTooMany(ofWrongSecrets.take(request.getRemoteAddr()));
            throw refusal(ProblemType.NOT_FOUND, "There is no such calendar.", Map.of());
        }
        refuseTooMany(ofLink.take(link.get().row().id()));
        byte[] file = feeds.write(link.get());
        return ResponseEntity.ok()
                .contentType(CALENDAR)
                .cacheControl(CacheControl.noCache().cachePrivate())
                .eTag(tag(file))
                .header(HttpHeaders.CONTENT_DISPOSITION, FILE.toString())
                .body(file);
    }

    private static void refuseTooMany(Optional<Duration> wait) {
        wait.ifPresent(time -> {
            throw refusal(
                    ProblemType.TOO_MANY_REQUESTS,
                    "Ask again later; a calendar need not be fetched more than once in some minutes.",
                    Map.of(
                            HttpHeaders.RETRY_AFTER,
                            Long.toString(time.plusMillis(999).toSeconds())));
        });
    }

    /** With a disposition: the framework would give one by how the address ends, and refusals are to look the same. */
    private static ProblemException refusal(ProblemType type, String detail, Map<String, String> headers) {
        Map<String, String> all = new HashMap<>(headers);
        all.put(HttpHeaders.CONTENT_DISPOSITION, "inline");
        return new ProblemException(type, detail, List.of(), all);
    }

    private static String tag(byte[] file) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(file);
            return "\"" + Base64.getUrlEncoder().withoutPadding().encodeToString(digest) + "\"";
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
