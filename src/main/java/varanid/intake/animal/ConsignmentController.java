package varanid.intake.animal;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
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
@RequestMapping("/api/v1/consignments")
@Tag(name = "Consignments", description = "The animals that travelled or were surrendered together")
class ConsignmentController {

    private final Consignments consignments;
    private final Ids ids;
    private final Once once;
    private final Clock clock;

    ConsignmentController(Consignments consignments, Ids ids, Once once, Clock clock) {
        this.consignments = consignments;
        this.ids = ids;
        this.once = once;
        this.clock = clock;
    }

    @PostMapping
    @Operation(summary = "Record a consignment", description = "Needs the role keeper.")
    @ApiResponse(
            responseCode = "201",
            description = "Recorded",
            content = @Content(schema = @Schema(implementation = ConsignmentView.class)))
    public ResponseEntity<byte[]> add(
            Caller caller,
            @RequestBody(content = @Content(schema = @Schema(implementation = ConsignmentRequest.class)))
                    JsonRequest request) {
        caller.require(Role.KEEPER);
        Present present = Present.at(clock, caller.zone());
        ConsignmentRequest wanted = request.read(fields -> ConsignmentRequest.reader(fields, present));
        return once.perform(caller, request, () -> {
            ConsignmentRow row = consignments.save(wanted.row(caller, ids.next(), present.now()));
            return Reply.created("/api/v1/consignments/" + row.id(), null, ConsignmentView.of(row));
        });
    }

    @GetMapping
    @Operation(summary = "The consignments of the organisation")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<ConsignmentView>> list(Caller caller, Query query) {
        Page page = query.page();
        List<ConsignmentRow> rows = consignments.list(caller.organisationId(), page.after(), page.fetch());
        return page.reply(rows, ConsignmentRow::id, ConsignmentView::of);
    }

    @GetMapping("/{id}")
    @Operation(summary = "One consignment")
    @Transactional(readOnly = true)
    public ResponseEntity<ConsignmentView> consignment(Caller caller, @PathVariable UUID id, Query query) {
        query.orThrow();
        return ResponseEntity.ok(consignments
                .findById(caller.key(id))
                .map(ConsignmentView::of)
                .orElseThrow(() -> ProblemException.notFound("consignment")));
    }

    @Schema(name = "ConsignmentRequest")
    record ConsignmentRequest(
            @Schema(description = "what people call it", maxLength = 200, requiredMode = Schema.RequiredMode.REQUIRED)
            String name,

            @Schema(description = "who sent or surrendered it", maxLength = 200) @Nullable
            String sender,

            @Schema(description = "not in the future") @Nullable
            LocalDate arrivedOn,

            @Schema(maxLength = 4000) @Nullable String notes) {

        static Supplier<ConsignmentRequest> reader(JsonFields fields, Present present) {
            Given<String> name = fields.text("name", 200).required();
            Given<String> sender = fields.text("sender", 200);
            Given<LocalDate> arrived = fields.pastDate("arrivedOn", present);
            Given<String> notes = fields.prose("notes", 4_000);
            return () -> new ConsignmentRequest(name.get(), sender.orNull(), arrived.orNull(), notes.orNull());
        }

        ConsignmentRow row(Caller caller, UUID id, Instant now) {
            return new ConsignmentRow(caller.key(id), name, sender, arrivedOn, notes, caller.personId(), now);
        }
    }

    @Schema(name = "Consignment")
    record ConsignmentView(
            UUID id,
            String name,
            @Nullable String sender,
            @Nullable LocalDate arrivedOn,
            @Nullable String notes,
            UUID recordedBy,
            Instant recordedAt) {

        static ConsignmentView of(ConsignmentRow row) {
            return new ConsignmentView(
                    row.id(),
                    row.name(),
                    row.sender(),
                    row.arrivedOn(),
                    row.notes(),
                    row.recordedBy(),
                    row.recordedAt());
        }
    }
}
