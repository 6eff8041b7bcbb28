package varanid.intake.quarantine;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.StreamSupport;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.animal.Animals;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;

/**
 * What a program is told of rooms, of moves and of release, for another feature to show: the same as the replies of the
 * API, as of today. What is written goes by {@link QuarantineRecords}.
 */
@Service
@Transactional(readOnly = true)
public class QuarantineReplies {

    /** More rooms than anybody keeps; a choice of more would be none. */
    private static final int MOST_CHOICES = 500;

    private final RoomController roomReplies;
    private final PlacementController moveReplies;
    private final ReleaseController releaseReplies;
    private final Rooms rooms;
    private final Whereabouts whereabouts;
    private final PlacementRows placements;
    private final Cohorts cohorts;
    private final LegalHolds holds;
    private final ReleaseDecisions decisions;
    private final Animals animals;
    private final QuarantinePolicy policy;
    private final JsonMapper json;
    private final Clock clock;

    QuarantineReplies(
            RoomController roomReplies,
            PlacementController moveReplies,
            ReleaseController releaseReplies,
            Rooms rooms,
            Whereabouts whereabouts,
            PlacementRows placements,
            Cohorts cohorts,
            LegalHolds holds,
            ReleaseDecisions decisions,
            Animals animals,
            QuarantinePolicy policy,
            JsonMapper json,
            Clock clock) {
        this.roomReplies = roomReplies;
        this.moveReplies = moveReplies;
        this.releaseReplies = releaseReplies;
        this.rooms = rooms;
        this.whereabouts = whereabouts;
        this.placements = placements;
        this.cohorts = cohorts;
        this.holds = holds;
        this.decisions = decisions;
        this.animals = animals;
        this.policy = policy;
        this.json = json;
        this.clock = clock;
    }

    /**
     * A room by its name.
     *
     * @param ofResidents whether it is for animals whose quarantine was ended
     */
    public record Choice(UUID id, String name, boolean ofResidents) {}

    /**
     * One room with all that its clock shows.
     *
     * @param version of the room, to change it by
     */
    public record Opened(RoomView room, ClockView clock, long version) {}

    /**
     * A decision that ended a quarantine.
     *
     * @param by the name of who decided, on that day
     * @param attention what must not be overlooked, the loudest first
     */
    public record Ended(String by, LocalDate on, List<String> attention, Optional<String> note) {}

    /**
     * Something that may be recorded of a room by itself.
     *
     * @param code its code in the policy
     * @param label in plain words
     * @param found whether it was found there, and did not happen in the work
     */
    public record Happening(String code, String label, boolean found) {}

    /** What is no look, no death and nobody's coming or going, and no vet has to say. */
    public List<Happening> listHappenings() {
        QuarantinePolicy.Deaths deaths = policy.deaths();
        return policy.causes().stream()
                .filter(cause -> cause.kind() != QuarantinePolicy.Kind.SIGN)
                .filter(cause -> !policy.vetsCauses().contains(cause.id()))
                .filter(cause -> !List.of(QuarantinePolicy.NEW_ANIMAL, deaths.explained(), deaths.unexplained())
                        .contains(cause.id()))
                .map(cause -> new Happening(cause.id(), cause.label(), cause.kind() == QuarantinePolicy.Kind.AGENT))
                .toList();
    }

    /** Rooms in the order they were recorded, after that one. */
    public List<RoomView> listRooms(Caller caller, UUID after, int most) {
        return rooms.list(caller.organisationId(), after, Limit.of(most)).stream()
                .map(room -> roomReplies.view(caller, room, today(caller)))
                .toList();
    }

    /** Every room by its name, without its clock. */
    public List<Choice> listChoices(Caller caller) {
        return rooms.listByName(caller.organisationId(), Limit.of(MOST_CHOICES)).stream()
                .map(room -> new Choice(room.id(), room.name(), room.isOfResidents()))
                .toList();
    }

    /** @throws ProblemException 404 where there is no such room here */
    public Opened openRoom(Caller caller, UUID roomId) {
        RoomRow room = roomReplies.get(caller, roomId);
        LocalDate today = today(caller);
        return new Opened(
                roomReplies.view(caller, room, today),
                roomReplies.readClock(caller, room, today),
                Objects.requireNonNull(room.version(), "it is stored"));
    }

    /**
     * What putting an animal into a room would do.
     *
     * @param request as {@code placement-preview} reads it
     * @throws ProblemException 422 where it cannot be put there so, 404 where there is no such room here
     */
    public ArrivalView preview(Caller caller, UUID roomId, JsonRequest request) {
        return moveReplies.readPreview(caller, roomId, request);
    }

    /** What was last recorded of where an animal is; nothing where it was never placed. */
    public Optional<PlacementView> findLastMove(Caller caller, UUID animalId) {
        return whereabouts
                .findLast(caller.organisationId(), animalId)
                .map(row -> PlacementView.of(caller.organisationId(), row, rooms, null));
    }

    /** What the death of an animal is for those that it came with; nothing where it did not die, or came alone. */
    public Optional<CohortView> findCohortAfterDeath(Caller caller, UUID animalId) {
        return whereabouts
                .findLast(caller.organisationId(), animalId)
                .filter(row -> Because.DIED.code().equals(row.because))
                .flatMap(row -> animals.find(caller.organisationId(), animalId))
                .flatMap(animal -> cohorts.afterDeath(caller.organisationId(), animal));
    }

    /** What must not be overlooked where an authority holds an animal. */
    public Optional<String> findHoldCaution(Caller caller, UUID animalId) {
        return holds.isHeld(caller.organisationId(), animalId)
                ? Optional.of(policy.says().heldByAuthority())
                : Optional.empty();
    }

    /** What was last stated about an authority's hold on an animal. */
    public Optional<HoldView> findHold(Caller caller, UUID animalId) {
        return holds.find(caller.organisationId(), animalId, today(caller)).map(HoldView::of);
    }

    /** @throws ProblemException 404 where there is no such animal here */
    public ReviewView review(Caller caller, UUID animalId) {
        return releaseReplies.readReview(caller, animalId, today(caller));
    }

    /** The last decision that ended a quarantine of an animal, where that was no mistake. */
    public Optional<Ended> findEnded(Caller caller, UUID animalId) {
        List<UUID> standing = placements.listStanding(caller.organisationId(), animalId).stream()
                .map(PlacementRow::id)
                .toList();
        return decisions.listNewestFirst(caller.organisationId(), animalId, Limit.of(1)).stream()
                .filter(row -> standing.contains(row.placementId))
                .map(this::ended)
                .findFirst();
    }

    private Ended ended(ReleaseDecisionRow row) {
        JsonNode decision = json.readTree(row.document().text());
        return new Ended(
                decision.path("decidedByName").asString(""),
                row.onDay,
                StreamSupport.stream(decision.path("attention").spliterator(), false)
                        .map(each -> each.asString(""))
                        .toList(),
                Optional.of(decision.path("note").asString("")).filter(note -> !note.isEmpty()));
    }

    private LocalDate today(Caller caller) {
        return Present.at(clock, caller.zone()).today();
    }
}
