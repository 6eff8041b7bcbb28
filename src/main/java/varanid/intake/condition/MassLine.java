package varanid.intake.condition;

/**
 * A published line of mass from length: log10 of grams = intercept + slope · log10 of millimetres from snout to vent.
 *
 * @param id its code
 * @param intercept for grams and millimetres; never natural logarithms, never centimetres
 * @param slope how steeply mass rises with length, about 3
 * @param about what it was fitted to, and where it was published
 */
public record MassLine(String id, double intercept, double slope, String about) {

    /** @throws IllegalArgumentException where the slope is not positive */
    public MassLine {
        if (slope <= 0) {
            throw new IllegalArgumentException("longer animals are heavier: " + id);
        }
    }

    /**
     * The mass it expects, in grams.
     *
     * @param snoutVentMillimetres greater than zero
     */
    public double expectedGrams(double snoutVentMillimetres) {
        if (!(snoutVentMillimetres > 0)) {
            throw new IllegalArgumentException("a length is greater than zero, not " + snoutVentMillimetres);
        }
        return Math.pow(10, intercept + slope * Math.log10(snoutVentMillimetres));
    }

    /** Relative condition Kn: 1 on the line, without unit. */
    public double relativeCondition(double grams, double snoutVentMillimetres) {
        return grams / expectedGrams(snoutVentMillimetres);
    }
}
