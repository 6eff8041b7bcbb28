package varanid.intake.enclosure;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import varanid.intake.measures.Temperature;

/**
 * What a reading says about the surroundings of an animal.
 *
 * @param quantities what was measured or worked out, beside the ranges for it
 * @param moisture empty without a humidity, or where it is too hot or cold for the equations
 * @param uv empty without a UV index
 * @param probablyFahrenheit temperatures given in Celsius that were probably read in Fahrenheit; to be asked about, and
 *     judged by nothing until then
 * @param signs what deserves advice, in the order of the data
 * @param staleSigns codes of those signs that rest on readings too old to speak of the day asked for
 * @param lessCertain findings whose answers it may explain, to the codes of the signs that do; they keep their points. A stale sign
 *     explains nothing
 * @param lookConditions conditions of a look that the skin temperature means, where it is not stale
 * @param cautions that are always said, or that the set-up asks for
 */
public record Surroundings(
        List<Judged> quantities,
        Optional<Moisture> moisture,
        Optional<Uv> uv,
        List<Quantity> probablyFahrenheit,
        List<HusbandryRules.Sign> signs,
        Set<String> staleSigns,
        SortedMap<String, SortedSet<String>> lessCertain,
        List<String> lookConditions,
        List<HusbandryRules.Caution> cautions) {

    /** Where a value lies to all ranges that apply to it. */
    public enum Standing {
        /** There are no figures for this species, life stage and quantity. Those of another are not used. */
        NO_FIGURES,
        /** Below every range. */
        BELOW,
        /** Within every range. */
        WITHIN,
        /** Above every range. */
        ABOVE,
        /** The sources disagree about this value. A vet or an experienced keeper chooses. */
        SOURCES_DISAGREE
    }

    /**
     * @param value in degrees Celsius, or percent
     * @param ranges each range for it, whether it applies or not
     */
    public record Judged(Quantity quantity, BigDecimal value, List<BesideRange> ranges, Standing standing) {
        public Judged {
            ranges = List.copyOf(ranges);
        }
    }

    /**
     * @param side where the value lies to it
     * @param applies whether what it depends on was measured, and it is a range to judge by
     */
    public record BesideRange(HusbandryRange range, HusbandryRange.Side side, boolean applies) {}

    /**
     * @param air as it was measured
     * @param dewPointCelsius a surface at or below gets wet
     * @param deficitKilopascals vapour pressure deficit
     * @param gramsPerCubicMetre absolute humidity
     * @param humidityPercentAt what the same moisture comes to at the other places, in percent; above 100, water settles
     * @param marginCelsius coldest surface minus dew point; empty where no surface was measured
     */
    public record Moisture(
            MoistAir air,
            double dewPointCelsius,
            double deficitKilopascals,
            double gramsPerCubicMetre,
            SortedMap<Quantity, Double> humidityPercentAt,
            Optional<Double> marginCelsius) {}

    /**
     * @param index as it was measured
     * @param zones at whose animals such a maximum was recorded; may be none or two
     * @param species the zones of the species; empty where nobody knows
     */
    public record Uv(BigDecimal index, SortedSet<Integer> zones, Optional<UvZones.SpeciesZones> species) {}

    public Surroundings {
        quantities = List.copyOf(quantities);
        probablyFahrenheit = List.copyOf(probablyFahrenheit);
        signs = List.copyOf(signs);
        staleSigns = Set.copyOf(staleSigns);
        lookConditions = List.copyOf(lookConditions);
        cautions = List.copyOf(cautions);
    }

    /**
     * Judges a reading.
     *
     * @param species genus and species, as the data writes it
     * @param lifeStage its code
     */
    public static Surroundings of(EnclosureReading reading, String species, String lifeStage, HusbandryRules rules) {
        return new SurroundingsFinder(reading, species, lifeStage, rules).find();
    }

    /** Those temperatures of a reading that say Celsius and were probably read in Fahrenheit. */
    public static List<Quantity> listProbablyFahrenheit(Map<Quantity, Temperature> temperatures) {
        return new TreeMap<>(temperatures)
                .entrySet().stream()
                        .filter(each -> each.getValue()
                                .isProbablyFahrenheit(each.getKey().place().orElseThrow()))
                        .map(Map.Entry::getKey)
                        .toList();
    }
}
