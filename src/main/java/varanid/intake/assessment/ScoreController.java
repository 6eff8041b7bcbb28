package varanid.intake.assessment;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.checklist.Catalogue;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonFields;
import varanid.intake.platform.web.JsonRequest;

@RestController
@RequestMapping("/api/v1/scores")
@Tag(name = "Scores", description = "What a look comes to, without keeping it")
class ScoreController {

    private final Catalogue catalogue;

    ScoreController(Catalogue catalogue) {
        this.catalogue = catalogue;
    }

    @PostMapping
    @Operation(
            summary = "Score a look without storing it",
            description = "Nothing is stored, so the same request always gets the same reply and an Idempotency-Key"
                    + " changes nothing.")
    @ApiResponse(
            responseCode = "200",
            description = "How soon a vet, how apart, and why",
            content = @Content(schema = @Schema(implementation = ScoreView.class)))
    public ResponseEntity<ScoreView> score(
            Caller caller,
            @RequestBody(content = @Content(schema = @Schema(implementation = LookBody.class))) JsonRequest request) {
        LookRequest look = request.read(this::reader);
        return ResponseEntity.ok(ScoreView.of(look.edition().scorer().score(look.look(Set.of())), look.edition()));
    }

    private Supplier<LookRequest> reader(JsonFields fields) {
        LookRequest look = LookRequest.read(fields, catalogue, Map.of());
        return () -> look;
    }

    /** Only described here: {@link LookRequest} reads it. */
    @Schema(name = "Look")
    record LookBody(
            @Schema(example = "varanid-intake", requiredMode = Schema.RequiredMode.REQUIRED)
            String checklist,

            @Schema(description = "the newest published one where none is named; a draft where none is published")
            @Nullable
            Integer version,

            @Schema(allowableValues = {"hatchling", "juvenile", "subadult", "adult", "unknown"}) @Nullable
            String lifeStage,

            @Schema(description = "CITES source code", example = "W") @Nullable
            String origin,

            @Schema(example = "[\"cold\"]") @Nullable List<String> conditions,

            @Schema(
                    description = "finding id to a level code, a number, {value, overDays}, {low, high},"
                            + " not-observed or not-yet-due",
                    example = "{\"laboured-breathing\":\"mild\",\"days-food-refused\":9,\"ticks\":\"not-observed\"}")
            @Nullable
            Map<String, Object> answers) {}
}
