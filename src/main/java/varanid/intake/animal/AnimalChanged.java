package varanid.intake.animal;

import java.util.Set;
import java.util.UUID;

/**
 * Something about these animals was recorded: themselves, a look, a weighing, a sample, where they stand.
 *
 * <p>Published within the transaction that records it, after the rows were flushed and while the organisation's lock is
 * held, so that whoever listens reads what is going to be true.
 *
 * @param organisationId whose animals
 * @param animalIds which
 */
public record AnimalChanged(UUID organisationId, Set<UUID> animalIds) {

    public AnimalChanged {
        animalIds = Set.copyOf(animalIds);
    }

    public static AnimalChanged of(UUID organisationId, UUID animalId) {
        return new AnimalChanged(organisationId, Set.of(animalId));
    }
}
