package varanid.intake.quarantine;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
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
import varanid.intake.platform.web.Faults;
import varanid.intake.platform.web.Items;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.Page;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.platform.web.Query;
import varanid.intake.platform.web.Reply;
import varanid.intake.platform.web.Role;

@RestController
@RequestMapping("/api/v1/rooms/{roomId}/events")
@Tag(name = "Rooms")
class RoomEventController {

    private final Rooms rooms;
    private final ClockEvents events;
    private final RoomBooks books;
    private final EventWriter writer;
    private final Whereabouts whereabouts;
    private final Animals animals;
    private final QuarantinePolicy policy;
    private final OrganisationLock lock;
    private final Once once;
    private final Clock clock;

    RoomEventController(
            Rooms rooms,
            ClockEvents events,
            RoomBooks books,
            EventWriter writer,
            Whereabouts whereabouts,
            Animals animals,
            QuarantinePolicy policy,
            OrganisationLock lock,
            Once once,
            Clock clock) {
        this.rooms = rooms;
        this.events = events;
        this.books = books;
        this.writer = writer;
        this.whereabouts = whereabouts;
        this.animals = animals;
        this.policy = policy;
        this.lock = lock;
        this.once = once;
        this.clock = clock;
    }

    @PostMapping
    @Operation(
            summary = "Record what happened in a room",
            description = "Keepers and clinicians; what a vet says or decides only clinicians. An animal's coming and"
                    + " going is recorded as its placement and departure. A mistake is withdrawn by another event: it"
                    + " stays on record and counts for nothing.")
    @ApiResponse(
            responseCode = "201",
            description = "Recorded, and what the clock shows now",
            content = @Content(schema = @Schema(implementation = EventRecorded.class)))
    public ResponseEntity<byte[]> add(
            Caller caller,
            @PathVariable UUID roomId,
            @RequestBody(content = @Content(schema = @Schema(implementation = EventRequest.Body.class)))
                    JsonRequest request) {
        caller.requireKeeperOrClinician();
        Present present = Present.at(clock, caller.zone());
        get(caller, roomId);
        EventRequest wanted = request.read(fields -> EventRequest.reader(fields, policy, present));
        if (wanted.isAVetsWord() || policy.vetsCauses().contains(Objects.requireNonNullElse(wanted.cause(), ""))) {
            caller.require(Role.CLINICIAN);
        }
        return once.perform(caller, request, () -> {
            lock.hold(caller.organisationId());
            RoomRow room = get(caller, roomId);
            EventWriter.By by = new EventWriter.By(caller.organisationId(), caller.personId(), present.now());
            ClockEventRow row =
                    wanted.kind() == EventKind.WITHDRAWN ? withdraw(caller, by, room, wanted) : add(by, room, wanted);
            RoomBook book = books.open(caller.organisationId(), roomId, present.today());
            Set<UUID> concerned = new HashSet<>(book.animalsOn(present.today()));
            writer.announce(caller.organisationId(), concerned);
            Names names = new Names(animals, caller.organisationId());
            return Reply.created(
                    "/api/v1/rooms/" + roomId + "/events/" + row.id(),
                    null,
                    new EventRecorded(
                            row.id(),
                            EventView.of(policy, row, names),
                            ClockView.of(policy, room, book, present.today(), names)));
        });
    }

    @GetMapping
    @Operation(summary = "Every event of a room, in the order they were recorded, withdrawn ones included")
    @Transactional(readOnly = true)
    public ResponseEntity<Items<EventView>> list(Caller caller, @PathVariable UUID roomId, Query query) {
        Page page = query.page();
        get(caller, roomId);
        Names names = new Names(animals, caller.organisationId());
        return page.reply(
                events.list(caller.organisationId(), roomId, page.after(), page.fetch()),
                ClockEventRow::id,
                row -> EventView.of(policy, row, names));
    }

    @GetMapping("/{eventId}")
    @Operation(summary = "One event of a room")
    @Transactional(readOnly = true)
    public ResponseEntity<EventView> event(
            Caller caller, @PathVariable UUID roomId, @PathVariable UUID eventId, Query query) {
        query.orThrow();
        return ResponseEntity.ok(events.find(caller.organisationId(), roomId, eventId)
                .map(row -> EventView.of(policy, row, new Names(animals, caller.organisationId())))
                .orElseThrow(() -> ProblemException.notFound("event")));
    }

    private ClockEventRow add(EventWriter.By by, RoomRow room, EventRequest wanted) {
        RoomBook book = books.open(by.organisationId(), room.id(), wanted.on());
        Faults faults = new Faults();
        Optional.ofNullable(wanted.animalId()).ifPresent(animal -> checkAnimal(faults, by, room, wanted, animal));
        Optional.ofNullable(wanted.about()).ifPresent(about -> {
            if (book.find(about)
                    .filter(event -> event.is(EventKind.OCCURRED) && !event.onDay.isAfter(wanted.on()))
                    .isEmpty()) {
                faults.add(Fault.at(
                        "#/about",
                        "is no occurrence that counts in this room on that day: it occurred later, was withdrawn, or"
                                + " the room has been empty since",
                        "the id of an occurrence on that day or before"));
            }
        });
        faults.orThrow();
        ClockEventRow row = writer.event(by, room.id(), wanted.on(), wanted.kind());
        row.animalId = wanted.animalId();
        row.cause = wanted.cause();
        row.about = wanted.about();
        row.ruling = Optional.ofNullable(wanted.ruling())
                .map(ClockEvent.Ruling::code)
                .orElse(null);
        row.days = wanted.days();
        row.reason = wanted.reason();
        try {
            book.with(List.of(row));
        } catch (IllegalArgumentException e) {
            Stream.of(String.valueOf(e.getMessage()).split("; "))
                    .forEach(wrong -> faults.add(Fault.at("#", wrong, "an event that fits those that are there")));
            faults.orThrow();
        }
        return writer.save(row);
    }

    private void checkAnimal(Faults faults, EventWriter.By by, RoomRow room, EventRequest wanted, UUID animal) {
        if (whereabouts.listStays(by.organisationId(), animal).stream()
                .noneMatch(stay -> stay.room().equals(room.id()) && stay.touches(wanted.on()))) {
            faults.add(Fault.at(
                    "#/animalId", "did not stand in this room on " + wanted.on(), "an animal that did, or none"));
        }
        QuarantinePolicy.Deaths deaths = policy.deaths();
        if (List.of(deaths.explained(), deaths.unexplained())
                .contains(Objects.requireNonNullElse(wanted.cause(), ""))) {
            faults.add(Fault.at(
                    "#/cause",
                    "is the death of an animal that is recorded here",
                    "its departure, recorded at the animal: the room is told by that"));
        }
    }

    private ClockEventRow withdraw(Caller caller, EventWriter.By by, RoomRow room, EventRequest wanted) {
        UUID about = Objects.requireNonNull(wanted.about());
        ClockEventRow mistaken = events.find(by.organisationId(), room.id(), about)
                .filter(event -> !event.is(EventKind.WITHDRAWN))
                .orElseThrow(() -> refused("is no event of this room", "the id of one of its events"));
        if (mistaken.sourceKind != null) {
            throw refused(
                    "follows from a record: " + mistaken.sourceKind + " " + mistaken.sourceId,
                    "correct that record (a placement is withdrawn; a look, a result or a vet's answer superseded); or a vet"
                            + " says that it was nothing");
        }
        if (mistaken.is(EventKind.VET_SPOKE) || mistaken.is(EventKind.VET_DECIDED)) {
            caller.require(Role.CLINICIAN);
        }
        if (!events.listWithdrawals(by.organisationId(), List.of(about)).isEmpty()) {
            throw new ProblemException(ProblemType.CONFLICT, "That event was withdrawn already.");
        }
        return writer.withdraw(by, mistaken, Objects.requireNonNull(wanted.reason()));
    }

    private static ProblemException refused(String wrong, String right) {
        return new ProblemException(
                ProblemType.INVALID_REQUEST,
                "One thing is wrong with the request.",
                List.of(Fault.at("#/about", wrong, right)));
    }

    private RoomRow get(Caller caller, UUID roomId) {
        return rooms.findById(caller.key(roomId)).orElseThrow(() -> ProblemException.notFound("room"));
    }

    @Schema(name = "ClockEventRecorded")
    record EventRecorded(UUID id, EventView event, ClockView clock) {}
}
