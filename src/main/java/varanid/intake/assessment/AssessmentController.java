package varanid.intake.assessment;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.util.RawValue;
import varanid.intake.animal.Animals;
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
@RequestMapping("/api/v1/animals/{animalId}/assessments")
@Tag(name = "Assessments", description = "Looks at an animal, kept as they were; a correction supersedes, never edits")
class AssessmentController {

    private final AssessmentRows rows;
    private final Assessments assessments;
    private final Animals animals;
    private final Once once;

    AssessmentController(AssessmentRows rows, Assessments assessments, Animals animals, Once once) {
        this.rows = rows;
        this.assessments = assessments;
        this.animals = animals;
        this.once = once;
    }

    @PostMapping
    @Operation(
            summary = "Keep a look at an animal, and score it",
            description = "Life stage and origin are the recorded ones (of declared and assessed origin the riskier),"
                    + " unless the request names others. With supersedes it corrects an earlier assessment, which"
                    + " stays readable.")
    @ApiResponse(
            responseCode = "201",
            description = "Kept",
            content = @Content(schema = @Schema(implementation = AssessmentView.class)))
    public ResponseEntity<byte[]> keep(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestBody(content = @Content(schema = @Schema(implementation = AssessmentBody.class)))
                    JsonRequest request) {
        caller.require(Role.KEEPER);
        NewAssessment look = assessments.read(caller, animalId, request);
        return once.perform(caller, request, () -> {
            AssessmentRow row = assessments.keep(caller, animalId, look);
            Map<String, String> headers = Map.of(
                    "Location", path(animalId, row.id()), "ETag", row.document().eTag());
            return new Reply(201, headers, new RawValue(row.document().text()));
        });
    }

    @GetMapping
    @Operation(summary = "The assessments of an animal, in the order they were recorded")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<AssessmentView.Item>> list(Caller caller, @PathVariable UUID animalId, Query query) {
        Page page = query.page();
        if (animals.find(caller.organisationId(), animalId).isEmpty()) {
            throw ProblemException.notFound("animal");
        }
        List<AssessmentRow> fetched = rows.list(caller.organisationId(), animalId, page.after(), page.fetch());
        Map<UUID, UUID> successors = fetched.isEmpty()
                ? Map.of()
                : rows
                        .listSuccessors(
                                caller.organisationId(),
                                fetched.stream().map(AssessmentRow::id).toList())
                        .stream()
                        .collect(Collectors.toMap(
                                successor -> Objects.requireNonNull(successor.supersedes()), AssessmentRow::id));
        return page.reply(fetched, AssessmentRow::id, row -> AssessmentView.Item.of(row, successors.get(row.id())));
    }

    @GetMapping("/{id}")
    @Operation(
            summary = "One assessment, byte for byte as it was kept",
            description = "The ETag is the SHA-256 of the bytes. Where it was superseded, a Link with the relation"
                    + " successor-version leads to the correction; where it corrects another, predecessor-version"
                    + " leads back (RFC 5829).")
    @ApiResponse(
            responseCode = "200",
            description = "As it was then",
            content = @Content(schema = @Schema(implementation = AssessmentView.class)))
    @Transactional(readOnly = true)
    public ResponseEntity<byte[]> assessment(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID id, Query query) {
        query.orThrow();
        AssessmentRow row = rows.find(caller.organisationId(), animalId, id)
                .orElseThrow(() -> ProblemException.notFound("assessment"));
        CanonicalJson document = row.document();
        ResponseEntity.BodyBuilder reply =
                ResponseEntity.ok().eTag(document.eTag()).contentType(MediaType.APPLICATION_JSON);
        if (row.supersedes() != null) {
            reply.header("Link", link(animalId, row.supersedes(), "predecessor-version"));
        }
        rows.findSuccessor(caller.organisationId(), id)
                .ifPresent(successor -> reply.header("Link", link(animalId, successor.id(), "successor-version")));
        return reply.body(document.bytes());
    }

    static String path(UUID animalId, UUID id) {
        return "/api/v1/animals/" + animalId + "/assessments/" + id;
    }

    private static String link(UUID animalId, UUID id, String relation) {
        return "<" + path(animalId, id) + ">; rel=\"" + relation + '"';
    }

    /** Only described here: {@link NewAssessment} reads it. */
    @Schema(name = "NewAssessment")
    record AssessmentBody(
            @Schema(example = "varanid-intake", requiredMode = Schema.RequiredMode.REQUIRED)
            String checklist,

            @Nullable Integer version,

            @Schema(description = "the animal's recorded one where none is named") @Nullable
            String lifeStage,

            @Schema(description = "the animal's riskier of declared and assessed where none is named") @Nullable
            String origin,

            @Nullable List<String> conditions,
            @Schema(description = "as in Look") @Nullable Map<String, Object> answers,

            @Schema(description = "now where none is named") @Nullable
            Instant occurredAt,

            @Nullable SkinTemperature skinTemperature,
            @Schema(maxLength = 4000) @Nullable String note,

            @Schema(description = "the assessment that this one corrects") @Nullable
            UUID supersedes,

            @Schema(description = "why it corrects what it supersedes", maxLength = 1000) @Nullable
            String reason,

            @Schema(description = "of the form it was made with: one person's looks at the animal with one key are one")
            @Nullable
            UUID formKey) {

        record SkinTemperature(
                BigDecimal value,
                @Schema(allowableValues = {"Cel", "[degF]"}) String unit,
                @Nullable Boolean confirmed) {}
    }
}
