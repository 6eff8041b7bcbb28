package varanid.intake.quarantine;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.ProblemException;

/**
 * What a program is told of rooms, for another feature to show: the same as the replies of the API, as of today. What is
 * written goes by {@link QuarantineRecords}.
 */
@Service
@Transactional(readOnly = true)
public class QuarantineReplies {

    /** More rooms than anybody keeps; a choice of more would be none. */
    private static final int MOST_CHOICES = 500;

    private final RoomController roomReplies;
    private final Rooms rooms;
    private final Clock clock;

    QuarantineReplies(RoomController roomReplies, Rooms rooms, Clock clock) {
        this.roomReplies = roomReplies;
        this.rooms = rooms;
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

    private LocalDate today(Caller caller) {
        return Present.at(clock, caller.zone()).today();
    }
}
