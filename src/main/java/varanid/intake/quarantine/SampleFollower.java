package varanid.intake.quarantine;

import java.time.Clock;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import varanid.intake.sample.AgentFound;
import varanid.intake.sample.ResultCorrected;

/**
 * Brings what samples find to the clock of the room. Listens within the transaction that records it, the organisation's
 * lock being held.
 */
@Component
class SampleFollower {

    private final ClockEvents events;
    private final Whereabouts whereabouts;
    private final RoomBooks books;
    private final EventWriter writer;
    private final QuarantinePolicy policy;
    private final Clock clock;

    SampleFollower(
            ClockEvents events,
            Whereabouts whereabouts,
            RoomBooks books,
            EventWriter writer,
            QuarantinePolicy policy,
            Clock clock) {
        this.events = events;
        this.whereabouts = whereabouts;
        this.books = books;
        this.writer = writer;
        this.policy = policy;
        this.clock = clock;
    }

    @EventListener
    void agentFound(AgentFound found) {
        EventWriter.By by = new EventWriter.By(found.organisationId(), null, clock.instant());
        QuarantinePolicy.Cause cause = policy.causeOfAgent(found.agent(), found.significant());
        Set<UUID> touched = new HashSet<>();
        for (Stay stay : whereabouts.listStays(found.organisationId(), found.animalId())) {
            if (stay.touches(found.on())) {
                writer.save(writer.occurred(
                        by,
                        stay.room(),
                        found.on(),
                        found.animalId(),
                        cause.id(),
                        cause.label() + ", in a sample taken on " + Why.words(found.takenOn()),
                        new EventSource(EventSource.Kind.RESULT, found.resultId(), Optional.of(found.agent()))));
                touched.add(stay.room());
            }
        }
        announce(found.organisationId(), found.animalId(), touched, found.on());
    }

    @EventListener
    void resultCorrected(ResultCorrected corrected) {
        EventWriter.By by = new EventWriter.By(corrected.organisationId(), null, clock.instant());
        for (ClockEventRow event : events.listStandingOfAnimal(corrected.organisationId(), corrected.animalId())) {
            if (event.isFrom(EventSource.Kind.RESULT)
                    && corrected.supersededResultId().equals(event.sourceId)) {
                writer.withdraw(by, event, LookFollower.CORRECTED);
                announce(corrected.organisationId(), corrected.animalId(), Set.of(event.roomId), event.onDay);
            }
        }
    }

    /** The animal itself is told of by whoever recorded the result. */
    private void announce(UUID organisation, UUID animal, Set<UUID> rooms, LocalDate day) {
        Set<UUID> concerned = new HashSet<>();
        rooms.forEach(
                room -> concerned.addAll(books.open(organisation, room, day).lastAnimals()));
        concerned.remove(animal);
        writer.announce(organisation, concerned);
    }
}
