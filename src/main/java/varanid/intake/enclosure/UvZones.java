package varanid.intake.enclosure;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * The UV zones of reptiles, after the exposure measured on wild ones (Ferguson 2010, Baines 2016).
 *
 * <p>The ranges of the zones touch and overlap, so one reading may fit two zones, and some fit none: every question is
 * answered with a set.
 *
 * @param zones in order
 * @param unsafeFrom a UV index at the animal from which on it is unsafe
 * @param species genus and species to the zones it belongs to
 */
public record UvZones(List<Zone> zones, BigDecimal unsafeFrom, Map<String, SpeciesZones> species) {

    /** One UV index is 25 mW/m² of erythemally weighted irradiance. */
    private static final BigDecimal INDEX_PER_WATT_PER_SQUARE_METRE = BigDecimal.valueOf(40);

    /**
     * @param number one to four
     * @param mean the mean UV index of animals of the zone
     * @param maximum the highest UV index recorded at them
     */
    public record Zone(int number, Span mean, Span maximum) {}

    /** From one UV index to another, ends included. */
    public record Span(BigDecimal from, BigDecimal to) {

        public Span {
            if (from.compareTo(to) > 0) {
                throw new IllegalArgumentException("no span: " + from + " to " + to);
            }
        }

        boolean holds(BigDecimal index) {
            return index.compareTo(from) >= 0 && index.compareTo(to) <= 0;
        }
    }

    /**
     * @param zones numbers of its zones
     * @param confirmed whether somebody saw the published assessment
     * @param source letters of its sources
     */
    public record SpeciesZones(List<Integer> zones, boolean confirmed, List<String> source) {
        public SpeciesZones {
            zones = List.copyOf(zones);
            source = List.copyOf(source);
        }
    }

    public UvZones {
        zones = List.copyOf(zones);
        species = Map.copyOf(species);
    }

    /** The UV index of an irradiance in watts per square metre that was weighted for erythema. */
    public static BigDecimal indexOf(BigDecimal wattsPerSquareMetre) {
        return wattsPerSquareMetre.multiply(INDEX_PER_WATT_PER_SQUARE_METRE);
    }

    /** The zones whose animals have such a mean. */
    public SortedSet<Integer> listByMean(BigDecimal index) {
        return list(Zone::mean, index);
    }

    /** The zones at whose animals such a maximum was recorded. */
    public SortedSet<Integer> listByMaximum(BigDecimal index) {
        return list(Zone::maximum, index);
    }

    private SortedSet<Integer> list(Function<Zone, Span> span, BigDecimal index) {
        SortedSet<Integer> numbers = new TreeSet<>();
        zones.stream().filter(each -> span.apply(each).holds(index)).forEach(each -> numbers.add(each.number()));
        return numbers;
    }

    Optional<SpeciesZones> findSpecies(String name) {
        return Optional.ofNullable(species.get(name));
    }

    /** Where a maximum lies to everything that was recorded in those zones. */
    HusbandryRange.Side sideOf(BigDecimal maximum, SpeciesZones where) {
        List<Span> spans = zones.stream()
                .filter(each -> where.zones().contains(each.number()))
                .map(Zone::maximum)
                .toList();
        if (spans.stream().allMatch(each -> maximum.compareTo(each.from()) < 0)) {
            return HusbandryRange.Side.BELOW;
        }
        return spans.stream().allMatch(each -> maximum.compareTo(each.to()) > 0)
                ? HusbandryRange.Side.ABOVE
                : HusbandryRange.Side.WITHIN;
    }
}
