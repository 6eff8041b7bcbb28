package varanid.intake.condition;

/**
 * A straight line through ln mass on ln length.
 *
 * @param slope by least squares
 * @param correlation Pearson's, -1 to 1, not 0
 */
public record LogLogFit(double slope, double correlation) {

    /**
     * Fits one.
     *
     * @param lengths greater than zero, not all the same
     * @param masses as many
     */
    public static LogLogFit of(double[] lengths, double[] masses) {
        if (lengths.length != masses.length || lengths.length < 3) {
            throw new IllegalArgumentException("a fit needs three pairs of length and mass or more");
        }
        double meanLength = 0;
        double meanMass = 0;
        for (int i = 0; i < lengths.length; i++) {
            meanLength += Math.log(lengths[i]) / lengths.length;
            meanMass += Math.log(masses[i]) / lengths.length;
        }
        double squaresOfLength = 0;
        double squaresOfMass = 0;
        double products = 0;
        for (int i = 0; i < lengths.length; i++) {
            double length = Math.log(lengths[i]) - meanLength;
            double mass = Math.log(masses[i]) - meanMass;
            squaresOfLength += length * length;
            squaresOfMass += mass * mass;
            products += length * mass;
        }
        if (!(squaresOfLength > 0 && squaresOfMass > 0)) {
            throw new IllegalArgumentException("all lengths or all masses are the same");
        }
        return new LogLogFit(products / squaresOfLength, products / Math.sqrt(squaresOfLength * squaresOfMass));
    }

    /** Slope of the standardised major axis: the ratio of the standard deviations, with the sign of the correlation. */
    public double majorAxisSlope() {
        return slope / correlation;
    }
}
