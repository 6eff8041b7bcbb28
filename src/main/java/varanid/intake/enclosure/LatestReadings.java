package varanid.intake.enclosure;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import varanid.intake.measures.Temperature;

/**
 * Of everything that was read up to a day, the latest of each quantity, fact and size. What is too old to speak of that
 * day is still in it, and marked.
 */
final class LatestReadings {

    private static final String QUANTITIES = "quantities";

    private final LocalDate asOf;
    private final HusbandryRules rules;
    private final Map<Quantity, Latest<GivenReading.GivenTemperature>> temperatures = new EnumMap<>(Quantity.class);
    private final Map<String, Latest<String>> facts = new HashMap<>();
    private final Map<String, Latest<GivenReading.GivenLength>> sizes = new HashMap<>();
    private @Nullable Latest<GivenReading.GivenHumidity> humidity;
    private @Nullable Latest<BigDecimal> uvIndex;

    /**
     * @param value what was read
     * @param ageDays from the local day of the reading to the day asked for
     * @param stale whether that is longer than such a reading speaks
     */
    record Latest<T>(T value, UUID readingId, Instant occurredAt, LocalDate localDate, long ageDays, boolean stale) {}

    /**
     * @param readings that stand, in the order they were taken; later ones than the day are left aside
     * @param asOf the local date to speak of
     */
    LatestReadings(List<KeptReading> readings, LocalDate asOf, HusbandryRules rules) {
        this.asOf = asOf;
        this.rules = rules;
        readings.stream().filter(each -> !each.localDate().isAfter(asOf)).forEach(this::take);
    }

    private void take(KeptReading reading) {
        GivenReading given = reading.given();
        given.temperatures()
                .forEach((code, value) -> Quantity.find(code)
                        .ifPresent(quantity -> temperatures.put(quantity, latest(value, reading, QUANTITIES, code))));
        given.facts().forEach((id, value) -> facts.put(id, latest(value, reading, "facts", id)));
        given.sizes().forEach((id, value) -> sizes.put(id, latest(value, reading, "sizes", id)));
        if (given.humidity() != null) {
            humidity = latest(given.humidity(), reading, QUANTITIES, Quantity.HUMIDITY.code());
        }
        if (given.uvIndexAtBack() != null) {
            uvIndex = latest(given.uvIndexAtBack(), reading, QUANTITIES, HusbandryRules.UV_INDEX);
        }
    }

    private <T> Latest<T> latest(T value, KeptReading reading, String kind, String id) {
        long age = ChronoUnit.DAYS.between(reading.localDate(), asOf);
        return new Latest<>(
                value,
                reading.id(),
                reading.occurredAt(),
                reading.localDate(),
                age,
                age > rules.freshness().daysOf(kind, id));
    }

    Optional<Latest<GivenReading.GivenTemperature>> findTemperature(Quantity quantity) {
        return Optional.ofNullable(temperatures.get(quantity));
    }

    Optional<Latest<GivenReading.GivenHumidity>> findHumidity() {
        return Optional.ofNullable(humidity);
    }

    Optional<Latest<BigDecimal>> findUvIndex() {
        return Optional.ofNullable(uvIndex);
    }

    Optional<Latest<String>> findFact(String id) {
        return Optional.ofNullable(facts.get(id));
    }

    Optional<Latest<GivenReading.GivenLength>> findSize(String id) {
        return Optional.ofNullable(sizes.get(id));
    }

    /** The latest of what has that id in {@link HusbandryRules#measureNext}. */
    Optional<? extends Latest<?>> find(String id) {
        if (id.equals(HusbandryRules.UV_INDEX)) {
            return findUvIndex();
        } else if (id.equals(Quantity.HUMIDITY.code())) {
            return findHumidity();
        }
        Optional<Quantity> quantity = Quantity.find(id);
        if (quantity.isPresent()) {
            return findTemperature(quantity.get());
        }
        return facts.containsKey(id) ? findFact(id) : findSize(id);
    }

    /** What is not known of the day, in the order in which it is most useful to know. */
    List<Unknown> listUnknown() {
        return rules.measureNext().stream()
                .flatMap(id -> why(id).map(why -> new Unknown(id, why)).stream())
                .toList();
    }

    private Optional<Why> why(String id) {
        Optional<? extends Latest<?>> latest = find(id);
        if (latest.isEmpty()) {
            return Optional.of(Why.NEVER_READ);
        } else if (latest.get().value().equals(HusbandryRules.UNKNOWN)) {
            return Optional.of(Why.SAID_UNKNOWN);
        }
        return latest.get().stale() ? Optional.of(Why.STALE) : Optional.empty();
    }

    /** Something that is not known of the day. */
    record Unknown(String id, Why why) {}

    /** Why it is not known. */
    enum Why {
        NEVER_READ,
        STALE,
        SAID_UNKNOWN
    }

    /**
     * What all this says of the surroundings. Fresh values are judged beside fresh ones alone, so that no old reading
     * of the cool end lets a hot spot through today; what rests on old ones is in it, and marked, and explains nothing.
     */
    Surroundings judge(String species, String lifeStage) {
        Surroundings all = Surroundings.of(reading(each -> true), species, lifeStage, rules);
        Surroundings fresh = Surroundings.of(reading(each -> !each.stale()), species, lifeStage, rules);
        Map<Quantity, Surroundings.Judged> judgedFresh =
                fresh.quantities().stream().collect(Collectors.toMap(Surroundings.Judged::quantity, each -> each));
        Set<HusbandryRules.Sign> signs = new HashSet<>(all.signs());
        signs.removeAll(fresh.signs());
        Set<String> stale = signs.stream().map(HusbandryRules.Sign::code).collect(Collectors.toSet());
        signs.addAll(fresh.signs());
        return new Surroundings(
                all.quantities().stream()
                        .map(each -> judgedFresh.getOrDefault(each.quantity(), each))
                        .toList(),
                all.moisture(),
                all.uv(),
                all.probablyFahrenheit(),
                rules.signs().stream().filter(signs::contains).toList(),
                stale,
                fresh.lessCertain(),
                fresh.lookConditions(),
                all.cautions());
    }

    private EnclosureReading reading(Predicate<Latest<?>> wanted) {
        Map<Quantity, Temperature> values = new EnumMap<>(Quantity.class);
        Set<Quantity> confirmed = new HashSet<>();
        temperatures.forEach((quantity, latest) -> {
            if (wanted.test(latest)) {
                values.put(quantity, latest.value().temperature());
                if (latest.value().confirmed()) {
                    confirmed.add(quantity);
                }
            }
        });
        Latest<GivenReading.GivenHumidity> damp = humidity;
        Latest<BigDecimal> light = uvIndex;
        return new EnclosureReading(
                values,
                damp != null && wanted.test(damp) ? damp.value().humidity() : null,
                light != null && wanted.test(light) ? light.value() : null,
                facts.entrySet().stream()
                        .collect(Collectors.toMap(
                                Map.Entry::getKey, each -> each.getValue().value())),
                confirmed);
    }

    boolean isEmpty() {
        return temperatures.isEmpty() && humidity == null && uvIndex == null && facts.isEmpty() && sizes.isEmpty();
    }

    boolean hasStale() {
        return rules.measureNext().stream()
                .anyMatch(id -> find(id).filter(Latest::stale).isPresent());
    }
}
