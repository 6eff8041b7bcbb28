package varanid.intake.enclosure;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import varanid.intake.measures.Length;
import varanid.intake.measures.Temperature;

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
 * @param measures how each quantity is measured, and what is believed of it without asking
 * @param freshness for how long a reading speaks
 * @param sizes lengths that are asked for
 * @param measureNext ids of quantities, facts and sizes, the most useful to know first
 * @param texts what is said of the whole, by code
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
        List<Measure> measures,
        Freshness freshness,
        List<Size> sizes,
        List<String> measureNext,
        Map<String, String> texts,
        Map<String, String> sources) {

    /** The value of a fact that nobody stated. */
    public static final String UNKNOWN = "unknown";

    /** The id of the UV index at the animal's back, beside the codes of quantities. */
    static final String UV_INDEX = "uv-index";

    /** @throws IllegalArgumentException where the parts do not fit together, naming all that does not */
    public HusbandryRules {
        ranges = List.copyOf(ranges);
        signs = List.copyOf(signs);
        lookConditions = List.copyOf(lookConditions);
        facts = List.copyOf(facts);
        cautions = List.copyOf(cautions);
        measures = List.copyOf(measures);
        sizes = List.copyOf(sizes);
        measureNext = List.copyOf(measureNext);
        texts = Map.copyOf(texts);
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
        requireSources("freshness", freshness.source(), sources, faults);
        for (Size each : sizes) {
            for (Practice line : each.practice()) {
                requireSources(each.id(), line.source(), sources, faults);
            }
        }
        Set<String> askable = new TreeSet<>();
        measures.forEach(each -> askable.add(each.id()));
        facts.forEach(each -> askable.add(each.id()));
        sizes.forEach(each -> askable.add(each.id()));
        if (askable.size() != measures.size() + facts.size() + sizes.size()
                || askable.size() != measureNext.size()
                || !askable.equals(Set.copyOf(measureNext))) {
            faults.add("what to measure next is not each quantity, fact and size once");
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

    /** @throws IllegalArgumentException for a code without text */
    String text(String code) {
        String text = texts.get(code);
        if (text == null) {
            throw new IllegalArgumentException("no text: " + code);
        }
        return text;
    }

    Optional<Fact> findFact(String id) {
        return facts.stream().filter(each -> each.id().equals(id)).findFirst();
    }

    Optional<Size> findSize(String id) {
        return sizes.stream().filter(each -> each.id().equals(id)).findFirst();
    }

    /** How to find it out, in words; for an id of {@link #measureNext}. */
    String question(String id) {
        return measures.stream()
                .filter(each -> each.id().equals(id))
                .map(Measure::text)
                .findFirst()
                .or(() -> findFact(id).map(Fact::text))
                .or(() -> findSize(id).map(Size::text))
                .orElseThrow(() -> new IllegalArgumentException("nothing to find out: " + id));
    }

    /** Whether a temperature is one that such a place may have; otherwise a person is asked. */
    boolean isLikely(String measure, Temperature.Place place, Temperature temperature) {
        BigDecimal celsius = temperature.celsius();
        return celsius.compareTo(place.highestLikelyCelsius()) <= 0
                && measures.stream()
                        .filter(each -> each.id().equals(measure))
                        .allMatch(each -> each.likelyFrom() == null || celsius.compareTo(each.likelyFrom()) >= 0);
    }

    /**
     * @param id code of a quantity, or {@link #UV_INDEX}
     * @param likelyFrom below this temperature in degrees Celsius a person is asked; null for what is no temperature
     * @param text how it is measured
     */
    public record Measure(String id, @Nullable BigDecimal likelyFrom, String text) {}

    /**
     * For how many days readings speak.
     *
     * @param days by id, or for all others by {@code quantities}, {@code facts} or {@code sizes}
     * @param source letters of its sources
     */
    public record Freshness(Map<String, Integer> days, List<String> source) {

        public Freshness {
            days = Map.copyOf(days);
            source = List.copyOf(source);
        }

        /** @param kind {@code quantities}, {@code facts} or {@code sizes} */
        int daysOf(String kind, String id) {
            Integer own = days.get(id);
            Integer all = days.get(kind);
            if (own == null && all == null) {
                throw new IllegalArgumentException("nothing says for how long " + id + " speaks");
            }
            return own != null ? own : all == null ? 0 : all;
        }
    }

    /**
     * A length of the enclosure, or in it.
     *
     * @param id its code
     * @param text the question
     * @param likelyMillimetres from and to; out of it a person is asked
     * @param practice what is said of it
     */
    public record Size(String id, String text, List<BigDecimal> likelyMillimetres, List<Practice> practice) {

        public Size {
            likelyMillimetres = List.copyOf(likelyMillimetres);
            practice = List.copyOf(practice);
            if (likelyMillimetres.size() != 2) {
                throw new IllegalArgumentException("a length lies between two, not " + likelyMillimetres);
            }
        }

        boolean isLikely(Length length) {
            return length.isBetweenMillimetres(likelyMillimetres.get(0), likelyMillimetres.get(1));
        }
    }

    /**
     * What one source says, in words.
     *
     * @param species genus and species
     * @param lifeStages their codes; all where empty
     */
    public record Practice(
            String species, List<String> lifeStages, HusbandryRange.Kind kind, String text, List<String> source) {

        public Practice {
            lifeStages = List.copyOf(lifeStages);
            source = List.copyOf(source);
        }

        boolean isFor(String otherSpecies, String lifeStage) {
            return species.equals(otherSpecies) && (lifeStages.isEmpty() || lifeStages.contains(lifeStage));
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
