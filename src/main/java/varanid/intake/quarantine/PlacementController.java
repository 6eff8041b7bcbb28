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
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
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
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.JsonFields;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.Reply;
import varanid.intake.platform.web.Role;

@RestController
@RequestMapping("/api/v1")
@Tag(name = "Placements", description = "Which animal stands where, and whom it delays")
class PlacementController {

    private final PlacementRows placements;
    private final Moves moves;
    private final Rooms rooms;
    private final Cohorts cohorts;
    private final LegalHolds holds;
    private final Animals animals;
    private final QuarantinePolicy policy;
    private final OrganisationLock lock;
    private final Once once;
    private final Clock clock;

    PlacementController(
            PlacementRows placements,
            Moves moves,
            Rooms rooms,
            Cohorts cohorts,
            LegalHolds holds,
            Animals animals,
            QuarantinePolicy policy,
            OrganisationLock lock,
            Once once,
            Clock clock) {
        this.placements = placements;
        this.moves = moves;
        this.rooms = rooms;
        this.cohorts = cohorts;
        this.holds = holds;
        this.animals = animals;
        this.policy = policy;
        this.lock = lock;
        this.once = once;
        this.clock = clock;
    }

    @PostMapping("/rooms/{roomId}/placement-preview")
    @Operation(
            summary = "Whom placing an animal in this room would delay, and why",
            description = "Nothing is stored, so an Idempotency-Key changes nothing. The day may lie ahead.")
    @ApiResponse(
            responseCode = "200",
            description = "What would happen",
            content = @Content(schema = @Schema(implementation = ArrivalView.class)))
    @Transactional(readOnly = true)
    public ResponseEntity<ArrivalView> preview(
            Caller caller,
            @PathVariable UUID roomId,
            @RequestBody(content = @Content(schema = @Schema(implementation = PreviewRequest.class)))
                    JsonRequest request) {
        return ResponseEntity.ok(readPreview(caller, roomId, request));
    }

    ArrivalView readPreview(Caller caller, UUID roomId, JsonRequest request) {
        Present present = Present.at(clock, caller.zone());
        if (!rooms.existsById(caller.key(roomId))) {
            throw ProblemException.notFound("room");
        }
        PreviewRequest wanted = request.read(fields -> PreviewRequest.reader(fields, present));
        Animals.Newcomer animal = animals.find(caller.organisationId(), wanted.animalId())
                .orElseThrow(() -> new ProblemException(
                        ProblemType.INVALID_REQUEST,
                        "One thing is wrong with the request.",
                        List.of(Fault.at("#/animalId", "is no animal here", "the id of an animal"))));
        EventWriter.By by = new EventWriter.By(caller.organisationId(), caller.personId(), present.now());
        Moves.Arrival arrival = moves.preview(
                by, animal, new Moves.Wanted(roomId, wanted.on(), Optional.of("preview"), true, true), present.today());
        return ArrivalView.of(policy, arrival, new Names(animals, caller.organisationId()));
    }

    @PostMapping("/animals/{animalId}/placements")
    @Operation(
            summary = "Place an animal in a room",
            description = "Needs the role keeper. It leaves the room where it stood. The reply says whom that delays,"
                    + " until when and why. No animal becomes a resident by being moved: that takes a release"
                    + " decision, or the statement that it lived here before anything was recorded.")
    @ApiResponse(
            responseCode = "201",
            description = "Placed, and whom it delays",
            content = @Content(schema = @Schema(implementation = PlacementView.class)))
    public ResponseEntity<byte[]> place(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestBody(content = @Content(schema = @Schema(implementation = PlacementRequest.class)))
                    JsonRequest request) {
        caller.require(Role.KEEPER);
        Present present = Present.at(clock, caller.zone());
        get(caller, animalId);
        PlacementRequest wanted = request.read(fields -> PlacementRequest.reader(fields, present));
        return once.perform(caller, request, () -> {
            lock.hold(caller.organisationId());
            Moves.Moved moved =
                    moves.place(by(caller, present), get(caller, animalId), wanted.wanted(), present.today());
            return created(caller, moved, List.of(), null);
        });
    }

    @PostMapping("/animals/{animalId}/departures")
    @Operation(
            summary = "Record that an animal is no longer kept here",
            description = "Needs the role keeper. A death is an occurrence for its room, and a matter for those that"
                    + " came with it. Ending a quarantine is no departure: it is a release decision.")
    @ApiResponse(
            responseCode = "201",
            description = "Recorded",
            content = @Content(schema = @Schema(implementation = PlacementView.class)))
    public ResponseEntity<byte[]> depart(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestBody(content = @Content(schema = @Schema(implementation = DepartureRequest.class)))
                    JsonRequest request) {
        caller.require(Role.KEEPER);
        Present present = Present.at(clock, caller.zone());
        get(caller, animalId);
        DepartureRequest wanted = request.read(fields -> DepartureRequest.reader(fields, present));
        return once.perform(caller, request, () -> {
            lock.hold(caller.organisationId());
            Animals.Newcomer animal = get(caller, animalId);
            Moves.Moved moved = moves.depart(by(caller, present), animal, wanted.departure(), present.today());
            List<String> cautions = wanted.because() != Because.DIED && holds.isHeld(caller.organisationId(), animalId)
                    ? List.of(policy.says().heldByAuthority())
                    : List.of();
            @Nullable
            CohortView cohort = wanted.because() == Because.DIED
                    ? cohorts.afterDeath(caller.organisationId(), animal).orElse(null)
                    : null;
            return created(caller, moved, cautions, cohort);
        });
    }

    @PostMapping("/animals/{animalId}/placement-withdrawals")
    @Operation(
            summary = "Withdraw the last placement or departure of an animal, recorded by mistake",
            description = "Needs the role keeper. What followed from it counts for nothing; it stays on record.")
    @ApiResponse(
            responseCode = "201",
            description = "Withdrawn",
            content = @Content(schema = @Schema(implementation = PlacementView.class)))
    public ResponseEntity<byte[]> withdraw(
            Caller caller,
            @PathVariable UUID animalId,
            @RequestBody(content = @Content(schema = @Schema(implementation = WithdrawalRequest.class)))
                    JsonRequest request) {
        caller.require(Role.KEEPER);
        Present present = Present.at(clock, caller.zone());
        get(caller, animalId);
        WithdrawalRequest wanted = request.read(WithdrawalRequest::reader);
        return once.perform(caller, request, () -> {
            lock.hold(caller.organisationId());
            PlacementRow row = moves.withdraw(
                    by(caller, present), get(caller, animalId), wanted.about(), wanted.reason(), present.today());
            return Reply.created(
                    path(animalId, row.id()), null, PlacementView.of(caller.organisationId(), row, rooms, null));
        });
    }

    @GetMapping("/animals/{animalId}/placements")
    @Operation(summary = "Where an animal stood, in the order it was recorded; withdrawn ones and departures included")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<PlacementView>> list(Caller caller, @PathVariable UUID animalId, Query query) {
        Page page = query.page();
        get(caller, animalId);
        List<PlacementRow> fetched = placements.list(caller.organisationId(), animalId, page.after(), page.fetch());
        Map<UUID, PlacementRow> withdrawals = fetched.isEmpty()
                ? Map.of()
                : placements
                        .listWithdrawals(
                                caller.organisationId(),
                                fetched.stream().map(PlacementRow::id).toList())
                        .stream()
                        .collect(Collectors.toMap(row -> Objects.requireNonNull(row.about), Function.identity()));
        return page.reply(
                fetched,
                PlacementRow::id,
                row -> PlacementView.of(caller.organisationId(), row, rooms, withdrawals.get(row.id())));
    }

    @GetMapping("/animals/{animalId}/placements/{placementId}")
    @Operation(summary = "One placement, departure or withdrawal of an animal")
    @Transactional(readOnly = true)
    public ResponseEntity<PlacementView> placement(
            Caller caller, @PathVariable UUID animalId, @PathVariable UUID placementId, Query query) {
        query.orThrow();
        return ResponseEntity.ok(placements
                .find(caller.organisationId(), animalId, placementId)
                .map(row -> PlacementView.of(
                        caller.organisationId(),
                        row,
                        rooms,
                        placements.listWithdrawals(caller.organisationId(), List.of(row.id())).stream()
                                .findFirst()
                                .orElse(null)))
                .orElseThrow(() -> ProblemException.notFound("placement")));
    }

    private Reply created(Caller caller, Moves.Moved moved, List<String> cautions, @Nullable CohortView cohort) {
        PlacementView view = PlacementView.of(
                policy,
                caller.organisationId(),
                moved,
                rooms,
                cautions,
                cohort,
                new Names(animals, caller.organisationId()));
        return Reply.created(path(moved.placement().animalId, moved.placement().id()), null, view);
    }

    private static String path(UUID animalId, UUID placementId) {
        return "/api/v1/animals/" + animalId + "/placements/" + placementId;
    }

    private static EventWriter.By by(Caller caller, Present present) {
        return new EventWriter.By(caller.organisationId(), caller.personId(), present.now());
    }

    private Animals.Newcomer get(Caller caller, UUID animalId) {
        return animals.find(caller.organisationId(), animalId).orElseThrow(() -> ProblemException.notFound("animal"));
    }

    @Schema(name = "PlacementPreviewRequest")
    record PreviewRequest(
            @Schema(requiredMode = Schema.RequiredMode.REQUIRED)
            UUID animalId,

            @Schema(description = "today unless said; at most a year ahead")
            LocalDate on) {

        static Supplier<PreviewRequest> reader(JsonFields fields, Present present) {
            LocalDate furthest = present.today().plusDays(AsOf.FURTHEST_DAYS);
            Given<UUID> animal = fields.id("animalId").required();
            Given<LocalDate> on = fields.date("on")
                    .check(date -> !date.isAfter(furthest), "lies too far ahead", furthest + " or earlier");
            return () -> new PreviewRequest(animal.get(), on.orElse(present.today()));
        }
    }

    @Schema(name = "PlacementRequest")
    record PlacementRequest(
            @Schema(requiredMode = Schema.RequiredMode.REQUIRED)
            UUID roomId,

            @Schema(description = "today unless said; not in the future, not before it was last moved")
            LocalDate on,

            @Schema(maxLength = 2000) @Nullable String reason,

            @Schema(description = "true where the animal is here again although it had left")
            boolean returned,

            @Schema(description = "true where it lived among residents before anything was recorded")
            boolean residentAlready) {

        static Supplier<PlacementRequest> reader(JsonFields fields, Present present) {
            Given<UUID> room = fields.id("roomId").required();
            Given<LocalDate> on = fields.pastDate("on", present);
            Given<String> reason = fields.prose("reason", 2_000);
            Given<Boolean> returned = fields.flag("returned");
            Given<Boolean> resident = fields.flag("residentAlready");
            return () -> new PlacementRequest(
                    room.get(),
                    on.orElse(present.today()),
                    reason.orNull(),
                    returned.orElse(false),
                    resident.orElse(false));
        }

        Moves.Wanted wanted() {
            return new Moves.Wanted(roomId, on, Optional.ofNullable(reason), returned, residentAlready);
        }
    }

    @Schema(name = "DepartureRequest")
    record DepartureRequest(
            @Schema(description = "today unless said; not in the future, not before it was last moved")
            LocalDate on,

            @Schema(
                    allowableValues = {"died", "moved-on", "returned-to-owner", "taken-by-authority", "escaped"},
                    requiredMode = Schema.RequiredMode.REQUIRED)
            Because because,

            @Schema(description = "for a death: whether it seems explained; needed there") @Nullable
            Boolean explained,

            @Schema(maxLength = 2000) @Nullable String reason) {

        static Supplier<DepartureRequest> reader(JsonFields fields, Present present) {
            Given<LocalDate> on = fields.pastDate("on", present);
            Given<Because> because =
                    fields.choice("because", Because.DEPARTURES, Because::code).required();
            Given<Boolean> explained = fields.flag("explained");
            if (because.find().filter(Because.DIED::equals).isPresent()) {
                explained.required();
            } else if (because.isGiven() && explained.isGiven()) {
                explained.fault("is for a death only", "leave it out");
            }
            Given<String> reason = fields.prose("reason", 2_000);
            return () -> new DepartureRequest(
                    on.orElse(present.today()), because.get(), explained.orNull(), reason.orNull());
        }

        Moves.Departure departure() {
            return new Moves.Departure(on, because, Optional.ofNullable(explained), Optional.ofNullable(reason));
        }
    }

    @Schema(name = "PlacementWithdrawalRequest")
    record WithdrawalRequest(
            @Schema(
                    description = "the last placement or departure of the animal that stands",
                    requiredMode = Schema.RequiredMode.REQUIRED)
            UUID about,

            @Schema(maxLength = 2000, requiredMode = Schema.RequiredMode.REQUIRED)
            String reason) {

        static Supplier<WithdrawalRequest> reader(JsonFields fields) {
            Given<UUID> about = fields.id("about").required();
            Given<String> reason = fields.prose("reason", 2_000).required();
            return () -> new WithdrawalRequest(about.get(), reason.get());
        }
    }
}
