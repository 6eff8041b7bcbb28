package varanid.intake.scoring;

import java.util.function.IntUnaryOperator;

/**
 * What one more answer is worth: how much it lowers the loss that must be expected when deciding now.
 *
 * <p>Findings are taken as independent; totals are summed exactly, by convolution over points and floors.
 */
final class DecisionValue {

    /** One possible answer. */
    record Option(double chance, int points, int floor) {}

    private final Option[][] items;
    private final IntUnaryOperator outcomeOfTotal;
    private final int cap;
    private final double[][] losses;
    private final double[] values;
    private final double[] informationBits;

    /**
     * @param items the options of each unanswered finding; points are at least 0
     * @param cap a total at and above which the outcome of the total no longer changes
     * @param losses a row for each outcome decided on, a column for each outcome needed
     */
    DecisionValue(
            Option[][] items,
            int answeredTotal,
            int answeredFloor,
            IntUnaryOperator outcomeOfTotal,
            int cap,
            double[][] losses) {
        this.items = items;
        this.outcomeOfTotal = outcomeOfTotal;
        this.cap = cap;
        this.losses = losses;
        values = new double[items.length];
        informationBits = new double[items.length];
        double[][] start = new double[cap + 1][losses.length];
        start[Math.min(cap, Math.max(0, answeredTotal))][answeredFloor] = 1;
        if (items.length > 0) {
            leaveEachOut(0, items.length, start);
        }
    }

    /** For each item, the expected loss saved by knowing it. Never negative. */
    double[] values() {
        return values.clone();
    }

    /** For each item, the expected drop of the outcome's entropy in bits. Never negative. */
    double[] informationBits() {
        return informationBits.clone();
    }

    /** Each item must be weighed against all the others: halving shares the work of adding those up. */
    private void leaveEachOut(int from, int to, double[][] others) {
        if (to - from == 1) {
            weigh(from, others);
            return;
        }
        int middle = (from + to) / 2;
        leaveEachOut(from, middle, withAll(middle, to, others));
        leaveEachOut(middle, to, withAll(from, middle, others));
    }

    private double[][] withAll(int from, int to, double[][] distribution) {
        double[][] result = distribution;
        for (int i = from; i < to; i++) {
            double[][] next = new double[cap + 1][losses.length];
            for (Option option : items[i]) {
                add(result, option, option.chance(), next);
            }
            result = next;
        }
        return result;
    }

    private void add(double[][] distribution, Option option, double chance, double[][] into) {
        for (int total = 0; total <= cap; total++) {
            for (int floor = 0; floor < losses.length; floor++) {
                double here = distribution[total][floor];
                if (here > 0) {
                    into[Math.min(cap, total + option.points())][Math.max(floor, option.floor())] += chance * here;
                }
            }
        }
    }

    private void weigh(int item, double[][] others) {
        double[] before = new double[losses.length];
        double after = 0;
        double entropyAfter = 0;
        for (Option option : items[item]) {
            double[][] shifted = new double[cap + 1][losses.length];
            add(others, option, 1, shifted);
            double[] outcomes = outcomes(shifted);
            for (int o = 0; o < outcomes.length; o++) {
                before[o] += option.chance() * outcomes[o];
            }
            after += option.chance() * leastLoss(outcomes);
            entropyAfter += option.chance() * entropy(outcomes);
        }
        values[item] = Math.max(0, leastLoss(before) - after);
        informationBits[item] = Math.max(0, entropy(before) - entropyAfter);
    }

    private double[] outcomes(double[][] distribution) {
        double[] outcomes = new double[losses.length];
        for (int total = 0; total <= cap; total++) {
            int byTotal = outcomeOfTotal.applyAsInt(total);
            for (int floor = 0; floor < losses.length; floor++) {
                outcomes[Math.max(byTotal, floor)] += distribution[total][floor];
            }
        }
        return outcomes;
    }

    private double leastLoss(double[] outcomes) {
        double least = Double.POSITIVE_INFINITY;
        for (double[] row : losses) {
            double expected = 0;
            for (int o = 0; o < outcomes.length; o++) {
                expected += row[o] * outcomes[o];
            }
            least = Math.min(least, expected);
        }
        return least;
    }

    private static double entropy(double[] outcomes) {
        double bits = 0;
        for (double p : outcomes) {
            if (p > 0) {
                bits -= p * Math.log(p) / Math.log(2);
            }
        }
        return bits;
    }
}
