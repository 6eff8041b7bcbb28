package varanid.intake.weight;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.measures.Mass;
import varanid.intake.measures.Resolution;

/**
 * One weighing.
 *
 * @param id which weighing
 * @param at when
 * @param day the same as a local date where the animal is kept
 * @param mass what the scale showed
 * @param resolution the scale's smallest step, in the unit of the mass; null where nobody knows
 * @param scale which scale; null where nobody knows, and then it is compared with nothing
 * @param sinceFood how long after its last meal; null where nobody knows
 * @param wet whether it was wet from water
 */
public record Weighing(
        UUID id,
        Instant at,
        LocalDate day,
        Mass mass,
        @Nullable Resolution resolution,
        @Nullable String scale,
        @Nullable Duration sinceFood,
        boolean wet) {

    /** @throws IllegalArgumentException where the meal lies after the weighing */
    public Weighing {
        if (sinceFood != null && sinceFood.isNegative()) {
            throw new IllegalArgumentException("a meal after the weighing is not a meal before it");
        }
    }

    /**
     * Every mass that the scale would have shown like this; empty where the resolution is not known, or so coarse that
     * the mass could be nothing.
     */
    Optional<GramRange> findGrams() {
        if (resolution == null) {
            return Optional.empty();
        }
        BigDecimal grams = mass.grams();
        BigDecimal half = resolution.halfStep().multiply(mass.unit().grams());
        return grams.compareTo(half) > 0
                ? Optional.of(new GramRange(grams.subtract(half), grams, grams.add(half)))
                : Optional.empty();
    }

    /** Whether it is known to have eaten less than that long before. */
    boolean isFedWithin(Duration time) {
        return sinceFood != null && sinceFood.compareTo(time) < 0;
    }
}
