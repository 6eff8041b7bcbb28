package varanid.intake.quarantine;

import java.util.ArrayList;
import java.util.List;

/**
 * How long an animal is kept apart at least.
 *
 * @param days at least so many, not below the floor
 * @param floorDays the policy's least for this animal; below it only a vet's recorded decision goes
 * @param vetRelease whether a vet has to approve the release
 * @param reasons what asks for it, the longest first
 */
public record MinimumStay(int days, int floorDays, boolean vetRelease, List<Reason> reasons) {

    /** Longer than anybody would keep an animal apart by intention. */
    public static final int MOST_DAYS = 3650;

    /** @throws IllegalArgumentException where it is below the floor, or absurd */
    public MinimumStay {
        reasons = List.copyOf(reasons);
        if (floorDays < 0 || days < floorDays || days > MOST_DAYS) {
            throw new IllegalArgumentException("from the floor of " + floorDays + " days to " + MOST_DAYS
                    + " days, and below the floor only by a vet's recorded decision; not " + days);
        }
    }

    /**
     * The same with the organisation's own number of days.
     *
     * @throws IllegalArgumentException where that is below the floor
     */
    public MinimumStay lengthenedTo(int houseDays, String why) {
        if (houseDays < floorDays) {
            throw new IllegalArgumentException("the policy asks for at least " + floorDays + " days here; " + houseDays
                    + " takes a vet's recorded decision");
        }
        if (houseDays <= days) {
            return this;
        }
        List<Reason> all = new ArrayList<>();
        all.add(new Reason(houseDays, why, "rule of the house"));
        all.addAll(reasons);
        return new MinimumStay(houseDays, floorDays, vetRelease, all);
    }

    /**
     * What asks for so many days.
     *
     * @param days how many
     * @param reason in words
     * @param source who says so
     */
    public record Reason(int days, String reason, String source) {}
}
