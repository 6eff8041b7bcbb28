package varanid.intake.quarantine;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
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
import varanid.intake.animal.Animals;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.time.Present;
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
@RequestMapping("/api/v1/animals/{animalId}/legal-holds")
@Tag(name = "Release")
class LegalHoldController {

    private final LegalHoldRows rows;
    private final Animals animals;
    private final EventWriter writer;
    private final OrganisationLock lock;
    private final Ids ids;
    private final Once once;
    private final Clock clock;

    LegalHoldController(
            LegalHoldRows rows,
            Animals animals,
            EventWriter writer,
            OrganisationLock lock,
            Ids ids,
            Once once,
            Clock clock) {
        this.rows = rows;
        this.animals = animals;
        this.writer = writer;
        this.lock = lock;
        this.ids = ids;
        this.once = once;
        this.clock = clock;
    }

    @PostMapping
    @Operation(
            summary = "State whether an authority holds an animal",
            description = "Needs the role keeper. The last statement counts.")
    @ApiResponse(
            responseCode = "201",
            description = "Recorded",
            content = @Content(schema = @Schema(implementation = HoldView.class)))
    public ResponseEntity<byte[]> add(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestBody(content = @Content(schema = @Schema(implementation = HoldRequest.class)))
                    JsonRequest request) {
        caller.require(Role.KEEPER);
        Present present = Present.at(clock, caller.zone());
        get(caller, animalId);
        HoldRequest wanted = request.read(fields -> HoldRequest.reader(fields, present));
        return once.perform(caller, request, () -> {
            lock.hold(caller.organisationId());
            LegalHoldRow row = new LegalHoldRow(
                    caller.key(ids.next()),
                    animalId,
                    wanted.on(),
                    wanted.state().code(),
                    caller.personId(),
                    present.now());
            row.authority = wanted.authority();
            row.reference = wanted.reference();
            row.note = wanted.note();
            rows.saveAndFlush(row);
            writer.announce(caller.organisationId(), Set.of(animalId));
            return Reply.created(
                    "/api/v1/animals/" + animalId + "/legal-holds/" + row.key.id(), null, HoldView.of(row));
        });
    }

    @GetMapping
    @Operation(summary = "What was stated about an authority's hold on an animal, in the order it was recorded")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<HoldView>> list(Caller caller, @PathVariable UUID animalId, Query query) {
        Page page = query.page();
        get(caller, animalId);
        return page.reply(
                rows.list(caller.organisationId(), animalId, page.after(), page.fetch()),
                row -> row.key.id(),
                HoldView::of);
    }

    @GetMapping("/{holdId}")
    @Operation(summary = "One statement about an authority's hold")
    @Transactional(readOnly = true)
    public ResponseEntity<HoldView> hold(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID holdId, Query query) {
        query.orThrow();
        return ResponseEntity.ok(rows.find(caller.organisationId(), animalId, holdId)
                .map(HoldView::of)
                .orElseThrow(() -> ProblemException.notFound("statement")));
    }

    private Animals.Newcomer get(Caller caller, UUID animalId) {
        return animals.find(caller.organisationId(), animalId).orElseThrow(() -> ProblemException.notFound("animal"));
    }

    @Schema(name = "LegalHoldRequest")
    record HoldRequest(
            @Schema(
                    description = "held; released by the authority; none: no authority has to do with it",
                    allowableValues = {"held", "released", "none"},
                    requiredMode = Schema.RequiredMode.REQUIRED)
            LegalHolds.State state,

            @Schema(description = "today unless said; not in the future")
            LocalDate on,

            @Schema(description = "which; needed for held and released", maxLength = 200) @Nullable
            String authority,

            @Schema(description = "its file number or the like", maxLength = 200) @Nullable
            String reference,

            @Schema(maxLength = 4000) @Nullable String note) {

        static Supplier<HoldRequest> reader(JsonFields fields, Present present) {
            Given<LegalHolds.State> state = fields.choice(
                            "state", List.of(LegalHolds.State.values()), LegalHolds.State::code)
                    .required();
            Given<LocalDate> on = fields.pastDate("on", present);
            Given<String> authority = fields.text("authority", 200);
            Given<String> reference = fields.text("reference", 200);
            Given<String> note = fields.prose("note", 4_000);
            if (state.find().filter(each -> each != LegalHolds.State.NONE).isPresent()) {
                authority.required();
            }
            return () -> new HoldRequest(
                    state.get(), on.orElse(present.today()), authority.orNull(), reference.orNull(), note.orNull());
        }
    }
}
