package varanid.intake.worklist;

import varanid.intake.quarantine.RoundsOrder;

/** The order of the rounds as a number that an index can hold. */
final class RoundsRank {

    private RoundsRank() {}

    /** Less than another's exactly where {@link RoundsOrder#COMPARATOR} says that this comes first in a room. */
    static int of(RoundsOrder.Stop stop) {
        return stop.workPlace().ordinal() * 100
                + stop.isolation().ordinal() * 10
                + stop.stage().ordinal();
    }

    /**
     * The part of a rank that comes before the room: whoever goes by stage first enters a room again and again. In the table
     * it is the column {@code rounds_place}.
     */
    static int place(int rank) {
        return Math.floorDiv(rank, 10);
    }
}
