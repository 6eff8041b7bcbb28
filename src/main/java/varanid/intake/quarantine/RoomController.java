package varanid.intake.quarantine;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
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
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import varanid.intake.animal.Animals;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.IfMatch;
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
import varanid.intake.platform.web.Version;

@RestController
@RequestMapping("/api/v1/rooms")
@Tag(
        name = "Rooms",
        description = "One room is one air and one set of tools, and has one clock for all that stand in it")
class RoomController {

    private final Rooms rooms;
    private final RoomBooks books;
    private final EventWriter writer;
    private final Animals animals;
    private final QuarantinePolicy policy;
    private final OrganisationLock lock;
    private final Ids ids;
    private final Once once;
    private final Clock clock;

    RoomController(
            Rooms rooms,
            RoomBooks books,
            EventWriter writer,
            Animals animals,
            QuarantinePolicy policy,
            OrganisationLock lock,
            Ids ids,
            Once once,
            Clock clock) {
        this.rooms = rooms;
        this.books = books;
        this.writer = writer;
        this.animals = animals;
        this.policy = policy;
        this.lock = lock;
        this.ids = ids;
        this.once = once;
        this.clock = clock;
    }

    @PostMapping
    @Operation(summary = "Record a room", description = "Needs the role keeper. Its kind never changes.")
    @ApiResponse(
            responseCode = "201",
            description = "Recorded",
            content = @Content(schema = @Schema(implementation = RoomView.class)))
    public ResponseEntity<byte[]> add(
            Caller caller,
            @RequestBody(content = @Content(schema = @Schema(implementation = NewRoom.class))) JsonRequest request) {
        caller.require(Role.KEEPER);
        Present present = Present.at(clock, caller.zone());
        NewRoom wanted = request.read(NewRoom::reader);
        return once.perform(caller, request, () -> {
            lock.hold(caller.organisationId());
            mayBeCalled(caller, wanted.name(), null);
            RoomRow room = rooms.saveAndFlush(new RoomRow(
                    caller.key(ids.next()),
                    wanted.name(),
                    wanted.kind(),
                    wanted.notes(),
                    caller.personId(),
                    present.now()));
            return Reply.created("/api/v1/rooms/" + room.id(), room.version(), view(caller, room, present.today()));
        });
    }

    @GetMapping
    @Operation(summary = "The rooms of the organisation, with how their clocks stand today")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<RoomView>> list(Caller caller, Query query) {
        Page page = query.page();
        LocalDate today = Present.at(clock, caller.zone()).today();
        return page.reply(
                rooms.list(caller.organisationId(), page.after(), page.fetch()),
                RoomRow::id,
                room -> view(caller, room, today));
    }

    @GetMapping("/{roomId}")
    @Operation(summary = "One room")
    @Transactional(readOnly = true)
    public ResponseEntity<RoomView> room(Caller caller, @PathVariable UUID roomId, Query query) {
        query.orThrow();
        return reply(caller, get(caller, roomId));
    }

    @PutMapping("/{roomId}")
    @Operation(summary = "Change what a room is called", description = "Needs the role keeper.")
    @Transactional
    public ResponseEntity<RoomView> change(
            Caller caller,
            @PathVariable UUID roomId,
            IfMatch ifMatch,
            @RequestBody(content = @Content(schema = @Schema(implementation = RoomChange.class))) JsonRequest request) {
        caller.require(Role.KEEPER);
        get(caller, roomId);
        RoomChange change = request.read(RoomChange::reader);
        lock.hold(caller.organisationId());
        RoomRow room = get(caller, roomId);
        ifMatch.require(room.version());
        mayBeCalled(caller, change.name(), roomId);
        room.change(change.name(), change.notes());
        RoomRow changed = rooms.saveAndFlush(room);
        // What is told of an animal tells the name of its room.
        writer.announce(
                caller.organisationId(),
                books.open(
                                caller.organisationId(),
                                roomId,
                                Present.at(clock, caller.zone()).today())
                        .lastAnimals());
        return reply(caller, changed);
    }

    @GetMapping("/{roomId}/clock")
    @Operation(
            summary = "The clock of a room: earliest release, why, and every event since the room was last empty",
            description = "The software ends no quarantine: a person does.")
    @Parameter(
            name = "asOf",
            in = ParameterIn.QUERY,
            description = "the day to read it on, today unless said; later events are left out",
            schema = @Schema(type = "string", format = "date"))
    @Transactional(readOnly = true)
    public ResponseEntity<ClockView> clock(Caller caller, @PathVariable UUID roomId, Query query) {
        LocalDate asOf = AsOf.read(query, Present.at(clock, caller.zone()));
        return ResponseEntity.ok(readClock(caller, get(caller, roomId), asOf));
    }

    ClockView readClock(Caller caller, RoomRow room, LocalDate asOf) {
        return ClockView.of(
                policy,
                room,
                books.open(caller.organisationId(), room.id(), asOf),
                asOf,
                new Names(animals, caller.organisationId()));
    }

    private ResponseEntity<RoomView> reply(Caller caller, RoomRow room) {
        return ResponseEntity.ok()
                .eTag(Version.tag(room.version()))
                .body(view(caller, room, Present.at(clock, caller.zone()).today()));
    }

    RoomView view(Caller caller, RoomRow room, LocalDate today) {
        return RoomView.of(
                policy,
                room,
                books.open(caller.organisationId(), room.id(), today).read(today),
                new Names(animals, caller.organisationId()));
    }

    RoomRow get(Caller caller, UUID roomId) {
        return rooms.findById(caller.key(roomId)).orElseThrow(() -> ProblemException.notFound("room"));
    }

    /** Two rooms of one name would be mistaken for each other. */
    private void mayBeCalled(Caller caller, String name, @Nullable UUID itself) {
        rooms.findByName(caller.organisationId(), name)
                .filter(other -> !other.id().equals(itself))
                .ifPresent(other -> {
                    throw new ProblemException(
                            ProblemType.INVALID_REQUEST,
                            "One thing is wrong with the request.",
                            List.of(Fault.at(
                                    "#/name", "is the name of another room", "a name that no other room has")));
                });
    }

    @Schema(name = "NewRoom")
    record NewRoom(
            @Schema(description = "what people call it", maxLength = 100, requiredMode = Schema.RequiredMode.REQUIRED)
            String name,

            @Schema(
                    description = "for newcomers, or for animals whose quarantine was ended; quarantine unless said",
                    allowableValues = {"quarantine", "residents"})
            RoomKind kind,

            @Schema(maxLength = 4000) @Nullable String notes) {

        static Supplier<NewRoom> reader(JsonFields fields) {
            Given<String> name = fields.text("name", 100).required();
            Given<RoomKind> kind = fields.choice("kind", List.of(RoomKind.values()), RoomKind::code);
            Given<String> notes = fields.prose("notes", 4_000);
            return () -> new NewRoom(name.get(), kind.orElse(RoomKind.QUARANTINE), notes.orNull());
        }
    }

    @Schema(name = "RoomChange")
    record RoomChange(
            @Schema(maxLength = 100, requiredMode = Schema.RequiredMode.REQUIRED)
            String name,

            @Schema(maxLength = 4000) @Nullable String notes) {

        static Supplier<RoomChange> reader(JsonFields fields) {
            Given<String> name = fields.text("name", 100).required();
            Given<String> notes = fields.prose("notes", 4_000);
            return () -> new RoomChange(name.get(), notes.orNull());
        }
    }
}
