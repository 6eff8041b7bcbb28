package varanid.intake.enclosure;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * What is known and done about surroundings, as the data says.
 *
 * @param ranges of all species
 * @param uv zones
 * @param dampness when a surface counts as wet or nearly so
 * @param signs what deserves advice, each code once
 * @param lookConditions which condition of a look a skin temperature means
 * @param facts how an enclosure may be set up
 * @param cautions about lamps, mesh, cables, fire and water
 * @param sources what the letters of a source stand for
 */
public record HusbandryRules(
        List<HusbandryRange> ranges,
        UvZones uv,
        Dampness dampness,
        List<Sign> signs,
        List<LookCondition> lookConditions,
        List<Fact> facts,
        List<Caution> cautions,
        Map<String, String> sources) {

    /** The value of a fact that nobody stated. */
    public static final String UNKNOWN = "unknown";

    /** @throws IllegalArgumentException where the parts do not fit together, naming all that does not */
    public HusbandryRules {
        ranges = List.copyOf(ranges);
        signs = List.copyOf(signs);
        lookConditions = List.copyOf(lookConditions);
        facts = List.copyOf(facts);
        cautions = List.copyOf(cautions);
        sources = Map.copyOf(sources);
        Set<String> faults = new TreeSet<>();
        for (HusbandryRange each : ranges) {
            requireSources(each.quantity().code() + " of " + each.species(), each.source(), sources, faults);
        }
        for (Sign each : signs) {
            requireSources(each.code(), each.source(), sources, faults);
        }
        for (Caution each : cautions) {
            requireSources(each.id(), each.source(), sources, faults);
            String about = each.fact();
            if (about != null
                    && facts.stream()
                            .noneMatch(fact ->
                                    fact.id().equals(about) && fact.values().containsAll(each.values()))) {
                faults.add(each.id() + " is about no fact with such values");
            }
        }
        if (signs.stream().map(Sign::code).distinct().count() != signs.size()) {
            faults.add("a sign is there twice");
        }
        if (!faults.isEmpty()) {
            throw new IllegalArgumentException(String.join("; ", faults));
        }
    }

    private static void requireSources(String what, List<String> named, Map<String, String> known, Set<String> faults) {
        if (named.isEmpty() || !known.keySet().containsAll(named)) {
            faults.add(what + " has no known source");
        }
    }

    /**
     * @param marginCelsius a surface nearer to the dew point than this is nearly wet
     * @param surfaceHumidityPercent from this humidity at a surface on, mould grows
     */
    public record Dampness(BigDecimal marginCelsius, BigDecimal surfaceHumidityPercent) {}

    /**
     * Something about the surroundings that deserves advice.
     *
     * @param code its code
     * @param advice what to do, in words
     * @param lessCertain ids of findings whose answers it may explain; they keep their points
     * @param source letters of its sources
     */
    public record Sign(String code, String advice, List<String> lessCertain, List<String> source) {
        public Sign {
            lessCertain = List.copyOf(lessCertain);
            source = List.copyOf(source);
        }
    }

    /**
     * @param condition its code in the checklist
     * @param from skin temperature in degrees Celsius from which on; null where open
     * @param above the temperature that is not yet in it; null where open
     * @param below the temperature that is no longer in it; null where open
     */
    public record LookCondition(
            String condition,
            @Nullable BigDecimal from,
            @Nullable BigDecimal above,
            @Nullable BigDecimal below) {

        boolean holds(BigDecimal celsius) {
            return (from == null || celsius.compareTo(from) >= 0)
                    && (above == null || celsius.compareTo(above) > 0)
                    && (below == null || celsius.compareTo(below) < 0);
        }
    }

    /**
     * @param id its code
     * @param text the question
     * @param values what may be answered, {@code unknown} among them
     */
    public record Fact(String id, String text, List<String> values) {

        public Fact {
            values = List.copyOf(values);
            if (!values.contains(UNKNOWN)) {
                throw new IllegalArgumentException("nobody is forced to know: " + id);
            }
        }
    }

    /**
     * @param id its code
     * @param text in words
     * @param fact the fact it hangs on; null where it is always said
     * @param values of that fact for which it is said
     * @param source letters of its sources
     */
    public record Caution(String id, String text, @Nullable String fact, List<String> values, List<String> source) {

        public Caution {
            values = List.copyOf(values);
            source = List.copyOf(source);
        }

        boolean isSaidFor(EnclosureReading reading) {
            return fact == null || values.contains(reading.fact(fact));
        }
    }
}
