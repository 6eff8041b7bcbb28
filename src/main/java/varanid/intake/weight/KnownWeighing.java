package varanid.intake.weight;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.animal.WeightReading;
import varanid.intake.measures.Resolution;

/**
 * A weighing that stands, and where it is recorded.
 *
 * @param first the place, from 0, in the animal's registration; null for one that was kept as a weighing
 */
record KnownWeighing(Weighing weighing, @Nullable Integer first) {

    static KnownWeighing of(WeighingRow row) {
        WeightReading reading = row.reading();
        return new KnownWeighing(
                new Weighing(
                        row.id(),
                        reading.occurredAt(),
                        row.localDate(),
                        reading.mass(),
                        resolution(reading),
                        reading.scale(),
                        row.lastMealAt() == null ? null : Duration.between(row.lastMealAt(), reading.occurredAt()),
                        row.wet()),
                null);
    }

    /** One of the registration: nobody was asked when it had last eaten, and its id is only for telling it apart. */
    static KnownWeighing ofRegistration(UUID animalId, int place, WeightReading reading, ZoneId zone) {
        String name = animalId + "/weights/" + place;
        return new KnownWeighing(
                new Weighing(
                        UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)),
                        reading.occurredAt(),
                        LocalDate.ofInstant(reading.occurredAt(), zone),
                        reading.mass(),
                        resolution(reading),
                        reading.scale(),
                        null,
                        false),
                place);
    }

    private static @Nullable Resolution resolution(WeightReading reading) {
        return reading.resolution() == null ? null : new Resolution(reading.resolution());
    }
}
