package varanid.intake.infection;

import java.util.List;

/**
 * What negative tests of one animal say about it, by Bayes' rule.
 *
 * <p>Two readings of repeats are given side by side. <em>Independent</em>: each test is a new chance to find the
 * infection. <em>Correlated</em>: an animal that sheds little fails one test after the other; the number of tests failed
 * among n is then beta-binomial, with a correlation between 0 (independent) and 1 (a repeat adds nothing). A decision
 * to lift a quarantine should not rest on more than the correlated reading.
 *
 * @param prior the probability that the animal is infected before any test, 0 to 1
 * @param test how good each of the tests is
 */
public record NegativeTests(double prior, TestQuality test) {

    /** The most tests that are ever counted as reaching a target: nobody takes more of one animal. */
    public static final int MOST_TESTS = 1000;

    /** @throws IllegalArgumentException where the prior lies outside 0 to 1 */
    public NegativeTests {
        Numbers.fraction("the prior", prior);
    }

    /** The probability of freedom after so many negative tests and no positive one, tests being independent. */
    public double freedomIfIndependent(int negatives) {
        return freedom(negatives, 0);
    }

    /**
     * The same where tests of one animal fail together.
     *
     * @param correlation of the tests of one infected animal, 0 to 1
     */
    public double freedomIfCorrelated(int negatives, double correlation) {
        Numbers.fraction("the correlation", correlation);
        return freedom(negatives, correlation);
    }

    /** The probability that so many tests of an infected animal are all negative. */
    public double allNegativeIfInfected(int negatives, double correlation) {
        Numbers.atLeast(0, "the number of tests", negatives);
        Numbers.fraction("the correlation", correlation);
        double probability = 1;
        for (int k = 0; k < negatives; k++) {
            probability *= negativeAgain(k, correlation);
        }
        return probability;
    }

    /** The probability that at least one of so many tests is positive in an animal that is not infected. */
    public double falseAlarm(int tests) {
        return 1 - Math.pow(test.specificity(), Numbers.atLeast(0, "the number of tests", tests));
    }

    /** Both readings at once. */
    public Freedom freedomAfter(int negatives, double correlation) {
        return new Freedom(
                negatives,
                freedomIfIndependent(negatives),
                correlation,
                freedomIfCorrelated(negatives, correlation),
                falseAlarm(negatives));
    }

    /**
     * How many negative tests make freedom at least so probable, tests being independent; none where it is as probable
     * without a test.
     *
     * @param target the probability asked for, between 0 and 1
     */
    public TestsNeeded neededIfIndependent(double target) {
        Numbers.openFraction("the target", target);
        if (Numbers.reaches(1 - prior, target)) {
            return new TestsNeeded.Number(0);
        }
        if (prior == 1 || !test.isInformative()) {
            return new TestsNeeded.NotReachable(1 - prior);
        }
        double odds = Math.log(target / (1 - target) * prior / (1 - prior));
        double about = Math.ceil(odds / Math.log(test.specificity() / (1 - test.sensitivity())));
        if (about > MOST_TESTS) {
            return new TestsNeeded.NotReachable(freedomIfIndependent(MOST_TESTS));
        }
        // The logarithms round: try the neighbours too. At least one test, for the target is not reached without.
        int number = Math.max(1, (int) about - 1);
        while (!Numbers.reaches(freedomIfIndependent(number), target)) {
            number++;
        }
        return new TestsNeeded.Number(number);
    }

    /**
     * The same for correlated tests. A test with false positives has a best number: with more
     * tests than that, an infected animal stays negative about as easily as a free one.
     */
    public TestsNeeded neededIfCorrelated(double target, double correlation) {
        Numbers.openFraction("the target", target);
        double best = 0;
        for (int number = 0; number <= MOST_TESTS; number++) {
            double freedom = freedomIfCorrelated(number, correlation);
            if (Numbers.reaches(freedom, target)) {
                return new TestsNeeded.Number(number);
            }
            best = Math.max(best, freedom);
        }
        return new TestsNeeded.NotReachable(best);
    }

    /** How many more it takes, tests being independent, when so many were negative already. */
    public TestsNeeded moreIfIndependent(double target, int already) {
        Numbers.openFraction("the target", target);
        if (Numbers.reaches(freedomIfIndependent(already), target)) {
            return new TestsNeeded.Number(0);
        }
        return neededIfIndependent(target) instanceof TestsNeeded.Number all && all.tests() > already
                ? new TestsNeeded.Number(all.tests() - already)
                : new TestsNeeded.NotReachable(
                        Math.max(freedomIfIndependent(already), freedomIfIndependent(Math.max(already, MOST_TESTS))));
    }

    /** The same for correlated tests; past the best number of tests, more do not help. */
    public TestsNeeded moreIfCorrelated(double target, double correlation, int already) {
        Numbers.openFraction("the target", target);
        double best = 0;
        for (int number = already; number <= Math.max(already, MOST_TESTS); number++) {
            double freedom = freedomIfCorrelated(number, correlation);
            if (Numbers.reaches(freedom, target)) {
                return new TestsNeeded.Number(number - already);
            }
            best = Math.max(best, freedom);
        }
        return new TestsNeeded.NotReachable(best);
    }

    /**
     * The probability of freedom after negative tests by several methods, all of them independent: the product of what
     * each misses.
     *
     * @param prior the probability that the animal is infected before any test, 0 to 1
     */
    public static double freedomAfterAll(double prior, List<Series> series) {
        Numbers.fraction("the prior", prior);
        if (prior == 0 || prior == 1) {
            return 1 - prior;
        }
        double odds = prior / (1 - prior);
        for (Series one : series) {
            for (int k = 0; k < one.negatives(); k++) {
                odds *= (1 - one.test().sensitivity()) / one.test().specificity();
            }
        }
        return 1 / (1 + odds);
    }

    /**
     * So many negatives by one method.
     *
     * @param test how good it is; its specificity is more than 0
     * @param negatives zero or more
     */
    public record Series(TestQuality test, int negatives) {
        public Series {
            Numbers.atLeast(0, "the number of tests", negatives);
            if (test.specificity() == 0) {
                throw new IllegalArgumentException("a test that is never negative in a free animal teaches nothing");
            }
        }
    }

    private double freedom(int negatives, double correlation) {
        Numbers.atLeast(0, "the number of tests", negatives);
        if (prior == 0 || prior == 1) {
            return 1 - prior;
        }
        // The odds of infection are kept as one number, for the two probabilities would both come to zero before it.
        double odds = prior / (1 - prior);
        for (int k = 0; k < negatives; k++) {
            double ifInfected = negativeAgain(k, correlation);
            if (ifInfected == 0 && test.specificity() == 0) {
                // No animal could test like this: the tests contradict what was assumed, and teach nothing.
                return 1 - prior;
            }
            odds *= ifInfected / test.specificity();
        }
        return 1 / (1 + odds);
    }

    /** The probability that an infected animal is negative once more after it was so k times. */
    private double negativeAgain(int k, double correlation) {
        // With full correlation the formula would be 0/0 at the first test, whose answer is plain.
        return k == 0
                ? 1 - test.sensitivity()
                : ((1 - test.sensitivity()) * (1 - correlation) + k * correlation)
                        / ((1 - correlation) + k * correlation);
    }

    /**
     * Both readings of the same tests.
     *
     * @param negatives how many tests, all negative
     * @param independent probability of freedom with independent tests
     * @param correlation what was assumed for the other reading
     * @param correlated probability of freedom with tests so correlated
     * @param falseAlarm the probability that so many tests of a free animal would give at least one positive
     */
    public record Freedom(
            int negatives, double independent, double correlation, double correlated, double falseAlarm) {}
}
