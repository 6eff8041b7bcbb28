package varanid.intake.infection;

import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * So many of so many, and how sure that is.
 *
 * @param count how many had it, from 0 to all
 * @param of how many were looked at, zero or more
 */
public record Proportion(int count, int of) {

    /** @throws IllegalArgumentException where there are more than were looked at, or fewer than none */
    public Proportion {
        Numbers.atLeast(0, "the number looked at", of);
        Numbers.atLeast(0, "the number that had it", count);
        if (count > of) {
            throw new IllegalArgumentException(count + " of " + of + " cannot be");
        }
    }

    /**
     * Wilson's score interval: for showing, near the stated confidence on average. From 0 to 1 when nothing was looked
     * at.
     *
     * @param confidence two-sided, between 0 and 1
     */
    public Interval wilson(double confidence) {
        Numbers.openFraction("the confidence", confidence);
        if (of == 0) {
            return Interval.WHOLE;
        }
        double z = NormalDistribution.of(0, 1).inverseSurvivalProbability((1 - confidence) / 2);
        double p = (double) count / of;
        double squared = z * z / of;
        double middle = p + squared / 2;
        double half = z * Math.sqrt(p * (1 - p) / of + squared / (4 * of));
        // At the ends the bound is exactly the end; the subtraction would leave a crumb.
        double lower = count == 0 ? 0 : (middle - half) / (1 + squared);
        double upper = count == of ? 1 : (middle + half) / (1 + squared);
        return new Interval(lower, upper);
    }

    /**
     * Clopper and Pearson's exact interval: never less sure than stated. From 0 where none had it, to 1 where all had:
     * there the distribution it is made from does not exist.
     *
     * @param confidence two-sided, between 0 and 1
     */
    public Interval clopperPearson(double confidence) {
        double tail = (1 - Numbers.openFraction("the confidence", confidence)) / 2;
        double lower =
                count == 0 ? 0 : BetaDistribution.of(count, of - count + 1.0).inverseCumulativeProbability(tail);
        double upper =
                count == of ? 1 : BetaDistribution.of(count + 1.0, of - count).inverseSurvivalProbability(tail);
        return new Interval(lower, upper);
    }

    /**
     * For none of n: the one-sided upper bound, about 3/n at 95 % ("rule of three": Hanley and Lippman-Hand 1983).
     * Smaller than the upper end of the two-sided intervals: say which is shown.
     *
     * @throws IllegalStateException where at least one had it, or nothing was looked at
     */
    public double upperBoundOfNone(double confidence) {
        Numbers.openFraction("the confidence", confidence);
        if (count != 0 || of == 0) {
            throw new IllegalStateException("this bound is for none of one or more, not for " + count + " of " + of);
        }
        return -Math.expm1(Math.log1p(-confidence) / of);
    }

    /**
     * From and to, both included.
     *
     * @param lower 0 or more
     * @param upper 1 or less, not below {@code lower}
     */
    public record Interval(double lower, double upper) {

        static final Interval WHOLE = new Interval(0, 1);

        /** @throws IllegalArgumentException where that is no interval within 0 and 1 */
        public Interval {
            if (!(0 <= lower && lower <= upper && upper <= 1)) {
                throw new IllegalArgumentException("no interval from 0 to 1: " + lower + " to " + upper);
            }
        }
    }
}
