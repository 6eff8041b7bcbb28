package varanid.intake.weight;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.animal.Animals;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.Reply;
import varanid.intake.platform.web.Role;

@RestController
@RequestMapping("/api/v1/animals/{animalId}/weighings")
@Tag(name = "Weighings", description = "Weighings of an animal; a correction supersedes, never edits")
class WeighingController {

    private final Weighings weighings;
    private final Animals animals;
    private final Once once;
    private final Clock clock;

    WeighingController(Weighings weighings, Animals animals, Once once, Clock clock) {
        this.weighings = weighings;
        this.animals = animals;
        this.once = once;
        this.clock = clock;
    }

    @PostMapping
    @Operation(
            summary = "Keep a weighing of an animal",
            description =
                    "Needs the role keeper. Kept as it was given and in grams. What looks odd comes back in remarks"
                            + " and refuses nothing.")
    @ApiResponse(
            responseCode = "201",
            description = "Kept",
            content = @Content(schema = @Schema(implementation = WeighingView.class)))
    public ResponseEntity<byte[]> keep(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestBody(content = @Content(schema = @Schema(implementation = WeighingBody.class)))
                    JsonRequest request) {
        caller.require(Role.KEEPER);
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
        Present present = Present.at(clock, caller.zone());
        NewWeighing given = request.read(fields -> NewWeighing.read(fields, present));
        return once.perform(caller, request, () -> {
            WeighingView kept = weighings.keep(caller, animalId, given);
            return Reply.created(path(animalId, kept.id()), null, kept);
        });
    }

    @GetMapping
    @Operation(
            summary = "The weighings of an animal, in the order they were recorded",
            description = "The weights of its registration are shown with the animal; the trend counts them too.")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<WeighingView>> list(Caller caller, @PathVariable UUID animalId, Query query) {
        Page page = query.page();
        return page.reply(weighings.list(caller, animalId, page), WeighingView::id, view -> view);
    }

    @GetMapping("/{id}")
    @Operation(summary = "One weighing")
    @Transactional(readOnly = true)
    public ResponseEntity<WeighingView> weighing(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID id, Query query) {
        query.orThrow();
        return ResponseEntity.ok(
                weighings.find(caller, animalId, id).orElseThrow(() -> ProblemException.notFound("weighing")));
    }

    static String path(UUID animalId, UUID id) {
        return "/api/v1/animals/" + animalId + "/weighings/" + id;
    }

    /** Only described here: {@link NewWeighing} reads it. */
    @Schema(name = "NewWeighing")
    record WeighingBody(
            @Schema(requiredMode = Schema.RequiredMode.REQUIRED, example = "36")
            BigDecimal value,

            @Schema(
                    description = "UCUM code",
                    allowableValues = {"g", "kg", "[oz_av]", "[lb_av]"},
                    requiredMode = Schema.RequiredMode.REQUIRED)
            String unit,

            @Schema(description = "the scale's smallest step, in the same unit", example = "1") @Nullable
            BigDecimal resolution,

            @Schema(
                    description = "which scale; without it the weighing is compared with no other",
                    maxLength = 60,
                    example = "kitchen")
            @Nullable
            String scale,

            @Schema(description = "now if left out; not in the future") @Nullable
            Instant occurredAt,

            @Schema(description = "stand by a value that no monitor weighs") @Nullable
            Boolean confirmed,

            @Schema(description = "when it had last eaten, not after occurredAt; left out where nobody knows") @Nullable
            Instant lastMealAt,

            @Schema(description = "wet from water; dry if left out") @Nullable
            Boolean wet,

            @Schema(maxLength = 4000) @Nullable String note,

            @Schema(description = "the weighing that this one corrects") @Nullable
            UUID supersedes,

            @Schema(description = "the place, from 0, of the weight of the registration that this one corrects")
            @Nullable
            Integer supersedesFirst) {}
}
