package varanid.intake.animal;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** An animal as it is recorded. */
record AnimalRecord(
        UUID id,
        @Nullable Long version,
        AnimalDetails details,
        List<WeightReading> weights,
        List<LengthReading> lengths,
        UUID recordedBy,
        Instant recordedAt) {}
