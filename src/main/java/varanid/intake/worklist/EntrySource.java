package varanid.intake.worklist;

import java.util.Optional;
import java.util.UUID;

/** Says what the work list needs to know of an animal, from everything that is recorded of it. */
public interface EntrySource {

    /**
     * What is to be said of the animal: as it is recorded now, within the transaction that records it, while the
     * organisation's lock is held.
     *
     * <p>It must not depend on the day it is asked on: a task that was not done stays open in here when its days have
     * passed. Otherwise an entry would become false without anything being recorded.
     *
     * @return nothing where the animal is not in care: it left, died, or the organisation has no such animal
     */
    Optional<WorklistFacts> facts(UUID organisationId, UUID animalId);
}
