package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Opens the books of rooms: reads their events, as few as are needed. */
@Component
class RoomBooks {

    private static final LocalDate EVER = LocalDate.of(1900, 1, 1);

    private final ClockEvents events;
    private final QuarantinePolicy policy;
    private final JsonMapper json;

    RoomBooks(ClockEvents events, QuarantinePolicy policy, JsonMapper json) {
        this.events = events;
        this.policy = policy;
        this.json = json;
    }

    /**
     * The events from the day on which the room was last empty before that day. Everything before counts no more: an
     * empty room has no clock. What came later is in it too.
     */
    RoomBook open(UUID organisationId, UUID roomId, LocalDate day) {
        return new RoomBook(
                policy, json, roomId, events.listFrom(organisationId, roomId, filledOn(organisationId, roomId, day)));
    }

    /** The last day up to that on which the first animal came into an empty room. */
    private LocalDate filledOn(UUID organisationId, UUID roomId, LocalDate day) {
        List<ClockEvents.ComingAndGoing> all = events.listComingAndGoing(organisationId, roomId, day);
        LocalDate filled = EVER;
        Set<UUID> there = new HashSet<>();
        int i = 0;
        while (i < all.size()) {
            LocalDate today = all.get(i).getOnDay();
            boolean empty = there.isEmpty();
            // Those that left on a day met those that came on it, so the room is counted at its end.
            Map<UUID, Integer> changes = new HashMap<>();
            for (; i < all.size() && all.get(i).getOnDay().equals(today); i++) {
                boolean came = all.get(i).getKind().equals(EventKind.PLACED.code());
                changes.merge(all.get(i).getAnimalId(), came ? 1 : -1, Integer::sum);
                if (empty && came) {
                    filled = today;
                }
            }
            changes.forEach((animal, change) -> {
                if (change > 0) {
                    there.add(animal);
                } else if (change < 0) {
                    there.remove(animal);
                }
            });
        }
        return filled;
    }

    /** What an animal needed on being placed. */
    MinimumStay readStay(ClockEventRow placed) {
        return json.readValue(placed.minimumStay, MinimumStay.class);
    }

    String write(MinimumStay stay) {
        return json.writeValueAsString(stay);
    }
}
