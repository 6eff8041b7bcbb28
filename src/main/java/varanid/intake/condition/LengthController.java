package varanid.intake.condition;

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
import varanid.intake.animal.LengthReading;
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
@RequestMapping("/api/v1/animals/{animalId}/lengths")
@Tag(name = "Lengths", description = "Lengths of an animal; a correction supersedes, never edits")
class LengthController {

    private final Lengths lengths;
    private final Animals animals;
    private final Once once;
    private final Clock clock;

    LengthController(Lengths lengths, Animals animals, Once once, Clock clock) {
        this.lengths = lengths;
        this.animals = animals;
        this.once = once;
        this.clock = clock;
    }

    @PostMapping
    @Operation(
            summary = "Keep a length of an animal",
            description = "Needs the role keeper. What looks odd comes back in remarks and refuses nothing, such as a"
                    + " total that snout to vent and tail of the same day do not make within 3 %.")
    @ApiResponse(
            responseCode = "201",
            description = "Kept",
            content = @Content(schema = @Schema(implementation = LengthView.class)))
    public ResponseEntity<byte[]> keep(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestBody(content = @Content(schema = @Schema(implementation = LengthBody.class))) JsonRequest request) {
        caller.require(Role.KEEPER);
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
        Present present = Present.at(clock, caller.zone());
        NewLength given = request.read(fields -> NewLength.read(fields, present));
        return once.perform(caller, request, () -> {
            LengthView kept = lengths.keep(caller, animalId, given);
            return Reply.created("/api/v1/animals/" + animalId + "/lengths/" + kept.id(), null, kept);
        });
    }

    @GetMapping
    @Operation(
            summary = "The lengths of an animal, in the order they were recorded",
            description = "Those of its registration are shown with the animal.")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<LengthView>> list(Caller caller, @PathVariable UUID animalId, Query query) {
        Page page = query.page();
        return page.reply(lengths.list(caller, animalId, page), LengthView::id, view -> view);
    }

    @GetMapping("/{id}")
    @Operation(summary = "One length")
    @Transactional(readOnly = true)
    public ResponseEntity<LengthView> length(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID id, Query query) {
        query.orThrow();
        return ResponseEntity.ok(
                lengths.find(caller, animalId, id).orElseThrow(() -> ProblemException.notFound("length")));
    }

    /** Only described here: {@link NewLength} reads it. */
    @Schema(name = "NewLength")
    record LengthBody(
            @Schema(requiredMode = Schema.RequiredMode.REQUIRED)
            LengthReading.Part of,

            @Schema(requiredMode = Schema.RequiredMode.REQUIRED, example = "125")
            BigDecimal value,

            @Schema(
                    description = "UCUM code",
                    allowableValues = {"mm", "cm", "[in_i]"},
                    requiredMode = Schema.RequiredMode.REQUIRED)
            String unit,

            @Schema(description = "the tool's smallest step, in the same unit") @Nullable
            BigDecimal resolution,

            @Schema(description = "which tool", maxLength = 60) @Nullable
            String tool,

            @Schema(description = "now if left out; not in the future") @Nullable
            Instant occurredAt,

            @Schema(description = "stand by a value that no monitor measures") @Nullable
            Boolean confirmed,

            @Schema(maxLength = 4000) @Nullable String note,

            @Schema(description = "the length that this one corrects") @Nullable
            UUID supersedes,

            @Schema(description = "the place, from 0, of the length of the registration that this one corrects")
            @Nullable
            Integer supersedesFirst) {}
}
