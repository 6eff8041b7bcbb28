package varanid.intake.sample;

import java.util.UUID;

/**
 * A result was superseded, and whatever it found was not found by it. Published within the transaction, before the
 * {@link AgentFound} of the result that takes its place, if that is positive.
 *
 * @param organisationId whose animal
 * @param animalId which animal
 * @param supersededResultId the result that counts no longer, positive or not
 */
public record ResultCorrected(UUID organisationId, UUID animalId, UUID supersededResultId) {}
