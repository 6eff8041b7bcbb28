package varanid.intake.enclosure;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import varanid.intake.measures.Temperature;

/** Works out {@link Surroundings}. */
final class SurroundingsFinder {

    private final EnclosureReading reading;
    private final String species;
    private final String lifeStage;
    private final HusbandryRules rules;
    private final List<Quantity> doubtful;
    private final Set<String> codes = new TreeSet<>();

    /** What was probably read in another unit is asked about and judged by nothing. */
    SurroundingsFinder(EnclosureReading reading, String species, String lifeStage, HusbandryRules rules) {
        this.doubtful = Surroundings.listProbablyFahrenheit(reading.temperatures()).stream()
                .filter(each -> !reading.confirmed().contains(each))
                .toList();
        Map<Quantity, Temperature> believed = new EnumMap<>(Quantity.class);
        reading.temperatures().forEach((quantity, temperature) -> {
            if (!doubtful.contains(quantity)) {
                believed.put(quantity, temperature);
            }
        });
        this.reading = new EnclosureReading(
                believed, reading.humidity(), reading.uvIndexAtBack(), reading.facts(), reading.confirmed());
        this.species = species;
        this.lifeStage = lifeStage;
        this.rules = rules;
    }

    Surroundings find() {
        List<Surroundings.Judged> quantities = new ArrayList<>();
        Arrays.stream(Quantity.values())
                .forEach(each -> value(each).map(value -> judge(each, value)).ifPresent(quantities::add));
        Optional<Surroundings.Moisture> moisture = moisture();
        Optional<Surroundings.Uv> uv = uv();
        List<HusbandryRules.Sign> signs = rules.signs().stream()
                .filter(each -> codes.contains(each.code()))
                .toList();
        return new Surroundings(
                quantities,
                moisture,
                uv,
                doubtful,
                signs,
                Set.of(),
                lessCertain(signs),
                reading.findCelsius(Quantity.SKIN)
                        .map(skin -> rules.lookConditions().stream()
                                .filter(each -> each.holds(skin))
                                .map(HusbandryRules.LookCondition::condition)
                                .toList())
                        .orElse(List.of()),
                rules.cautions().stream()
                        .filter(each -> each.isSaidFor(reading))
                        .toList());
    }

    private Optional<BigDecimal> value(Quantity quantity) {
        if (quantity == Quantity.GRADIENT) {
            return reading.findCelsius(Quantity.WARM_AIR)
                    .flatMap(warm -> reading.findCelsius(Quantity.COOL_AIR).map(warm::subtract));
        }
        if (quantity == Quantity.HUMIDITY) {
            EnclosureReading.Humidity humidity = reading.humidity();
            return humidity == null ? Optional.empty() : Optional.of(humidity.percent());
        }
        return reading.findCelsius(quantity);
    }

    private Surroundings.Judged judge(Quantity quantity, BigDecimal value) {
        List<Surroundings.BesideRange> ranges = rules.ranges().stream()
                .filter(each -> each.quantity() == quantity && each.isFor(species, lifeStage))
                .map(each -> new Surroundings.BesideRange(
                        each, each.sideOf(value), each.kind() != HusbandryRange.Kind.FIELD && each.appliesTo(reading)))
                .toList();
        Surroundings.Standing standing = standing(ranges);
        if (standing == Surroundings.Standing.BELOW || standing == Surroundings.Standing.ABOVE) {
            codes.add(quantity.code() + "-" + standing.name().toLowerCase(Locale.ROOT));
        }
        if (ranges.stream().anyMatch(SurroundingsFinder::isHeldBack)) {
            codes.add(quantity.code() + "-held-back");
        }
        return new Surroundings.Judged(quantity, value, ranges, standing);
    }

    /** A range that would take the value, were what it depends on measured and right. */
    private static boolean isHeldBack(Surroundings.BesideRange beside) {
        return !beside.applies() && beside.range().onlyWhere() != null && beside.side() == HusbandryRange.Side.WITHIN;
    }

    private static Surroundings.Standing standing(List<Surroundings.BesideRange> ranges) {
        List<HusbandryRange.Side> sides = ranges.stream()
                .filter(Surroundings.BesideRange::applies)
                .map(Surroundings.BesideRange::side)
                .distinct()
                .toList();
        if (sides.isEmpty()) {
            return Surroundings.Standing.NO_FIGURES;
        }
        if (sides.size() > 1) {
            return Surroundings.Standing.SOURCES_DISAGREE;
        }
        return switch (sides.get(0)) {
            case BELOW -> Surroundings.Standing.BELOW;
            case WITHIN -> Surroundings.Standing.WITHIN;
            case ABOVE -> Surroundings.Standing.ABOVE;
        };
    }

    private Optional<Surroundings.Moisture> moisture() {
        EnclosureReading.Humidity humidity = reading.humidity();
        return humidity == null ? Optional.empty() : humidity.air().map(this::moisture);
    }

    private Surroundings.Moisture moisture(MoistAir air) {
        double dewPoint = air.dewPointCelsius();
        SortedMap<Quantity, Double> elsewhere = new TreeMap<>();
        for (Quantity each : List.of(
                Quantity.BASKING_SURFACE,
                Quantity.WARM_AIR,
                Quantity.COOL_AIR,
                Quantity.NIGHT_MINIMUM,
                Quantity.COLDEST_SURFACE)) {
            reading.findCelsius(each)
                    .map(BigDecimal::doubleValue)
                    .filter(MoistAir::isCovered)
                    .ifPresent(celsius -> elsewhere.put(each, air.humidityPercentAt(celsius)));
        }
        Optional<Double> margin =
                reading.findCelsius(Quantity.COLDEST_SURFACE).map(each -> each.doubleValue() - dewPoint);
        margin.ifPresent(each -> {
            if (each <= 0) {
                codes.add("surface-wet");
            } else if (each < rules.dampness().marginCelsius().doubleValue()) {
                codes.add("surface-nearly-wet");
            }
        });
        Double atSurface = elsewhere.get(Quantity.COLDEST_SURFACE);
        if (atSurface != null
                && atSurface >= rules.dampness().surfaceHumidityPercent().doubleValue()) {
            codes.add("surface-mould");
        }
        reading.findCelsius(Quantity.NIGHT_MINIMUM)
                .filter(each -> each.doubleValue() <= dewPoint)
                .ifPresent(each -> codes.add("night-wet"));
        return new Surroundings.Moisture(
                air, dewPoint, air.deficitKilopascals(), air.gramsPerCubicMetre(), elsewhere, margin);
    }

    private Optional<Surroundings.Uv> uv() {
        BigDecimal index = reading.uvIndexAtBack();
        if (index == null) {
            return Optional.empty();
        }
        if (index.compareTo(rules.uv().unsafeFrom()) >= 0) {
            codes.add("uv-unsafe");
        }
        Optional<UvZones.SpeciesZones> zones = rules.uv().findSpecies(species);
        zones.map(each -> rules.uv().sideOf(index, each))
                .filter(each -> each != HusbandryRange.Side.WITHIN)
                .ifPresent(each -> codes.add("uv-" + each.name().toLowerCase(Locale.ROOT)));
        return Optional.of(new Surroundings.Uv(index, rules.uv().listByMaximum(index), zones));
    }

    private static SortedMap<String, SortedSet<String>> lessCertain(List<HusbandryRules.Sign> signs) {
        SortedMap<String, SortedSet<String>> findings = new TreeMap<>();
        for (HusbandryRules.Sign sign : signs) {
            for (String finding : sign.lessCertain()) {
                findings.computeIfAbsent(finding, each -> new TreeSet<>()).add(sign.code());
            }
        }
        return findings;
    }
}
