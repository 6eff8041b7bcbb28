package varanid.intake.enclosure;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import varanid.intake.measures.Temperature;

/**
 * What was measured on one round, any part of it.
 *
 * @param temperatures only of quantities that are temperatures
 * @param humidity with the temperature beside it; null where it was not measured
 * @param uvIndexAtBack the highest UV index where its back is when it basks; null where it was not measured
 * @param facts of how it is set up, id of the fact to its value; what is not in it is unknown
 * @param confirmed temperatures that look unlikely and that somebody stands by
 */
public record EnclosureReading(
        Map<Quantity, Temperature> temperatures,
        @Nullable Humidity humidity,
        @Nullable BigDecimal uvIndexAtBack,
        Map<String, String> facts,
        Set<Quantity> confirmed) {

    /** Nothing unlikely that somebody stands by. */
    public EnclosureReading(
            Map<Quantity, Temperature> temperatures,
            @Nullable Humidity humidity,
            @Nullable BigDecimal uvIndexAtBack,
            Map<String, String> facts) {
        this(temperatures, humidity, uvIndexAtBack, facts, Set.of());
    }

    /**
     * @param percent relative, above 0 up to 100
     * @param at the temperature of the air where it was read
     */
    public record Humidity(BigDecimal percent, Temperature at) {

        /** @throws IllegalArgumentException outside of what there is */
        public Humidity {
            if (percent.signum() <= 0 || percent.compareTo(BigDecimal.valueOf(100)) > 0) {
                throw new IllegalArgumentException(
                        "a relative humidity is above 0 and at most 100 %, not " + percent.toPlainString());
            }
        }

        /** The air; empty at temperatures for which the equations do not hold. */
        Optional<MoistAir> air() {
            double celsius = at.celsius().doubleValue();
            return MoistAir.isCovered(celsius)
                    ? Optional.of(new MoistAir(celsius, percent.doubleValue()))
                    : Optional.empty();
        }
    }

    /** @throws IllegalArgumentException for a temperature of what is none, or a UV index below zero */
    public EnclosureReading {
        temperatures = Map.copyOf(temperatures);
        facts = Map.copyOf(facts);
        confirmed = Set.copyOf(confirmed);
        for (Quantity each : temperatures.keySet()) {
            if (each.place().isEmpty()) {
                throw new IllegalArgumentException("no temperature: " + each.code());
            }
        }
        if (uvIndexAtBack != null && uvIndexAtBack.signum() < 0) {
            throw new IllegalArgumentException("a UV index is zero or more, not " + uvIndexAtBack.toPlainString());
        }
    }

    Optional<BigDecimal> findCelsius(Quantity quantity) {
        return Optional.ofNullable(temperatures.get(quantity)).map(Temperature::celsius);
    }

    /** A fact, {@code unknown} where nobody said. */
    String fact(String id) {
        return facts.getOrDefault(id, HusbandryRules.UNKNOWN);
    }
}
