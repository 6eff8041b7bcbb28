package varanid.intake.enclosure;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What one source says of one quantity, for one species at some life stages.
 *
 * @param species genus and species; {@code any} for what holds for all
 * @param lifeStages their codes; all where empty
 * @param lowest in degrees Celsius or percent; null where it is open downward
 * @param highest likewise; null where it is open upward
 * @param kind what sort of source it is
 * @param onlyWhere what else must be measured for it to apply; null where nothing
 * @param note what a reader of it should know
 * @param source letters of its sources
 */
public record HusbandryRange(
        String species,
        List<String> lifeStages,
        Quantity quantity,
        @Nullable BigDecimal lowest,
        @Nullable BigDecimal highest,
        Kind kind,
        @Nullable OnlyWhere onlyWhere,
        String note,
        List<String> source) {

    static final String ANY = "any";

    /** What sort of source a range has. */
    public enum Kind {
        PUBLISHED,
        COMMON_PRACTICE,
        PROPOSAL,
        /** Measured on wild animals. Shown, never judged by: a body is no enclosure. */
        FIELD;

        String code() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** Where a value lies to a range. */
    public enum Side {
        BELOW,
        WITHIN,
        ABOVE
    }

    /**
     * @param quantity what must have been measured
     * @param atMost and be no more than this
     */
    public record OnlyWhere(Quantity quantity, BigDecimal atMost) {}

    public HusbandryRange {
        lifeStages = List.copyOf(lifeStages);
        source = List.copyOf(source);
        if (lowest == null && highest == null || lowest != null && highest != null && lowest.compareTo(highest) > 0) {
            throw new IllegalArgumentException("no range of " + quantity.code() + " for " + species);
        }
    }

    boolean isFor(String otherSpecies, String lifeStage) {
        return (species.equals(ANY) || species.equals(otherSpecies))
                && (lifeStages.isEmpty() || lifeStages.contains(lifeStage));
    }

    boolean appliesTo(EnclosureReading reading) {
        return onlyWhere == null
                || reading.findCelsius(onlyWhere.quantity())
                        .filter(each -> each.compareTo(onlyWhere.atMost()) <= 0)
                        .isPresent();
    }

    /** Whether some value is within both. */
    boolean meets(HusbandryRange other) {
        return !isBelow(other) && !other.isBelow(this);
    }

    private boolean isBelow(HusbandryRange other) {
        return highest != null && other.lowest != null && highest.compareTo(other.lowest) < 0;
    }

    Side sideOf(BigDecimal value) {
        if (lowest != null && value.compareTo(lowest) < 0) {
            return Side.BELOW;
        }
        return highest != null && value.compareTo(highest) > 0 ? Side.ABOVE : Side.WITHIN;
    }
}
