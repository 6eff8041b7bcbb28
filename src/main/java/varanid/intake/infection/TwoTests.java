package varanid.intake.infection;

/**
 * Two different tests of one animal that fail together more often than by chance.
 *
 * <p>Covariance among infected animals: standard in veterinary epidemiology (from memory). Among animals that are not
 * infected the tests are taken as independent.
 *
 * @param first how good the first is
 * @param second how good the second is
 * @param covariance of the two among infected animals, from 0 to {@link #greatestCovariance}
 */
public record TwoTests(TestQuality first, TestQuality second, double covariance) {

    /** @throws IllegalArgumentException where the covariance is more than these two tests can have, or negative */
    public TwoTests {
        double greatest = greatestCovariance(first, second);
        if (!(covariance >= 0 && covariance <= greatest + Numbers.SAME)) {
            throw new IllegalArgumentException(
                    "the covariance of these two tests lies from 0 to " + greatest + ", not at " + covariance);
        }
    }

    /** With this covariance whatever the better test misses, the other misses too. */
    public static double greatestCovariance(TestQuality first, TestQuality second) {
        return Math.min(first.sensitivity(), second.sensitivity()) - first.sensitivity() * second.sensitivity();
    }

    /** The probability that both are negative in an infected animal. */
    public double bothNegativeIfInfected() {
        return (1 - first.sensitivity()) * (1 - second.sensitivity()) + covariance;
    }

    /**
     * The probability of freedom when both were negative.
     *
     * @param prior the probability that the animal is infected before any test, 0 to 1
     */
    public double freedomAfterBothNegative(double prior) {
        double infected = Numbers.fraction("the prior", prior) * bothNegativeIfInfected();
        double free = (1 - prior) * first.specificity() * second.specificity();
        return infected + free == 0 ? 1 - prior : free / (infected + free);
    }
}
