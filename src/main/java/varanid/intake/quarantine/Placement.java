package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/**
 * What placing an animal would do, to be shown before it is done.
 *
 * @param before the clock on that day without it
 * @param after the clock with it
 * @param delayed whom it delays
 */
public record Placement(ClockReading before, ClockReading after, List<Delay> delayed) {

    public Placement {
        delayed = List.copyOf(delayed);
    }

    /**
     * One animal that would be kept longer.
     *
     * @param animal which
     * @param from its earliest release without the newcomer
     * @param until with it
     * @param days how many days longer
     */
    public record Delay(UUID animal, LocalDate from, LocalDate until, long days) {}
}
