package varanid.intake.condition;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * How an animal's mass lies to the genus-wide band for its length: something to ask about, not a finding.
 *
 * @param place where it lies
 * @param lowestGrams lower end of the band at the length shown
 * @param highestGrams its upper end
 * @param expected what each line expects, at the length shown
 */
public record MassForLength(Place place, double lowestGrams, double highestGrams, List<Expected> expected) {

    public MassForLength {
        expected = List.copyOf(expected);
    }

    /** Where a mass lies. The question that goes with each is in the data. */
    public enum Place {
        /** Lighter than the band, whatever the instruments hide. */
        BELOW,
        /** Within the band, or the instruments are too coarse to tell. */
        WITHIN,
        /** Heavier than the band, whatever the instruments hide. */
        ABOVE;

        /** The code of its question. */
        public String code() {
            return name().toLowerCase(Locale.ROOT) + "-genus-wide-band";
        }
    }

    /**
     * @param line which line
     * @param grams what it expects
     * @param relativeCondition mass displayed over that, Kn
     */
    public record Expected(MassLine line, double grams, double relativeCondition) {}

    /**
     * Where the mass lies; empty for a length that no monitor has.
     *
     * @param grams the mass
     * @param snoutVentMillimetres the length from snout to vent, without the tail
     */
    public static Optional<MassForLength> find(Reading grams, Reading snoutVentMillimetres, ConditionRules rules) {
        double length = snoutVentMillimetres.shown();
        if (length < rules.shortestMillimetres() || length > rules.longestMillimetres()) {
            return Optional.empty();
        }
        Place place = Place.WITHIN;
        if (grams.highest() < lowest(snoutVentMillimetres.lowest(), rules)) {
            place = Place.BELOW;
        } else if (grams.lowest() > highest(snoutVentMillimetres.highest(), rules)) {
            place = Place.ABOVE;
        }
        return Optional.of(new MassForLength(
                place,
                lowest(length, rules),
                highest(length, rules),
                rules.lines().stream()
                        .map(line -> new Expected(
                                line, line.expectedGrams(length), line.relativeCondition(grams.shown(), length)))
                        .toList()));
    }

    private static double lowest(double millimetres, ConditionRules rules) {
        return rules.lines().stream()
                        .mapToDouble(line -> line.expectedGrams(millimetres))
                        .min()
                        .orElseThrow()
                / rules.scatter();
    }

    private static double highest(double millimetres, ConditionRules rules) {
        return rules.lines().stream()
                        .mapToDouble(line -> line.expectedGrams(millimetres))
                        .max()
                        .orElseThrow()
                * rules.scatter();
    }
}
