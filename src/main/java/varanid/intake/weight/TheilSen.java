package varanid.intake.weight;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.Arrays;
import java.util.Collection;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The median of the slopes between all pairs of points with different x (Theil 1950, Sen 1968): up to 29 % of the points
 * may be anything without moving it far. Its interval comes from turning Kendall's test round: which slopes would that
 * test not reject?
 *
 * <p>Kendall's null distribution is exact here, with ties in x too: the number of discordant pairs is that of the
 * inversions of a random arrangement with repeated elements. Ties in y need nothing: the test is made on y - slope · x,
 * which has no ties but where the slope is that between two points.
 */
final class TheilSen {

    private final double[] x;
    private final double[] y;
    private final double[] slopes;

    /** @throws IllegalArgumentException where fewer than two different x are there */
    TheilSen(double[] x, double[] y) {
        this.x = x.clone();
        this.y = y.clone();
        this.slopes = slopes(x, y, y);
        if (slopes.length == 0) {
            throw new IllegalArgumentException("a slope needs two different x");
        }
    }

    /** How many pairs have a slope. */
    int pairs() {
        return slopes.length;
    }

    double slope() {
        return median(slopes);
    }

    double intercept() {
        return median(sorted(y)) - slope() * median(sorted(x));
    }

    /** Kendall's S: concordant minus discordant pairs. */
    int s() {
        return Arrays.stream(slopes).mapToInt(each -> (int) Math.signum(each)).sum();
    }

    /**
     * The interval that holds the slope with at least that confidence; empty where there are too few points for any.
     *
     * @param confidence such as 0.95
     */
    Optional<Interval> interval(double confidence) {
        return interval(confidence, y, y);
    }

    /**
     * The same where each y is known only within bounds: it holds the interval of every choice of y within them.
     *
     * @param lowest the lowest each y can be
     * @param highest the highest each y can be
     */
    Optional<Interval> interval(double confidence, double[] lowest, double[] highest) {
        Kendall kendall = Kendall.of(x);
        int outside = kendall.outside((1 - confidence) / 2);
        if (outside < 0) {
            return Optional.empty();
        }
        double[] lowSlopes = slopes(x, highest, lowest);
        double[] highSlopes = slopes(x, lowest, highest);
        return Optional.of(new Interval(
                lowSlopes[outside],
                highSlopes[highSlopes.length - 1 - outside],
                outside + 1,
                highSlopes.length - outside,
                1 - 2 * kendall.atMost(outside)));
    }

    /** The sorted slopes, from the earlier y of one array to the later y of another. */
    private static double[] slopes(double[] x, double[] earlier, double[] later) {
        double[] found = new double[x.length * (x.length - 1) / 2];
        int count = 0;
        for (int i = 0; i < x.length; i++) {
            for (int j = 0; j < x.length; j++) {
                if (x[i] < x[j]) {
                    found[count++] = (later[j] - earlier[i]) / (x[j] - x[i]);
                }
            }
        }
        return sorted(Arrays.copyOf(found, count));
    }

    private static double[] sorted(double[] values) {
        double[] copy = values.clone();
        Arrays.sort(copy);
        return copy;
    }

    private static double median(double[] sorted) {
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    /**
     * Two of the slopes between which the true one lies.
     *
     * @param lowRank which of the sorted slopes the lower end is, from one
     * @param highRank which of them the upper end is
     * @param coverage with which probability at least, for points scattered alike about a line
     */
    record Interval(double low, double high, int lowRank, int highRank, double coverage) {}

    /** How many pairs are discordant when nothing depends on anything. */
    static final class Kendall {

        private final BigInteger[] waysUpTo;

        private Kendall(BigInteger[] ways) {
            waysUpTo = ways.clone();
            Arrays.parallelPrefix(waysUpTo, BigInteger::add);
        }

        static Kendall of(double[] x) {
            TreeMap<Double, Integer> alike = new TreeMap<>();
            for (double each : x) {
                alike.merge(each, 1, Integer::sum);
            }
            return of(x.length, alike.values());
        }

        /**
         * The coefficients of [n]! / ([a]! [b]! …) for groups of a, b, … equal x, where [k]! is the product of
         * 1 + q + … + q^(j-1) for j up to k.
         */
        static Kendall of(int points, Collection<Integer> groups) {
            BigInteger[] ways = {BigInteger.ONE};
            for (int k = 2; k <= points; k++) {
                ways = times(ways, k);
            }
            for (int group : groups) {
                for (int k = 2; k <= group; k++) {
                    ways = over(ways, k);
                }
            }
            return new Kendall(ways);
        }

        private static BigInteger[] times(BigInteger[] ways, int k) {
            BigInteger[] product = new BigInteger[ways.length + k - 1];
            BigInteger window = BigInteger.ZERO;
            for (int i = 0; i < product.length; i++) {
                window = i < ways.length ? window.add(ways[i]) : window;
                window = i >= k ? window.subtract(ways[i - k]) : window;
                product[i] = window;
            }
            return product;
        }

        private static BigInteger[] over(BigInteger[] ways, int k) {
            BigInteger[] quotient = new BigInteger[ways.length - k + 1];
            for (int i = 0; i < quotient.length; i++) {
                quotient[i] = ways[i].subtract(i > 0 ? ways[i - 1] : BigInteger.ZERO)
                        .add(i >= k ? quotient[i - k] : BigInteger.ZERO);
            }
            return quotient;
        }

        /** The probability of at most so many discordant pairs. */
        double atMost(int discordant) {
            return new BigDecimal(waysUpTo[discordant])
                    .divide(new BigDecimal(waysUpTo[waysUpTo.length - 1]), MathContext.DECIMAL64)
                    .doubleValue();
        }

        /** The most discordant pairs that are still less likely than the tail; -1 where even none is not. */
        int outside(double tail) {
            int most = -1;
            while (most + 1 < waysUpTo.length && atMost(most + 1) <= tail) {
                most++;
            }
            return most;
        }
    }
}
