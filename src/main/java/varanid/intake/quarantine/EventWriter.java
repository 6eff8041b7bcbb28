package varanid.intake.quarantine;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;
import varanid.intake.animal.AnimalChanged;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.id.RowKey;

/** Writes events of clocks. Works within the caller's transaction, the organisation's lock being held. */
@Component
class EventWriter {

    private final ClockEvents events;
    private final RoomBooks books;
    private final Ids ids;
    private final ApplicationEventPublisher publisher;

    EventWriter(ClockEvents events, RoomBooks books, Ids ids, ApplicationEventPublisher publisher) {
        this.events = events;
        this.books = books;
        this.ids = ids;
        this.publisher = publisher;
    }

    /** Who writes, and when. Nobody in particular where it follows from another record. */
    record By(UUID organisationId, @Nullable UUID person, Instant at) {}

    /** A new event, not saved. */
    ClockEventRow event(By by, UUID room, LocalDate on, EventKind kind) {
        return new ClockEventRow(new RowKey(by.organisationId(), ids.next()), room, on, kind, by.person(), by.at());
    }

    ClockEventRow placed(By by, UUID room, LocalDate on, UUID animal, MinimumStay needs, UUID placement) {
        ClockEventRow row = event(by, room, on, EventKind.PLACED).from(EventSource.placement(placement));
        row.animalId = animal;
        row.minimumStay = books.write(needs);
        return row;
    }

    ClockEventRow left(By by, UUID room, LocalDate on, UUID animal, String reason, UUID placement) {
        ClockEventRow row = event(by, room, on, EventKind.LEFT).from(EventSource.placement(placement));
        row.animalId = animal;
        row.reason = reason;
        return row;
    }

    ClockEventRow occurred(
            By by, UUID room, LocalDate on, UUID animal, String cause, @Nullable String reason, EventSource source) {
        ClockEventRow row = event(by, room, on, EventKind.OCCURRED).from(source);
        row.animalId = animal;
        row.cause = cause;
        row.reason = reason;
        return row;
    }

    ClockEventRow save(ClockEventRow row) {
        return events.saveAndFlush(row);
    }

    /** Makes an event count for nothing; it stays on record. */
    ClockEventRow withdraw(By by, ClockEventRow mistaken, String reason) {
        ClockEventRow row = event(by, mistaken.roomId, mistaken.onDay, EventKind.WITHDRAWN);
        row.animalId = mistaken.animalId;
        row.about = mistaken.id();
        row.reason = reason;
        row.sourceKind = mistaken.sourceKind;
        row.sourceId = mistaken.sourceId;
        row.sourcePart = mistaken.sourcePart;
        return events.saveAndFlush(row);
    }

    /** Tells that something about these animals changed. */
    void announce(UUID organisationId, Set<UUID> animals) {
        if (!animals.isEmpty()) {
            publisher.publishEvent(new AnimalChanged(organisationId, animals));
        }
    }
}
