package varanid.intake.infection;

/** How many negative tests a target takes. */
public sealed interface TestsNeeded {

    /** @param tests how many, zero or more */
    record Number(int tests) implements TestsNeeded {}

    /**
     * No number of tests reaches it.
     *
     * @param highest the highest probability of freedom that was reached
     */
    record NotReachable(double highest) implements TestsNeeded {}
}
