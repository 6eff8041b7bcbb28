package varanid.intake.worklist;

import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.annotation.Primary;
import org.springframework.stereotype.Component;

/**
 * Says of animals what a test told it. It speaks only for organisations it was told about, and leaves the others to
 * whoever speaks for them otherwise: all tests share one service.
 */
@Component
@Primary
public class ToldFacts implements EntrySource {

    private final ObjectProvider<EntrySource> sources;
    private final Map<UUID, Map<UUID, WorklistFacts>> told = new ConcurrentHashMap<>();
    private final Map<UUID, AtomicInteger> asked = new ConcurrentHashMap<>();

    ToldFacts(ObjectProvider<EntrySource> sources) {
        this.sources = sources;
    }

    /** From now on it speaks for that organisation. */
    public void speakFor(UUID organisationId) {
        ofOrganisation(organisationId);
    }

    private Map<UUID, WorklistFacts> ofOrganisation(UUID organisationId) {
        return told.computeIfAbsent(organisationId, id -> new ConcurrentHashMap<>());
    }

    public void tell(UUID organisationId, UUID animalId, WorklistFacts facts) {
        ofOrganisation(organisationId).put(animalId, facts);
    }

    void left(UUID organisationId, UUID animalId) {
        ofOrganisation(organisationId).remove(animalId);
    }

    int timesAskedAbout(UUID animalId) {
        return asked.getOrDefault(animalId, new AtomicInteger()).get();
    }

    @Override
    public Optional<WorklistFacts> facts(UUID organisationId, UUID animalId) {
        Map<UUID, WorklistFacts> ours = told.get(organisationId);
        if (ours != null) {
            asked.computeIfAbsent(animalId, id -> new AtomicInteger()).incrementAndGet();
            return Optional.ofNullable(ours.get(animalId));
        }
        return sources.stream()
                .filter(source -> source != this)
                .findFirst()
                .flatMap(source -> source.facts(organisationId, animalId));
    }
}
