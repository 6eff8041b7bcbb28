package varanid.intake.weight;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.function.Function;

/** Where a statement about the weight comes from. */
public sealed interface TrendEvidence {

    /** Two readings. */
    record TwoReadings(PercentChange change) implements TrendEvidence {}

    /** A slope through five weighing days or more; what the scales may hide is in its ends. */
    record Slope(WeightSlope slope, WeightSlope.Interval interval) implements TrendEvidence {}

    /** The lowest change, in percent, over {@link #overDays}. */
    default BigDecimal lowest() {
        return fold(
                two -> two.change().lowest(),
                it -> percent(it.slope().percentOverAll(it.interval().lowestWithRounding()), RoundingMode.FLOOR));
    }

    /** The highest change, in percent, over {@link #overDays}. */
    default BigDecimal highest() {
        return fold(
                two -> two.change().highest(),
                it -> percent(it.slope().percentOverAll(it.interval().highestWithRounding()), RoundingMode.CEILING));
    }

    /** Over how many days. */
    default int overDays() {
        return fold(two -> two.change().overDays(), it -> it.slope().overDays());
    }

    /** The one place where the kinds are told apart. */
    default <T> T fold(Function<TwoReadings, T> twoReadings, Function<Slope, T> slope) {
        return this instanceof TwoReadings it ? twoReadings.apply(it) : slope.apply((Slope) this);
    }

    private static BigDecimal percent(double value, RoundingMode rounding) {
        return BigDecimal.valueOf(value).setScale(PercentChange.DECIMALS, rounding);
    }
}
