package varanid.intake.quarantine;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.animal.Animals;

/** What people call the animals of an organisation, each looked up once. */
final class Names {

    private final Animals animals;
    private final UUID organisationId;
    private final Map<UUID, Optional<String>> known = new HashMap<>();

    Names(Animals animals, UUID organisationId) {
        this.animals = animals;
        this.organisationId = organisationId;
    }

    @Nullable
    String find(@Nullable UUID animal) {
        return animal == null
                ? null
                : known.computeIfAbsent(
                                animal, id -> animals.find(organisationId, id).flatMap(Animals.Newcomer::name))
                        .orElse(null);
    }

    AnimalName of(UUID animal) {
        return new AnimalName(animal, find(animal));
    }
}
