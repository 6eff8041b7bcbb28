package varanid.intake.reminder;

import java.util.UUID;

/**
 * A task of one animal, and whether it was done. A task that is told no more was dropped, and its reminder is cancelled.
 *
 * @param animalId the animal it is to be done for; the same whenever the task's UID is told
 * @param task what, and when
 * @param done whether somebody did it. Told as not done later, because a record was corrected, it is to be done again
 */
public record PlannedTask(UUID animalId, CalendarTask task, boolean done) {}
