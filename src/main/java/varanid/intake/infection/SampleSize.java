package varanid.intake.infection;

/** How many animals to sample. */
public sealed interface SampleSize {

    /**
     * So many are enough.
     *
     * @param number how many, one or more
     * @param detection the probability that so many find at least one infected animal
     */
    record Animals(int number, double detection) implements SampleSize {}

    /**
     * Even all of them are not enough, for the test misses too much.
     *
     * @param ceiling the probability of finding one when all are sampled
     */
    record NotReachable(double ceiling) implements SampleSize {}
}
