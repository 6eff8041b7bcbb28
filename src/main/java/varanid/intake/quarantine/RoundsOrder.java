package varanid.intake.quarantine;

import java.util.Comparator;

/**
 * In which order animals are seen to, so that nothing is carried from the sick to the others: by place in the rounds,
 * strictly isolated ones after the others of their place, then room by room, hatchlings before adults.
 */
public final class RoundsOrder {

    /** The order of the rounds in one room; those alike stay as they were. */
    public static final Comparator<Stop> COMPARATOR =
            Comparator.comparing(Stop::workPlace).thenComparing(Stop::isolation).thenComparing(Stop::stage);

    private RoundsOrder() {}

    /** What orders one animal. */
    public record Stop(WorkPlace workPlace, Isolation isolation, Stage stage) {}
}
