package varanid.intake.worklist;

import java.util.Optional;
import java.util.UUID;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.animal.AnimalChanged;

/** Keeps the entry of an animal as its records say, in the transaction that changes them. */
@Component
class WorklistKeeper {

    private final ObjectProvider<EntrySource> sources;
    private final WorklistRows rows;

    WorklistKeeper(ObjectProvider<EntrySource> sources, WorklistRows rows) {
        this.sources = sources;
        this.rows = rows;
    }

    /** After whoever else writes something when an animal changes. */
    @EventListener
    @Order(Ordered.LOWEST_PRECEDENCE)
    @Transactional(propagation = Propagation.MANDATORY)
    public void changed(AnimalChanged event) {
        event.animalIds().forEach(animalId -> keep(event.organisationId(), animalId));
    }

    /** Makes the entry again, or removes it where the animal is not in care. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void keep(UUID organisationId, UUID animalId) {
        source().ifPresent(source -> source.facts(organisationId, animalId)
                .map(facts -> Entry.of(animalId, facts))
                .ifPresentOrElse(
                        entry -> rows.save(organisationId, entry), () -> rows.remove(organisationId, animalId)));
    }

    /** Whether anybody can say what entries are made of. */
    public boolean canKeep() {
        return source().isPresent();
    }

    /** Asked for each time: a source reads from features that may themselves need what listens here. */
    private Optional<EntrySource> source() {
        return Optional.ofNullable(sources.getIfAvailable());
    }
}
