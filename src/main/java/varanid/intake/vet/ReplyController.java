package varanid.intake.vet;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.servlet.http.HttpServletRequest;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.assessment.KeptLook;
import varanid.intake.platform.web.Accepted;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.platform.web.SentForm;
import varanid.intake.share.LinkKind;
import varanid.intake.share.Links;
import varanid.intake.share.OpenedLink;

/**
 * Where a vet without an account answers: a form for people, JSON for programs.
 *
 * <p>There is no defence against forged requests (CSRF), and none is needed: nothing that a browser adds by itself, no
 * cookie and no login, gives the right to answer. Only the secret in the address does, and whoever could make somebody
 * else's browser send the form would have to know it, and could then send it alone.
 */
@RestController
class ReplyController {

    private static final MediaType HTML = new MediaType("text", "html", StandardCharsets.UTF_8);

    /** No script, nothing from elsewhere, and the form goes nowhere but back here. */
    private static final String STRICT =
            "default-src 'none'; style-src 'self'; form-action 'self'; base-uri 'none';" + " frame-ancestors 'none'";

    private final Links links;
    private final Replies replies;
    private final ReplyPage page;
    private final Words words;

    ReplyController(Links links, Replies replies, ReplyPage page, Words words) {
        this.links = links;
        this.replies = replies;
        this.page = page;
        this.words = words;
    }

    @GetMapping("/reply/{secret}")
    ResponseEntity<?> form(
            @PathVariable String secret,
            @RequestParam(name = "kept", required = false) @Nullable String kept,
            HttpServletRequest request) {
        OpenedLink link = links.open(LinkKind.REPLY, secret, "reply-form", request.getRemoteAddr());
        Optional<VetAnswer> answer = Optional.ofNullable(kept)
                .map(id -> readId(id)
                        .flatMap(it -> replies.find(link, it))
                        .orElseThrow(() -> ProblemException.notFound("answer of this link")));
        if (wantsJson(request)) {
            return answer.isPresent()
                    ? json(200).body(AnswerView.of(answer.get()))
                    : json(200).body(AskedView.of(link, replies.known(link), words));
        }
        return answer.isPresent()
                ? html(200, page.kept(link, answer.get()))
                : html(200, page.form(link, replies.known(link)));
    }

    @PostMapping(path = "/reply/{secret}", consumes = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<AnswerView> answer(@PathVariable String secret, JsonRequest request, HttpServletRequest sent) {
        OpenedLink link = links.open(LinkKind.REPLY, secret, "reply", sent.getRemoteAddr());
        VetAnswers.Kept kept = replies.keep(link, request);
        ResponseEntity.BodyBuilder reply = json(201).header(HttpHeaders.LOCATION, keptAt(secret, kept.answer()));
        if (kept.before()) {
            reply.header("Idempotency-Replayed", "true");
        }
        return reply.body(AnswerView.of(kept.answer()));
    }

    @PostMapping(path = "/reply/{secret}", consumes = MediaType.APPLICATION_FORM_URLENCODED_VALUE)
    ResponseEntity<?> answer(@PathVariable String secret, HttpServletRequest request) {
        OpenedLink link = links.open(LinkKind.REPLY, secret, "reply", request.getRemoteAddr());
        AnswerForm form = new AnswerForm(SentForm.of(request));
        String key = form.typed(ReplyPage.KEY);
        try {
            VetAnswer kept = replies.keep(link, form, key).answer();
            // The answer is shown at an address of its own, so that reloading it sends nothing again.
            return ResponseEntity.status(303)
                    .header(HttpHeaders.LOCATION, keptAt(secret, kept))
                    .cacheControl(CacheControl.noStore())
                    .build();
        } catch (ProblemException e) {
            if (!e.type().equals(ProblemType.INVALID_REQUEST)) {
                throw e;
            }
            return html(422, page.form(link, replies.known(link), form, form.faults(e.faults())));
        }
    }

    private static String keptAt(String secret, VetAnswer answer) {
        return LinkKind.REPLY.path() + secret + "?kept=" + answer.id();
    }

    private static Optional<UUID> readId(String text) {
        try {
            return Optional.of(UUID.fromString(text));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** Whether JSON is liked better than a page; who does not mind gets the page. */
    private static boolean wantsJson(HttpServletRequest request) {
        return Accepted.find(request).stream()
                .flatMap(List::stream)
                .filter(type -> type.includes(HTML) || type.includes(MediaType.APPLICATION_JSON))
                .findFirst()
                .filter(type -> !type.includes(HTML))
                .isPresent();
    }

    private static ResponseEntity.BodyBuilder json(int status) {
        return ResponseEntity.status(status)
                .contentType(MediaType.APPLICATION_JSON)
                .cacheControl(CacheControl.noStore())
                .varyBy(HttpHeaders.ACCEPT);
    }

    private static ResponseEntity<byte[]> html(int status, String body) {
        return ResponseEntity.status(status)
                .contentType(HTML)
                .cacheControl(CacheControl.noStore())
                .varyBy(HttpHeaders.ACCEPT)
                .header(HttpHeaders.CONTENT_DISPOSITION, "inline")
                .header("Content-Security-Policy", STRICT)
                .header("Referrer-Policy", "no-referrer")
                .header("X-Robots-Tag", "noindex")
                .header("X-Content-Type-Options", "nosniff")
                .body(body.getBytes(StandardCharsets.UTF_8));
    }

    /** What is asked, for programs. */
    @Schema(name = "ReplyAsked")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record AskedView(
            UUID animalId,
            @Nullable String name,
            @Nullable String tag,
            @Nullable String species,

            @Schema(description = "to be sent back as seenUpTo")
            Instant seenUpTo,

            @Schema(description = "whether an answer by this link counts as confirmed")
            boolean confirmed,

            String headline,
            @Nullable String alert,
            @Nullable UUID lastAssessmentId,
            List<SignView> signs,
            List<String> unseen,
            List<String> cautions) {

        static AskedView of(OpenedLink link, Replies.Known known, Words words) {
            return new AskedView(
                    known.animal().id(),
                    known.animal().name().orElse(null),
                    known.animal().tag().orElse(null),
                    known.animal().species().orElse(null),
                    known.at(),
                    link.confirms(),
                    known.holds().headline(),
                    known.holds().alert().orElse(null),
                    known.look().map(look -> look.kept().id()).orElse(null),
                    known.look().stream()
                            .flatMap(look -> look.kept().signs().stream())
                            .filter(KeptLook.Sign::counts)
                            .map(sign -> new SignView(sign.finding(), sign.level(), sign.told()))
                            .toList(),
                    known.look().map(look -> look.kept().unseenMustSee()).orElse(List.of()),
                    words.cautions());
        }
    }

    record SignView(String finding, String level, String label) {}
}
