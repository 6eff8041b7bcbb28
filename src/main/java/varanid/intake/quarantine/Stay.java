package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * An animal's time in one room.
 *
 * @param placement the placement that began it
 * @param from the day it was placed
 * @param until the day it left; that day it was still there
 */
record Stay(UUID placement, UUID room, LocalDate from, Optional<LocalDate> until) {

    /** Whether it was there on that day. Where it cannot be known who met whom on a day, it is taken that they met. */
    boolean touches(LocalDate day) {
        return !day.isBefore(from) && until.map(end -> !day.isAfter(end)).orElse(true);
    }

    /** The stays that an animal's placements are, in order. */
    static List<Stay> list(List<PlacementRow> standing) {
        List<Stay> stays = new ArrayList<>();
        for (int i = 0; i < standing.size(); i++) {
            PlacementRow row = standing.get(i);
            if (row.roomId != null) {
                Optional<LocalDate> until =
                        i + 1 < standing.size() ? Optional.of(standing.get(i + 1).onDay) : Optional.empty();
                stays.add(new Stay(row.id(), row.roomId, row.onDay, until));
            }
        }
        return stays;
    }
}
