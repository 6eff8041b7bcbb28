package varanid.intake.quarantine;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import varanid.intake.animal.AnimalChanged;
import varanid.intake.animal.Animals;
import varanid.intake.assessment.KeptLook;
import varanid.intake.assessment.LookKept;
import varanid.intake.assessment.Looks;

/**
 * Brings what is seen at an animal to the clock of its room. Listens within the transaction that records it, the
 * organisation's lock being held.
 *
 * <p>It does not add to what it did before: it works out what the looks that stand mean for the rooms, and records the
 * difference. So a look that is corrected, or recorded late, comes out right.
 */
@Component
class LookFollower {

    static final String CORRECTED = "corrected";

    private final ClockEvents events;
    private final Whereabouts whereabouts;
    private final RoomBooks books;
    private final EventWriter writer;
    private final StayRules stays;
    private final Animals animals;
    private final Looks looks;
    private final QuarantinePolicy policy;
    private final Clock clock;

    LookFollower(
            ClockEvents events,
            Whereabouts whereabouts,
            RoomBooks books,
            EventWriter writer,
            StayRules stays,
            Animals animals,
            Looks looks,
            QuarantinePolicy policy,
            Clock clock) {
        this.events = events;
        this.whereabouts = whereabouts;
        this.books = books;
        this.writer = writer;
        this.stays = stays;
        this.animals = animals;
        this.looks = looks;
        this.policy = policy;
        this.clock = clock;
    }

    @EventListener
    void lookKept(LookKept kept) {
        EventWriter.By by = new EventWriter.By(kept.organisationId(), null, clock.instant());
        UUID animal = kept.look().animalId();
        List<KeptLook> all = looks.list(kept.organisationId(), animal);
        Set<UUID> touched = follow(by, animal, all);
        refreshStay(by, animal, all).ifPresent(touched::add);
        announce(kept.organisationId(), animal, touched, kept.look().localDate());
    }

    /** The animal's own record may have changed, and with it where it comes from. */
    @EventListener
    void animalChanged(AnimalChanged changed) {
        // Where several animals are named, it was a clock that changed, and not what is recorded of each of them.
        if (changed.animalIds().size() != 1) {
            return;
        }
        UUID animal = changed.animalIds().iterator().next();
        Optional<Stay> stay = currentStay(changed.organisationId(), animal);
        boolean isForIt = stay.flatMap(its -> placedEvent(changed.organisationId(), animal, its))
                .flatMap(event -> animals.find(changed.organisationId(), animal)
                        .map(newcomer -> stays.isForOriginOf(books.readStay(event), newcomer)))
                .orElse(true);
        if (!isForIt) {
            EventWriter.By by = new EventWriter.By(changed.organisationId(), null, clock.instant());
            refreshStay(by, animal, looks.list(changed.organisationId(), animal))
                    .ifPresent(room -> announce(
                            changed.organisationId(),
                            animal,
                            Set.of(room),
                            stay.orElseThrow().from()));
        }
    }

    private void announce(UUID organisation, UUID animal, Set<UUID> rooms, LocalDate day) {
        Set<UUID> concerned = new HashSet<>();
        rooms.forEach(
                room -> concerned.addAll(books.open(organisation, room, day).lastAnimals()));
        concerned.remove(animal);
        writer.announce(organisation, concerned);
    }

    /**
     * Records which occurrences the looks of an animal are now, and withdraws those that are none any more.
     *
     * @return the rooms that were touched
     */
    Set<UUID> follow(EventWriter.By by, UUID animal, List<KeptLook> all) {
        UUID organisation = by.organisationId();
        List<Stay> itsStays = whereabouts.listStays(organisation, animal);
        Set<UUID> touched = new HashSet<>();
        List<ClockEventRow> standing = new ArrayList<>();
        for (ClockEventRow event : events.listStandingOfAnimal(organisation, animal)) {
            if (!event.is(EventKind.OCCURRED) || event.isFrom(EventSource.Kind.PLACEMENT)) {
                continue;
            }
            if (holds(event, all, itsStays)) {
                standing.add(event);
            } else {
                writer.withdraw(by, event, CORRECTED);
                touched.add(event.roomId);
                touched.addAll(moveResult(by, animal, event, itsStays));
            }
        }
        for (LookOccurrences.Sign sign : LookOccurrences.list(policy, all, itsStays)) {
            boolean known = standing.stream()
                    .anyMatch(event -> event.roomId.equals(sign.room())
                            && event.onDay.equals(sign.on())
                            && sign.isIn(event.sourcePart)
                            && sign.cause().equals(event.cause));
            if (!known && !wasNothing(organisation, animal, sign)) {
                standing.add(writer.save(event(by, animal, sign)));
                touched.add(sign.room());
            }
        }
        return touched;
    }

    /** What a sample found goes along to where the animal stood on that day, as is known now. */
    private Set<UUID> moveResult(EventWriter.By by, UUID animal, ClockEventRow event, List<Stay> itsStays) {
        Set<UUID> touched = new HashSet<>();
        if (event.isFrom(EventSource.Kind.RESULT) && event.sourceId != null && event.cause != null) {
            for (Stay stay : itsStays) {
                if (stay.touches(event.onDay)) {
                    writer.save(writer.occurred(
                            by,
                            stay.room(),
                            event.onDay,
                            animal,
                            event.cause,
                            event.reason,
                            new EventSource(
                                    EventSource.Kind.RESULT, event.sourceId, Optional.ofNullable(event.sourcePart))));
                    touched.add(stay.room());
                }
            }
        }
        return touched;
    }

    private boolean holds(ClockEventRow event, List<KeptLook> all, List<Stay> itsStays) {
        if (event.isFrom(EventSource.Kind.ASSESSMENT)) {
            return LookOccurrences.holds(
                    policy,
                    all,
                    itsStays,
                    event.roomId,
                    event.onDay,
                    Objects.requireNonNull(event.sourceId),
                    Objects.requireNonNull(event.sourcePart),
                    Objects.requireNonNull(event.cause));
        }
        return itsStays.stream().anyMatch(stay -> stay.room().equals(event.roomId) && stay.touches(event.onDay));
    }

    /** Not saved. */
    ClockEventRow event(EventWriter.By by, UUID animal, LookOccurrences.Sign sign) {
        return writer.occurred(
                by,
                sign.room(),
                sign.on(),
                animal,
                sign.cause(),
                sign.label(),
                new EventSource(EventSource.Kind.ASSESSMENT, sign.look(), Optional.of(sign.part())));
    }

    /** Whether a vet has said of these very signs of this very look, in whatever room, that it was nothing. */
    boolean wasNothing(UUID organisation, UUID animal, LookOccurrences.Sign sign) {
        List<UUID> same = events.listStandingOfAnimal(organisation, animal).stream()
                .filter(event -> event.isFrom(EventSource.Kind.ASSESSMENT)
                        && sign.look().equals(event.sourceId)
                        && sign.isIn(event.sourcePart))
                .map(ClockEventRow::id)
                .toList();
        if (same.isEmpty()) {
            return false;
        }
        List<ClockEventRow> words = events.listWords(organisation, same).stream()
                .filter(word -> !word.unconfirmed)
                .toList();
        return !words.isEmpty() && ClockEvent.Ruling.WAS_NOTHING.code().equals(words.get(words.size() - 1).ruling);
    }

    /**
     * Where what is known of an animal asks for another minimum stay than when it was placed, the placing is recorded
     * again, of the same day, with that.
     *
     * @return its room, where that was so
     */
    private Optional<UUID> refreshStay(EventWriter.By by, UUID animal, List<KeptLook> all) {
        UUID organisation = by.organisationId();
        Optional<Stay> stay = currentStay(organisation, animal);
        Optional<ClockEventRow> placed = stay.flatMap(its -> placedEvent(organisation, animal, its));
        Optional<Animals.Newcomer> newcomer = animals.find(organisation, animal);
        if (placed.isEmpty() || newcomer.isEmpty()) {
            return Optional.empty();
        }
        MinimumStay before = books.readStay(placed.get());
        // A resident needs no days; what is found at it is an occurrence of its room.
        if (before.floorDays() == 0) {
            return Optional.empty();
        }
        List<KeptLook> counting = new ArrayList<>();
        LocalDate from = stay.orElseThrow().from();
        LookOccurrences.lastUpTo(all, from).ifPresent(counting::add);
        all.stream().filter(look -> look.localDate().isAfter(from)).forEach(counting::add);
        MinimumStay now = stays.needsNow(before, newcomer.get(), counting);
        if (now.equals(before)) {
            return Optional.empty();
        }
        writer.withdraw(by, placed.get(), "what is known of it now asks for another minimum stay");
        writer.save(writer.placed(
                by, placed.get().roomId, from, animal, now, stay.orElseThrow().placement()));
        return Optional.of(placed.get().roomId);
    }

    private Optional<Stay> currentStay(UUID organisation, UUID animal) {
        List<Stay> all = whereabouts.listStays(organisation, animal);
        return all.isEmpty()
                ? Optional.empty()
                : Optional.of(all.get(all.size() - 1))
                        .filter(stay -> stay.until().isEmpty());
    }

    private Optional<ClockEventRow> placedEvent(UUID organisation, UUID animal, Stay stay) {
        return events.listStandingOfAnimal(organisation, animal).stream()
                .filter(event -> event.is(EventKind.PLACED) && stay.placement().equals(event.sourceId))
                .findFirst();
    }
}
