package varanid.intake.weight;

import java.util.Locale;

/** What stands between two readings and a sure answer. The words for each are in the data. */
public enum Caveat {
    /** There is no weighing to compare with in the time that is asked about. */
    NO_REFERENCE,
    /** The interval of the scales reaches to both sides of the threshold. */
    FINER_SCALE,
    /** Weighed on scales that no same-day pair links. */
    SCALE_CHANGED,
    /** Nobody wrote down which scale it was. */
    SCALE_UNKNOWN,
    /** Nobody wrote down the smallest step of the scale, or it is as large as the animal. */
    RESOLUTION_UNKNOWN,
    /** It had eaten shortly before the earlier weighing, so a loss since may be an emptied gut. */
    REFERENCE_FED,
    /** It was wet at the earlier weighing, so a loss since may be water. */
    REFERENCE_WET,
    /** It had eaten shortly before the latest weighing: a loss is at least this, and no loss says little. */
    LATEST_FED,
    /** It was wet at the latest weighing: a loss is at least this, and no loss says little. */
    LATEST_WET,
    /** Nobody knows how long it had not eaten at one of the weighings. */
    FOOD_UNKNOWN,
    /** Compared over a change of scale, through a same-day pair. */
    THROUGH_PAIR,
    /** The slope has some readings of a fed or wet animal in it. */
    SLOPE_HOLDS_HEAVY,
    /** The latest weighing is too old to say how things are now. */
    STALE;

    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
