package varanid.intake.weight;

import java.time.Instant;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import varanid.intake.animal.WeightReading;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;

/**
 * A weighing that is to be kept, as it was sent.
 *
 * @param lastMealAt not after the weighing; null where nobody knows
 * @param supersedes the weighing that it corrects
 * @param supersedesFirst the place, from 0, of the weight of the registration that it corrects
 */
record NewWeighing(
        WeightReading reading,
        @Nullable Instant lastMealAt,
        boolean wet,
        @Nullable String note,
        @Nullable UUID supersedes,
        @Nullable Integer supersedesFirst) {

    static Supplier<NewWeighing> read(JsonFields fields, Present present) {
        Given<Instant> at = fields.pastInstant("occurredAt", present);
        Supplier<WeightReading> reading = WeightReading.reader(fields, at, present);
        Given<Instant> meal = fields.pastInstant("lastMealAt", present)
                .check(
                        moment -> !moment.isAfter(at.orElse(present.now())),
                        "lies after the weighing",
                        "a moment before it, or leave it out where nobody knows");
        Given<Boolean> wet = fields.flag("wet");
        Given<String> note = fields.prose("note", 4000);
        Given<UUID> supersedes = fields.id("supersedes");
        Given<Integer> first = fields.integer("supersedesFirst", 0, 19);
        if (supersedes.isGiven()) {
            first = first.check(place -> false, "stands beside supersedes", "one of the two: it corrects one weighing");
        }
        @Nullable Integer firstGiven = first.orNull();
        return () -> new NewWeighing(
                reading.get(), meal.orNull(), wet.orElse(false), note.orNull(), supersedes.orNull(), firstGiven);
    }
}
