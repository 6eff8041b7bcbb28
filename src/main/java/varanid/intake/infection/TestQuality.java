package varanid.intake.infection;

/**
 * How good a test is.
 *
 * @param sensitivity the probability that it is positive in an infected animal, 0 to 1
 * @param specificity the probability that it is negative in an animal that is not, 0 to 1
 */
public record TestQuality(double sensitivity, double specificity) {

    /** @throws IllegalArgumentException where one of them lies outside 0 to 1 */
    public TestQuality {
        Numbers.fraction("sensitivity", sensitivity);
        Numbers.fraction("specificity", specificity);
    }

    /** Whether a negative result speaks for freedom at all. */
    public boolean isInformative() {
        return sensitivity + specificity > 1;
    }
}
