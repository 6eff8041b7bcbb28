package varanid.intake.weight;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.measures.Mass;
import varanid.intake.measures.MassUnit;
import varanid.intake.measures.Resolution;

/** Weighings of an invented animal: dry, four days after food, on one scale, unless said otherwise. */
record WeightFixture(
        int day,
        String grams,
        @Nullable String step,
        @Nullable String scale,
        @Nullable Duration sinceFood,
        boolean wet,
        int hour) {

    static final LocalDate START = LocalDate.of(2026, 9, 1);

    static WeightFixture weighed(int day, String grams) {
        return new WeightFixture(day, grams, "1", "kitchen", Duration.ofHours(96), false, 9);
    }

    WeightFixture step(@Nullable String resolution) {
        return new WeightFixture(day, grams, resolution, scale, sinceFood, wet, hour);
    }

    WeightFixture on(@Nullable String otherScale) {
        return new WeightFixture(day, grams, step, otherScale, sinceFood, wet, hour);
    }

    WeightFixture fed(@Nullable Integer hoursAgo) {
        return new WeightFixture(
                day, grams, step, scale, hoursAgo == null ? null : Duration.ofHours(hoursAgo), wet, hour);
    }

    WeightFixture whenWet() {
        return new WeightFixture(day, grams, step, scale, sinceFood, true, hour);
    }

    WeightFixture at(int otherHour) {
        return new WeightFixture(day, grams, step, scale, sinceFood, wet, otherHour);
    }

    Weighing make() {
        LocalDate date = START.plusDays(day);
        return new Weighing(
                UUID.nameUUIDFromBytes(toString().getBytes(StandardCharsets.UTF_8)),
                date.atTime(hour, 0).toInstant(ZoneOffset.UTC),
                date,
                new Mass(new BigDecimal(grams), MassUnit.GRAM),
                step == null ? null : new Resolution(new BigDecimal(step)),
                scale,
                sinceFood,
                wet);
    }
}
