package varanid.intake.sample;

import java.time.LocalDate;
import java.util.UUID;

/**
 * A positive result was recorded. Published for each agent it names, within the transaction that records it, after the
 * rows were flushed and before {@link varanid.intake.animal.AnimalChanged}.
 *
 * @param organisationId whose animal
 * @param animalId which animal
 * @param resultId the result that found it; where it is superseded, {@link ResultCorrected} names it
 * @param agent the code of a cause of kind agent in quarantine policy
 * @param significant whether a vet or the laboratory called it significant; false where nobody said so
 * @param on the day it counts from, in the organisation's zone: the day it was reported, for until then everybody around
 *     the animal was exposed without anybody knowing
 * @param takenOn the day the sample was taken
 */
public record AgentFound(
        UUID organisationId,
        UUID animalId,
        UUID resultId,
        String agent,
        boolean significant,
        LocalDate on,
        LocalDate takenOn) {}
