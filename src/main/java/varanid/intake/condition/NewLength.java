package varanid.intake.condition;

import java.time.Instant;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import varanid.intake.animal.LengthReading;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;

/**
 * A length that is to be kept, as it was sent.
 *
 * @param supersedes the measurement that it corrects
 * @param supersedesFirst the place, from 0, of the length of the registration that it corrects
 */
record NewLength(
        LengthReading reading,
        @Nullable String note,
        @Nullable UUID supersedes,
        @Nullable Integer supersedesFirst) {

    static Supplier<NewLength> read(JsonFields fields, Present present) {
        Given<Instant> at = fields.pastInstant("occurredAt", present);
        Supplier<LengthReading> reading = LengthReading.reader(fields, at, present);
        Given<String> note = fields.prose("note", 4000);
        Given<UUID> supersedes = fields.id("supersedes");
        Given<Integer> first = fields.integer("supersedesFirst", 0, 19);
        if (supersedes.isGiven()) {
            first = first.check(
                    place -> false, "stands beside supersedes", "one of the two: it corrects one measurement");
        }
        @Nullable Integer firstGiven = first.orNull();
        return () -> new NewLength(reading.get(), note.orNull(), supersedes.orNull(), firstGiven);
    }
}
