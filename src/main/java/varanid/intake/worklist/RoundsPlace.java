package varanid.intake.worklist;

import java.util.List;
import java.util.UUID;
import varanid.intake.platform.web.CursorForm;

/**
 * A place in the rounds.
 *
 * @param rank of {@link RoundsRank}
 * @param roomName empty where the animal stands in none
 * @param animalId so that no two have the same place
 */
record RoundsPlace(int rank, String roomName, UUID animalId) {

    static final CursorForm<RoundsPlace> FORM = CursorForm.ofParts(
            "rounds",
            place -> List.of(Integer.toString(place.rank), place.roomName, place.animalId.toString()),
            parts -> new RoundsPlace(Integer.parseInt(parts.get(0)), parts.get(1), UUID.fromString(parts.get(2))));

    static final RoundsPlace BEFORE_ALL = new RoundsPlace(-1, "", new UUID(0, 0));
}
