package varanid.intake.account;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
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
import varanid.intake.platform.web.Role;

@RestController
@RequestMapping("/api/v1/tokens")
@Tag(name = "Tokens", description = "What requests are sent with. A person sees their own, an administrator all")
class TokenController {

    private static final Duration LONGEST_LIFE = Duration.ofDays(366);

    private final Tokens tokens;
    private final People people;
    private final Accounts accounts;
    private final Once once;
    private final Clock clock;

    TokenController(Tokens tokens, People people, Accounts accounts, Once once, Clock clock) {
        this.tokens = tokens;
        this.people = people;
        this.accounts = accounts;
        this.once = once;
        this.clock = clock;
    }

    @PostMapping
    @Operation(
            summary = "Make a token",
            description = "For oneself; an administrator also for others. The token is in this reply and never shown"
                    + " again.")
    @ApiResponse(
            responseCode = "201",
            description = "Made",
            content = @Content(schema = @Schema(implementation = NewTokenView.class)))
    public ResponseEntity<byte[]> make(
            Caller caller,
            @RequestBody(content = @Content(schema = @Schema(implementation = NewToken.class))) JsonRequest request) {
        Instant now = clock.instant();
        NewToken wanted = request.read(fields -> NewToken.reader(fields, caller, people, now));
        return once.perform(caller, request, () -> {
            TokenText text = TokenText.random(caller.organisationId());
            TokenRow row = accounts.addToken(
                    caller.organisationId(),
                    wanted.personId(),
                    caller.personId(),
                    wanted.label(),
                    text,
                    wanted.expiresAt(),
                    now);
            return Reply.created("/api/v1/tokens/" + row.id(), null, NewTokenView.of(row, text));
        });
    }

    @GetMapping
    @Operation(summary = "Tokens, without their secrets")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<TokenView>> list(Caller caller, Query query) {
        Page page = query.page();
        List<TokenRow> rows = caller.may(Role.ADMINISTRATOR)
                ? tokens.list(caller.organisationId(), page.after(), page.fetch())
                : tokens.listOfPerson(caller.organisationId(), caller.personId(), page.after(), page.fetch());
        return page.reply(rows, TokenRow::id, TokenView::of);
    }

    @GetMapping("/{id}")
    @Operation(summary = "One token, without its secret")
    @Transactional(readOnly = true)
    public ResponseEntity<TokenView> token(Caller caller, @PathVariable UUID id, Query query) {
        query.orThrow();
        return ResponseEntity.ok(TokenView.of(get(caller, id)));
    }

    @PostMapping("/{id}/revocation")
    @Operation(summary = "Revoke a token", description = "At once and for good. The body may be left out.")
    @ApiResponse(
            responseCode = "200",
            description = "Revoked",
            content = @Content(schema = @Schema(implementation = TokenView.class)))
    public ResponseEntity<byte[]> revoke(
            Caller caller,
            @PathVariable UUID id,
            @RequestBody(required = false, content = @Content(schema = @Schema(implementation = Nothing.class)))
                    JsonRequest request) {
        request.read(fields -> Nothing::new);
        return once.perform(caller, request, () -> {
            TokenRow row = get(caller, id);
            row.revoke(clock.instant());
            return Reply.ok(TokenView.of(tokens.save(row)));
        });
    }

    private TokenRow get(Caller caller, UUID id) {
        return tokens.findById(caller.key(id))
                .filter(row -> caller.may(Role.ADMINISTRATOR) || row.personId().equals(caller.personId()))
                .orElseThrow(() -> ProblemException.notFound("token"));
    }

    @Schema(name = "NewToken")
    record NewToken(
            @Schema(description = "whose it is to be; the caller's own if left out")
            UUID personId,

            @Schema(description = "what it is for", maxLength = 100, requiredMode = Schema.RequiredMode.REQUIRED)
            String label,

            @Schema(description = "at most 366 days ahead; 90 days if left out")
            Instant expiresAt) {

        static Supplier<NewToken> reader(JsonFields fields, Caller caller, People people, Instant now) {
            Given<UUID> person = fields.id("personId");
            if (caller.may(Role.ADMINISTRATOR)) {
                person.check(
                        id -> people.findById(caller.key(id))
                                .filter(PersonRow::active)
                                .isPresent(),
                        "is not an active person of the organisation",
                        "the id of one");
            } else {
                person.check(
                        caller.personId()::equals,
                        "is somebody else",
                        "your own id, or leave it out; an administrator" + " can make tokens for others");
            }
            Given<String> label = fields.text("label", 100).required();
            Given<Instant> expires = fields.field("expiresAt")
                    .instant()
                    .check(
                            at -> at.isAfter(now) && !at.isAfter(now.plus(LONGEST_LIFE)),
                            "is out of range",
                            "later than now and at most " + LONGEST_LIFE.toDays() + " days ahead");
            return () -> new NewToken(
                    person.orElse(caller.personId()), label.get(), expires.orElse(now.plus(Accounts.USUAL_TOKEN_LIFE)));
        }
    }

    @Schema(name = "Nothing", description = "An empty object")
    record Nothing() {}

    @Schema(name = "Token")
    record TokenView(
            UUID id,
            UUID personId,
            UUID issuedBy,
            String label,

            @Schema(description = "enough of it to know it again")
            String hint,

            @Schema(description = "none: it does not expire") @Nullable
            Instant expiresAt,

            @Nullable Instant revokedAt,
            Instant recordedAt) {

        static TokenView of(TokenRow row) {
            return new TokenView(
                    row.id(),
                    row.personId(),
                    row.issuedBy(),
                    row.label(),
                    row.hint(),
                    row.expiresAt(),
                    row.revokedAt(),
                    row.recordedAt());
        }
    }

    @Schema(name = "MadeToken")
    record NewTokenView(
            UUID id,
            UUID personId,
            UUID issuedBy,
            String label,

            @Schema(description = "the secret, shown here and never again")
            String token,

            @Nullable Instant expiresAt,
            Instant recordedAt) {

        static NewTokenView of(TokenRow row, TokenText text) {
            return new NewTokenView(
                    row.id(),
                    row.personId(),
                    row.issuedBy(),
                    row.label(),
                    text.text(),
                    row.expiresAt(),
                    row.recordedAt());
        }
    }
}
