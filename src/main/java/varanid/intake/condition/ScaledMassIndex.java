package varanid.intake.condition;

/**
 * The mass an animal would have at a reference length (Peig and Green 2009): M (L0/L)^b.
 *
 * <p>Use it on one animal over time, or within one species. In 883 tegus the best of eleven indices from mass and length
 * explained at most 19 % of the variation in fat (McCaffrey 2023), so it is a number beside others and decides nothing.
 */
public final class ScaledMassIndex {

    private ScaledMassIndex() {}

    /**
     * The index in grams.
     *
     * @param grams mass
     * @param millimetres length of the animal
     * @param reference the fixed length, in the same unit
     * @param slope of the standardised major axis of ln mass on ln length
     */
    public static double grams(double grams, double millimetres, double reference, double slope) {
        if (!(grams > 0 && millimetres > 0 && reference > 0)) {
            throw new IllegalArgumentException("masses and lengths are greater than zero");
        }
        return grams * Math.pow(reference / millimetres, slope);
    }

    /**
     * Whether two readings of one animal may be compared by it: not a hatchling with the adult it became.
     *
     * @param one a length
     * @param other another, in the same unit
     */
    public static boolean makesSense(double one, double other, ConditionRules rules) {
        return Math.min(one, other) >= rules.index().shortestOfLongest() * Math.max(one, other);
    }
}
