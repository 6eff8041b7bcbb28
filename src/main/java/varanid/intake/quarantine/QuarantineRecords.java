package varanid.intake.quarantine;

import java.util.Objects;
import java.util.UUID;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.IfMatch;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;

/**
 * Keeps what another feature has written as a request, by the very way that a sent one goes: the same role, the same
 * checks, and the same that follows from it. Each method gives the id of what was kept and throws a
 * {@link ProblemException} where the request would have been refused.
 */
@Service
@Transactional(propagation = Propagation.MANDATORY)
public class QuarantineRecords {

    private final RoomController rooms;
    private final RoomEventController events;
    private final PlacementController placements;
    private final LegalHoldController holds;
    private final ReleaseController releases;

    QuarantineRecords(
            RoomController rooms,
            RoomEventController events,
            PlacementController placements,
            LegalHoldController holds,
            ReleaseController releases) {
        this.rooms = rooms;
        this.events = events;
        this.placements = placements;
        this.holds = holds;
        this.releases = releases;
    }

    public UUID keepRoom(Caller caller, JsonRequest request) {
        return kept(rooms.add(caller, request));
    }

    /** @param seen the version that was seen */
    public void changeRoom(Caller caller, UUID roomId, IfMatch seen, JsonRequest request) {
        rooms.change(caller, roomId, seen, request);
    }

    public UUID keepEvent(Caller caller, UUID roomId, JsonRequest request) {
        return kept(events.add(caller, roomId, request));
    }

    public UUID keepPlacement(Caller caller, UUID animalId, JsonRequest request) {
        return kept(placements.place(caller, animalId, request));
    }

    public UUID keepDeparture(Caller caller, UUID animalId, JsonRequest request) {
        return kept(placements.depart(caller, animalId, request));
    }

    public UUID keepWithdrawal(Caller caller, UUID animalId, JsonRequest request) {
        return kept(placements.withdraw(caller, animalId, request));
    }

    public UUID keepLegalHold(Caller caller, UUID animalId, JsonRequest request) {
        return kept(holds.add(caller, animalId, request));
    }

    public UUID keepApproval(Caller caller, UUID animalId, JsonRequest request) {
        return kept(releases.approve(caller, animalId, request));
    }

    public UUID keepDecision(Caller caller, UUID animalId, JsonRequest request) {
        return kept(releases.decide(caller, animalId, request));
    }

    private static UUID kept(ResponseEntity<byte[]> reply) {
        String path = Objects.requireNonNull(reply.getHeaders().getLocation()).getPath();
        return UUID.fromString(path.substring(path.lastIndexOf('/') + 1));
    }
}
