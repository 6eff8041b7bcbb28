package varanid.intake.share;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.JsonFields;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.Reply;

/** Gives links out, shows who opened them, and revokes them. */
@RestController
@RequestMapping("/api/v1/animals/{animalId}/links")
@Tag(name = "Hand-over")
class LinkController {

    private static final int USUAL_DAYS = 7;
    private static final int MOST_DAYS = 30;

    private final ShareLinkRows rows;
    private final LinkUses uses;
    private final GiveLinks give;
    private final JdbcClient jdbc;
    private final Once once;
    private final Clock clock;

    LinkController(ShareLinkRows rows, LinkUses uses, GiveLinks give, JdbcClient jdbc, Once once, Clock clock) {
        this.rows = rows;
        this.uses = uses;
        this.give = give;
        this.jdbc = jdbc;
        this.once = once;
        this.clock = clock;
    }

    @PostMapping
    @Operation(
            summary = "Give out a link to the animal's summary, or to a form for a vet's answer",
            description =
                    "Needs the role keeper or clinician. The address is in this reply and never shown again. Whoever"
                            + " knows it can open it until it expires or is revoked. Answers through a reply link count as a vet's"
                            + " own only where a clinician's account gave it out; others wait until a clinician confirms them.")
    @ApiResponse(
            responseCode = "201",
            description = "Given out",
            content = @Content(schema = @Schema(implementation = GivenLink.class)))
    public ResponseEntity<byte[]> give(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestBody(content = @Content(schema = @Schema(implementation = NewLink.class))) JsonRequest request,
            HttpServletRequest servlet) {
        return give.give(caller, animalId, request, servlet);
    }

    @GetMapping
    @Operation(summary = "The links that were given out for the animal, without their addresses")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<LinkView>> list(Caller caller, @PathVariable UUID animalId, Query query) {
        Page page = query.page();
        give.requireAnimal(caller, animalId);
        List<ShareLinkRow> found = rows.list(caller.organisationId(), animalId, page.after(), page.fetch());
        return page.reply(views(found), LinkView::id, each -> each);
    }

    @GetMapping("/{id}")
    @Operation(summary = "One link, without its address")
    @Transactional(readOnly = true)
    public ResponseEntity<LinkView> link(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID id, Query query) {
        query.orThrow();
        return ResponseEntity.ok(view(get(caller, animalId, id)));
    }

    @GetMapping("/{id}/openings")
    @Operation(
            summary = "When a link was opened, and what of it",
            description = "Two openings with the same place came from one network address; which one is not kept. Some"
                    + " programs open every link that passes through them, to show a preview: that counts too.")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<OpeningView>> openings(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID id, Query query) {
        Page page = query.page();
        get(caller, animalId, id);
        List<OpeningView> found = jdbc.sql("SELECT id, opened_at, what, place FROM share_link_opening"
                        + " WHERE organisation_id = ? AND link_id = ? AND id > ? ORDER BY id LIMIT ?")
                .params(caller.organisationId(), id, page.after(), page.fetch().max())
                .query(LinkController::opening)
                .list();
        return page.reply(found, OpeningView::id, each -> each);
    }

    @PostMapping("/{id}/revocation")
    @Operation(
            summary = "Revoke a link",
            description = "At once and for good: its address opens nothing any more. The body may be left out.")
    @ApiResponse(
            responseCode = "200",
            description = "Revoked",
            content = @Content(schema = @Schema(implementation = LinkView.class)))
    public ResponseEntity<byte[]> revoke(
            Caller caller,
            @PathVariable UUID animalId,
            @PathVariable UUID id,
            @RequestBody(required = false, content = @Content(schema = @Schema(implementation = NoContent.class)))
                    JsonRequest request) {
        caller.requireKeeperOrClinician();
        request.read(fields -> NoContent::new);
        return once.perform(caller, request, () -> {
            give.revoke(caller, animalId, id);
            return Reply.ok(view(get(caller, animalId, id)));
        });
    }

    private ShareLinkRow get(Caller caller, UUID animalId, UUID id) {
        return rows.find(caller.organisationId(), animalId, id).orElseThrow(() -> ProblemException.notFound("link"));
    }

    private LinkView view(ShareLinkRow row) {
        return views(List.of(row)).get(0);
    }

    private List<LinkView> views(List<ShareLinkRow> links) {
        Map<UUID, LinkUse> found = uses.of(links);
        Instant now = clock.instant();
        return links.stream()
                .map(link -> view(link, Objects.requireNonNull(found.get(link.id()), "the link's use"), now))
                .toList();
    }

    private static LinkView view(ShareLinkRow row, LinkUse use, Instant now) {
        return new LinkView(
                row.id(),
                row.animalId,
                row.kind,
                row.recipient,
                row.note,
                row.hint,
                row.confirms,
                use.state(row.expiresAt, now),
                row.expiresAt,
                use.revokedAt(),
                use.openings(),
                use.lastOpenedAt(),
                row.recordedBy,
                row.recordedAt);
    }

    private static OpeningView opening(ResultSet set, int n) throws SQLException {
        return new OpeningView(
                set.getObject(1, UUID.class), set.getTimestamp(2).toInstant(), set.getString(3), set.getString(4));
    }

    @Schema(name = "NewLink")
    record NewLink(
            @Schema(
                    type = "string",
                    allowableValues = {"summary", "reply"},
                    requiredMode = Schema.RequiredMode.REQUIRED)
            LinkKind kind,

            @Schema(description = "who it is for", maxLength = 200, requiredMode = Schema.RequiredMode.REQUIRED)
            String recipient,

            @Schema(description = "how many days it opens; 7 if left out", minimum = "1", maximum = "30")
            int validDays,

            @Schema(maxLength = 1000) @Nullable String note) {

        static Supplier<NewLink> reader(JsonFields fields) {
            Given<LinkKind> kind = fields.choice("kind", List.of(LinkKind.values()), LinkKind::code)
                    .required();
            Given<String> recipient = fields.text("recipient", 200).required();
            Given<Integer> days = fields.integer("validDays", 1, MOST_DAYS);
            Given<String> note = fields.prose("note", 1000);
            return () -> new NewLink(kind.get(), recipient.get(), days.orElse(USUAL_DAYS), note.orNull());
        }
    }

    @Schema(name = "GivenLink")
    record GivenLink(
            UUID id,
            UUID animalId,
            String kind,
            String recipient,

            @Schema(description = "whether what is answered through it counts as a vet's own without being confirmed")
            boolean confirms,

            @Schema(format = "uri", description = "a secret, shown here and never again")
            String address,

            Instant expiresAt) {}

    @Schema(name = "Link")
    record LinkView(
            UUID id,
            UUID animalId,
            @Schema(allowableValues = {"summary", "reply"}) String kind,
            String recipient,
            @Nullable String note,

            @Schema(description = "enough of its address to know it again")
            String hint,

            boolean confirms,

            @Schema(allowableValues = {"open", "expired", "revoked", "issuer-left"})
            String state,

            Instant expiresAt,
            @Nullable Instant revokedAt,
            int openings,
            @Nullable Instant lastOpenedAt,
            UUID recordedBy,
            Instant recordedAt) {}

    @Schema(name = "LinkOpening")
    record OpeningView(
            UUID id,
            Instant openedAt,

            @Schema(allowableValues = {"html", "pdf", "json", "fhir", "reply-form", "reply"})
            String what,

            @Schema(description = "the same for openings of this link from one network address")
            String place) {}

    @Schema(name = "NoContent", description = "An empty object")
    record NoContent() {}
}
