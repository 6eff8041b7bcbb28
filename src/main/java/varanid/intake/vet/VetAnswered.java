package varanid.intake.vet;

import java.util.UUID;

/**
 * A vet's answer was kept, or one that was kept before is now confirmed. Published within the transaction that does it,
 * after the rows were flushed and while the organisation's lock is held; {@link varanid.intake.animal.AnimalChanged}
 * follows.
 *
 * @param confirmed whether it is confirmed now; an unconfirmed one may only raise
 */
public record VetAnswered(UUID organisationId, UUID animalId, UUID answerId, boolean confirmed) {}
