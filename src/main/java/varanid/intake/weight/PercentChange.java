package varanid.intake.weight;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.temporal.ChronoUnit;
import java.util.Set;

/**
 * The change between two weighings, in percent of the first; a loss is negative.
 *
 * <p>The ends are worst cases: a display of m with step d stands for m - d/2 to m + d/2. They are the whole truth about
 * the scales, and say nothing of what is in the gut; that is what the caveats are for.
 *
 * @param from the reference
 * @param to the later one
 * @param overDays local dates between the two, one or more
 * @param lowest the lowest change the two displays allow
 * @param percent the change between what was displayed
 * @param highest the highest change the two displays allow
 * @param caveats what may have moved it besides the animal's own mass
 */
public record PercentChange(
        Weighing from,
        Weighing to,
        int overDays,
        BigDecimal lowest,
        BigDecimal percent,
        BigDecimal highest,
        Set<Caveat> caveats) {

    /** Decimals of a percentage; the lowest is rounded down, the highest up. */
    static final int DECIMALS = 6;

    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    public PercentChange {
        caveats = Set.copyOf(caveats);
        if (overDays < 1 || lowest.compareTo(percent) > 0 || percent.compareTo(highest) > 0) {
            throw new IllegalArgumentException(
                    "no change: " + lowest + ", " + percent + ", " + highest + " over " + overDays + " days");
        }
    }

    static PercentChange between(Weighing from, GramRange before, Weighing to, GramRange after, Set<Caveat> caveats) {
        return new PercentChange(
                from,
                to,
                Math.toIntExact(ChronoUnit.DAYS.between(from.day(), to.day())),
                percent(before.highest(), after.lowest(), RoundingMode.FLOOR),
                percent(before.shown(), after.shown(), RoundingMode.HALF_EVEN),
                percent(before.lowest(), after.highest(), RoundingMode.CEILING),
                caveats);
    }

    private static BigDecimal percent(BigDecimal before, BigDecimal after, RoundingMode rounding) {
        return after.subtract(before).multiply(HUNDRED).divide(before, DECIMALS, rounding);
    }

    /** Specific growth rate between the displayed masses, 100 ln(m2/m1)/days, in percent a day. */
    public double growthPercentPerDay() {
        return 100 * Math.log1p(percent.doubleValue() / 100) / overDays;
    }

    /** Whether the change is that or lower, whatever the scales and the gut hide. */
    boolean isSurelyAtMost(BigDecimal percentage) {
        return !caveats.contains(Caveat.REFERENCE_FED)
                && !caveats.contains(Caveat.REFERENCE_WET)
                && highest.compareTo(percentage) <= 0;
    }

    /** Whether the change is above that, whatever the scales and the gut hide. */
    boolean isSurelyAbove(BigDecimal percentage) {
        return !caveats.contains(Caveat.LATEST_FED)
                && !caveats.contains(Caveat.LATEST_WET)
                && lowest.compareTo(percentage) > 0;
    }
}
