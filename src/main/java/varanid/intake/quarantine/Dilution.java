package varanid.intake.quarantine;

/**
 * So many parts of a stock solution to so many parts of water. "1:32" of a label is 1 part to 32 parts of water; "one in
 * ten" is 1 part to 9.
 *
 * @param stockPercent of the active substance in the stock, more than 0, at most 100
 * @param partsStock more than 0
 * @param partsWater 0 or more; 0 is undiluted
 */
public record Dilution(double stockPercent, double partsStock, double partsWater) {

    /** @throws IllegalArgumentException where it cannot be mixed */
    public Dilution {
        if (!(stockPercent > 0 && stockPercent <= 100 && partsStock > 0 && partsWater >= 0)) {
            throw new IllegalArgumentException(
                    "cannot be mixed: " + partsStock + " of " + stockPercent + " % to " + partsWater + " of water");
        }
    }

    /** Percent of the active substance in the mixture. */
    public double percent() {
        return stockPercent * partsStock / (partsStock + partsWater);
    }

    /** Parts per million of the active substance in the mixture: one percent is ten thousand. */
    public double partsPerMillion() {
        return percent() * 10_000;
    }
}
