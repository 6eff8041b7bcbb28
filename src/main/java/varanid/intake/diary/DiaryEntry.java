package varanid.intake.diary;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;

/**
 * What one person noticed about an animal, or did for it, at one time.
 *
 * @param localDate the day in the organisation's zone
 * @param food what was offered
 * @param cleaning none where nothing was said of it
 * @param miteCheck not looked where nothing was said of it
 */
public record DiaryEntry(
        UUID id,
        UUID animalId,
        UUID recordedBy,
        Instant occurredAt,
        Instant recordedAt,
        LocalDate localDate,
        Optional<Ate> ate,
        Optional<String> food,
        Optional<Noticed> drank,
        Optional<Noticed> stool,
        Optional<Noticed> urate,
        Optional<Seen> seen,
        Optional<Demeanour> demeanour,
        Cleaning cleaning,
        MiteCheck miteCheck,
        Optional<String> note) {}
