package varanid.intake.reminder;

import java.util.UUID;

/**
 * A task of one animal, and whether it was done. A task that is told no more was dropped, and its reminder is cancelled.
 *
 * @param animalId the animal it is to be done for; the same for every telling of the task's UID
 * @param task what, and when
 * @param done whether somebody did it; it then stays in calendars as done
 */
public record PlannedTask(UUID animalId, CalendarTask task, boolean done) {}
