package varanid.intake.enclosure;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

/**
 * A reading that stands.
 *
 * @param localDate when it was read, in the organisation's zone
 */
record KeptReading(UUID id, Instant occurredAt, LocalDate localDate, GivenReading given) {}
