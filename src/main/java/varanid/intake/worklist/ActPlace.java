package varanid.intake.worklist;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import varanid.intake.platform.web.CursorForm;

/**
 * A place in <em>act now</em>.
 *
 * @param rank of {@link ActRank}
 * @param day the day of that order: due from, or due until
 * @param animalId so that no two have the same place
 */
record ActPlace(int rank, LocalDate day, UUID animalId) {

    private static final LocalDate FIRST_DAY = LocalDate.of(1, 1, 1);
    private static final UUID BEFORE_ALL = new UUID(0, 0);

    ActPlace {
        if (rank < 0 || rank >= ActRank.values().length || day.isBefore(FIRST_DAY) || day.isAfter(Entry.NEVER)) {
            throw new IllegalArgumentException("no place: " + rank + ", " + day);
        }
    }

    /** Before everything of that rank. */
    static ActPlace before(ActRank rank) {
        return new ActPlace(rank.number(), FIRST_DAY, BEFORE_ALL);
    }

    static CursorForm<ActPlace> form(String order) {
        return CursorForm.ofParts(
                order,
                place -> List.of(Integer.toString(place.rank), place.day.toString(), place.animalId.toString()),
                parts -> new ActPlace(
                        Integer.parseInt(parts.get(0)), LocalDate.parse(parts.get(1)), UUID.fromString(parts.get(2))));
    }
}
