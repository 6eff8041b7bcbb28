package varanid.intake.account;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.PublicAddress;
import varanid.intake.platform.web.Reply;

@RestController
@RequestMapping("/api/v1/people/{id}/sign-in-links")
@Tag(name = "People", description = "The people of the organisation and what they may do")
class SignInLinkController {

    private static final Duration LONGEST_LIFE = Duration.ofDays(7);

    private final SignInLinks links;
    private final Team team;
    private final Once once;
    private final PublicAddress address;
    private final Clock clock;

    SignInLinkController(SignInLinks links, Team team, Once once, PublicAddress address, Clock clock) {
        this.links = links;
        this.team = team;
        this.once = once;
        this.address = address;
        this.clock = clock;
    }

    @PostMapping
    @Operation(
            summary = "Make a link that signs the person in",
            description = "Needs the role administrator. Whoever opens it first is signed in as the person, and"
                    + " can set a password. It is in this reply and never shown again. The body may"
                    + " be left out.")
    @ApiResponse(
            responseCode = "201",
            description = "Made",
            content = @Content(schema = @Schema(implementation = SignInLinkView.class)))
    public ResponseEntity<byte[]> make(
            Caller caller,
            @PathVariable UUID id,
            @RequestBody(required = false, content = @Content(schema = @Schema(implementation = NewSignInLink.class)))
                    JsonRequest request,
            HttpServletRequest sent) {
        team.getActive(caller, id);
        Instant now = clock.instant();
        NewSignInLink wanted = request.read(fields -> NewSignInLink.reader(fields, now));
        return once.perform(caller, request, () -> {
            SignInLinks.Made made = links.make(caller.organisationId(), id, caller.personId(), wanted.expiresAt());
            // It has no address of its own, only the one that it is.
            return new Reply(
                    201,
                    Map.of(),
                    new SignInLinkView(made.id(), id, address.resolve(sent, made.path()), made.expiresAt()));
        });
    }

    @Schema(name = "NewSignInLink")
    record NewSignInLink(
            @Schema(description = "at most 7 days ahead; 24 hours if left out")
            Instant expiresAt) {

        static Supplier<NewSignInLink> reader(JsonFields fields, Instant now) {
            Given<Instant> expires = fields.field("expiresAt")
                    .instant()
                    .check(
                            at -> at.isAfter(now) && !at.isAfter(now.plus(LONGEST_LIFE)),
                            "is out of range",
                            "later than now and at most " + LONGEST_LIFE.toDays() + " days ahead");
            return () -> new NewSignInLink(expires.orElse(now.plus(SignInLinks.USUAL_LIFE)));
        }
    }

    @Schema(name = "MadeSignInLink")
    record SignInLinkView(
            UUID id,
            UUID personId,

            @Schema(description = "the address, with its secret, shown here and never again")
            URI link,

            Instant expiresAt) {}
}
