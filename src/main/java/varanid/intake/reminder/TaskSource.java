package varanid.intake.reminder;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Who knows what is to be done for animals. Implemented by features that plan, as a Spring bean; there may be none, or
 * several.
 */
public interface TaskSource {

    /**
     * All tasks of the plans that are being followed, done ones included: what is told once and later not any more counts
     * as dropped, and is cancelled in calendars. The same records give the same tasks. No task is told twice, not by
     * another source either. A summary is seen on lock screens: the animal's tag or name and what to do, nothing else.
     *
     * <p>Called within a transaction that holds the organisation's lock; it only reads.
     *
     * @param organisationId whose
     * @param zone the organisation's: dates are meant there
     * @param animalId of this animal alone; of all animals if empty
     * @param asOf the day the plans are read on: today in the zone
     */
    List<PlannedTask> tasks(UUID organisationId, ZoneId zone, Optional<UUID> animalId, LocalDate asOf);
}
