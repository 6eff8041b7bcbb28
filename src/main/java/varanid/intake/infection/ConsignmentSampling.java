package varanid.intake.infection;

import org.apache.commons.statistics.distribution.HypergeometricDistribution;

/**
 * How many animals of a consignment to sample so as to find at least one infected animal, if there are so many.
 *
 * <p>Exact: drawn without putting back (hypergeometric), a sampled infected animal being found with the sensitivity of
 * the test; specificity is taken as 1. The usual closed formulas are off by an animal here and there and are not used.
 * Sample size is not monotone in the size of the consignment when the prevalence is a percentage, because the number of
 * infected animals goes up in steps.
 *
 * @param animals how many animals there are, one or more
 * @param infected how many infected ones should not be missed, one to all
 * @param sensitivity the probability that the test finds a sampled infected animal, 0 to 1
 */
public record ConsignmentSampling(int animals, int infected, double sensitivity) {

    /** @throws IllegalArgumentException where the numbers do not fit each other */
    public ConsignmentSampling {
        Numbers.atLeast(1, "the number of animals", animals);
        Numbers.atLeast(1, "the number of infected animals", infected);
        Numbers.fraction("the sensitivity", sensitivity);
        if (infected > animals) {
            throw new IllegalArgumentException("there cannot be " + infected + " infected among " + animals);
        }
    }

    /**
     * Where at least such a part is infected: the number of animals is rounded up, and never zero.
     *
     * @param prevalence more than 0, at most 1
     */
    public static ConsignmentSampling atPrevalence(int animals, double prevalence, double sensitivity) {
        if (!(prevalence > 0 && prevalence <= 1)) {
            throw new IllegalArgumentException("the prevalence is more than 0 and at most 1, not " + prevalence);
        }
        // 0.07 * 100 is 7.000000000000001 in binary, which is seven animals and not eight.
        int infected = (int) Math.ceil(animals * prevalence - 1e-9);
        return new ConsignmentSampling(animals, Math.max(1, infected), sensitivity);
    }

    /** The probability that at least one infected animal is found among so many sampled ones. */
    public double detection(int sampled) {
        Numbers.atLeast(0, "the number of sampled animals", sampled);
        if (sampled > animals) {
            throw new IllegalArgumentException("there are only " + animals + " animals to sample, not " + sampled);
        }
        if (sampled == 0) {
            return 0;
        }
        var drawn = HypergeometricDistribution.of(animals, infected, sampled);
        double missed = 0;
        for (int y = drawn.getSupportLowerBound(); y <= drawn.getSupportUpperBound(); y++) {
            double missedAll = Math.pow(1 - sensitivity, y);
            if (missedAll == 0) {
                break;
            }
            missed += drawn.probability(y) * missedAll;
        }
        return Math.min(1, Math.max(0, 1 - missed));
    }

    /**
     * The smallest number of animals to sample.
     *
     * @param confidence the probability of finding at least one, between 0 and 1
     */
    public SampleSize sampleSize(double confidence) {
        Numbers.openFraction("the confidence", confidence);
        double ceiling = detection(animals);
        if (!Numbers.reaches(ceiling, confidence)) {
            return new SampleSize.NotReachable(ceiling);
        }
        int tooFew = 0;
        int enough = animals;
        while (enough - tooFew > 1) {
            int middle = tooFew + (enough - tooFew) / 2;
            if (Numbers.reaches(detection(middle), confidence)) {
                enough = middle;
            } else {
                tooFew = middle;
            }
        }
        return new SampleSize.Animals(enough, detection(enough));
    }

    /** The smallest number out of a group without end, such as all that one exporter sends. */
    public static SampleSize sampleSizeWithoutEnd(double prevalence, double sensitivity, double confidence) {
        double found =
                Numbers.fraction("the prevalence", prevalence) * Numbers.fraction("the sensitivity", sensitivity);
        Numbers.openFraction("the confidence", confidence);
        if (found == 0) {
            return new SampleSize.NotReachable(0);
        }
        int number = Math.max(1, (int) Math.ceil(Math.log1p(-confidence) / Math.log1p(-found) - 1e-9));
        return new SampleSize.Animals(number, 1 - Math.pow(1 - found, number));
    }
}
