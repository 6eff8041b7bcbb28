package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import varanid.intake.animal.Animals;
import varanid.intake.assessment.KeptLook;
import varanid.intake.assessment.Looks;
import varanid.intake.platform.id.Ids;
import varanid.intake.platform.id.RowKey;
import varanid.intake.platform.web.Fault;
import varanid.intake.platform.web.Faults;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;
import varanid.intake.sample.KeptSample;
import varanid.intake.sample.Samples;

/**
 * Places animals in rooms and takes them out, with what that is for the clocks of both rooms. Works within the caller's
 * transaction; what writes needs the organisation's lock.
 */
@Component
class Moves {

    private final Rooms rooms;
    private final PlacementRows placements;
    private final ClockEvents events;
    private final Whereabouts whereabouts;
    private final RoomBooks books;
    private final EventWriter writer;
    private final LookFollower follower;
    private final StayRules stays;
    private final Looks looks;
    private final Samples samples;
    private final QuarantinePolicy policy;
    private final Ids ids;

    Moves(
            Rooms rooms,
            PlacementRows placements,
            ClockEvents events,
            Whereabouts whereabouts,
            RoomBooks books,
            EventWriter writer,
            LookFollower follower,
            StayRules stays,
            Looks looks,
            Samples samples,
            QuarantinePolicy policy,
            Ids ids) {
        this.rooms = rooms;
        this.placements = placements;
        this.events = events;
        this.whereabouts = whereabouts;
        this.books = books;
        this.writer = writer;
        this.follower = follower;
        this.stays = stays;
        this.looks = looks;
        this.samples = samples;
        this.policy = policy;
        this.ids = ids;
    }

    /**
     * What is asked for.
     *
     * @param returned whether it is said that the animal is here again although it had left
     * @param residentAlready whether it is said that it lived here before anything was recorded
     */
    record Wanted(UUID roomId, LocalDate on, Optional<String> reason, boolean returned, boolean residentAlready) {}

    /** A departure that is asked for. */
    record Departure(LocalDate on, Because because, Optional<Boolean> explained, Optional<String> reason) {}

    /**
     * What placing an animal does, or would do.
     *
     * @param happened events of the new room, the first of them its being placed
     * @param effect whom it delays
     */
    record Arrival(RoomRow room, MinimumStay needs, List<ClockEventRow> happened, Placement effect) {}

    /** What was recorded. */
    record Moved(PlacementRow placement, Optional<RoomRow> from, Optional<Arrival> arrival) {}

    /**
     * What placing would do.
     *
     * @throws ProblemException 422 where it cannot be placed so
     */
    Arrival preview(EventWriter.By by, Animals.Newcomer animal, Wanted wanted, LocalDate today) {
        RoomRow room = check(by.organisationId(), animal, wanted, false);
        return arrival(by, animal, room, wanted.on(), ids.next(), today);
    }

    /** @throws ProblemException 422 where it cannot be placed so */
    Moved place(EventWriter.By by, Animals.Newcomer animal, Wanted wanted, LocalDate today) {
        RoomRow room = check(by.organisationId(), animal, wanted, true);
        PlacementRow row = row(by, animal.id(), PlacementRow.PLACED, wanted.on());
        row.roomId = room.id();
        row.reason = wanted.reason().orElse(null);
        return place(by, animal, room, row, today);
    }

    /** Moves an animal whose quarantine was ended among residents. */
    Moved placeAmongResidents(EventWriter.By by, Animals.Newcomer animal, RoomRow room, LocalDate on, String reason) {
        PlacementRow row = row(by, animal.id(), PlacementRow.PLACED, on);
        row.roomId = room.id();
        row.reason = reason;
        return place(by, animal, room, row, on);
    }

    private Moved place(EventWriter.By by, Animals.Newcomer animal, RoomRow room, PlacementRow row, LocalDate today) {
        UUID organisation = by.organisationId();
        Optional<RoomRow> before = roomOf(organisation, animal.id());
        Arrival arrival = arrival(by, animal, room, row.onDay, row.id(), today);
        placements.saveAndFlush(row);
        Set<UUID> concerned = new HashSet<>();
        before.ifPresent(old -> {
            writer.save(writer.left(by, old.id(), row.onDay, animal.id(), "moved to " + room.name(), row.id()));
            concerned.addAll(books.open(organisation, old.id(), row.onDay).animalsOn(today));
        });
        arrival.happened().forEach(writer::save);
        // What was seen after that day was seen in the new room, and is none of the old one's.
        follower.follow(by, animal.id(), looks.list(organisation, animal.id()));
        concerned.addAll(arrival.effect().after().animals());
        concerned.add(animal.id());
        writer.announce(organisation, concerned);
        return new Moved(row, before, Optional.of(arrival));
    }

    /** @throws ProblemException 422 where it cannot have left so */
    Moved depart(EventWriter.By by, Animals.Newcomer animal, Departure wanted, LocalDate today) {
        Faults faults = new Faults();
        Optional<PlacementRow> last = whereabouts.findLast(by.organisationId(), animal.id());
        last.ifPresent(row -> checkDay(faults, row, wanted.on()));
        if (last.filter(row -> !row.isPlaced() && !Because.RELEASED.code().equals(row.because))
                .isPresent()) {
            faults.add(
                    Fault.at("#", "it left already, on " + last.get().onDay, "a departure of an animal that is here"));
        }
        faults.orThrow();
        PlacementRow row = row(by, animal.id(), PlacementRow.LEFT, wanted.on());
        row.because = wanted.because().code();
        row.explained = wanted.explained().orElse(null);
        row.reason = wanted.reason().orElse(null);
        return leave(by, animal, row, today);
    }

    /** Takes an animal out whose quarantine was ended, to no room that is recorded. */
    Moved release(EventWriter.By by, Animals.Newcomer animal, LocalDate on, String reason) {
        PlacementRow row = row(by, animal.id(), PlacementRow.LEFT, on);
        row.because = Because.RELEASED.code();
        row.reason = reason;
        return leave(by, animal, row, on);
    }

    private Moved leave(EventWriter.By by, Animals.Newcomer animal, PlacementRow row, LocalDate today) {
        UUID organisation = by.organisationId();
        Optional<RoomRow> before = roomOf(organisation, animal.id());
        placements.saveAndFlush(row);
        Set<UUID> concerned = new HashSet<>(Set.of(animal.id()));
        before.ifPresent(room -> {
            if (row.explained != null) {
                writer.save(writer.occurred(
                        by,
                        room.id(),
                        row.onDay,
                        animal.id(),
                        row.explained
                                ? policy.deaths().explained()
                                : policy.deaths().unexplained(),
                        row.reason,
                        EventSource.placement(row.id())));
            }
            writer.save(
                    writer.left(by, room.id(), row.onDay, animal.id(), Objects.requireNonNull(row.because), row.id()));
            follower.follow(by, animal.id(), looks.list(organisation, animal.id()));
            concerned.addAll(books.open(organisation, room.id(), row.onDay).animalsOn(today));
        });
        writer.announce(organisation, concerned);
        return new Moved(row, before, Optional.empty());
    }

    /**
     * Withdraws the last move of an animal, with everything that followed from it.
     *
     * @throws ProblemException 422 where it is not the last one
     */
    PlacementRow withdraw(EventWriter.By by, Animals.Newcomer animal, UUID about, String reason, LocalDate today) {
        UUID organisation = by.organisationId();
        PlacementRow last = whereabouts
                .findLast(organisation, animal.id())
                .filter(row -> row.id().equals(about))
                .orElseThrow(() -> fault(
                        "#/about",
                        "is not the last placement or departure of this animal that stands",
                        "the last one; those before it can be withdrawn after it"));
        PlacementRow row = row(by, animal.id(), PlacementRow.WITHDRAWN, last.onDay);
        row.about = about;
        row.reason = reason;
        placements.saveAndFlush(row);
        Set<UUID> touched = new HashSet<>();
        for (ClockEventRow event : events.listStandingOfAnimal(organisation, animal.id())) {
            if (event.isFrom(EventSource.Kind.PLACEMENT) && about.equals(event.sourceId)) {
                writer.withdraw(by, event, reason);
                touched.add(event.roomId);
            }
        }
        Set<UUID> concerned = new HashSet<>(Set.of(animal.id()));
        touched.forEach(room ->
                concerned.addAll(books.open(organisation, room, last.onDay).animalsOn(today)));
        // Signs and agents of a stay that never was are none of that room.
        follower.follow(by, animal.id(), looks.list(organisation, animal.id()));
        writer.announce(organisation, concerned);
        return row;
    }

    private RoomRow check(UUID organisation, Animals.Newcomer animal, Wanted wanted, boolean now) {
        Faults faults = new Faults();
        Optional<RoomRow> room = rooms.findById(new RowKey(organisation, wanted.roomId()));
        if (room.isEmpty()) {
            faults.add(Fault.at("#/roomId", "is no room here", "the id of a room"));
        }
        List<PlacementRow> standing = placements.listStanding(organisation, animal.id());
        if (!standing.isEmpty()) {
            PlacementRow last = standing.get(standing.size() - 1);
            checkDay(faults, last, wanted.on());
            if (wanted.roomId().equals(last.roomId)) {
                faults.add(Fault.at("#/roomId", "it stands there already, since " + last.onDay, "another room"));
            }
            if (Because.DIED.code().equals(last.because)) {
                faults.add(Fault.at(
                        "#",
                        "its death was recorded on " + last.onDay,
                        "an animal that lives; a departure recorded by mistake is withdrawn first"));
            } else if (!last.isPlaced() && !Because.RELEASED.code().equals(last.because) && !wanted.returned()) {
                faults.add(Fault.at(
                        "#/returned", "it left on " + last.onDay, "true, where it is here again, and the reason"));
            }
        }
        if (wanted.returned() && wanted.reason().isEmpty()) {
            faults.add(Fault.at("#/reason", "is missing", "how it comes that the animal is here again"));
        }
        if (now && room.filter(RoomRow::isOfResidents).isPresent()) {
            checkResident(faults, standing, wanted);
        }
        faults.orThrow();
        return room.orElseThrow();
    }

    /** Nobody becomes a resident by being moved: ending a quarantine is a decision of its own. */
    private void checkResident(Faults faults, List<PlacementRow> standing, Wanted wanted) {
        boolean wasKeptHere = !standing.isEmpty();
        boolean released = wasKeptHere && isAmongResidents(standing.get(standing.size() - 1));
        if (released) {
            return;
        }
        if (wasKeptHere) {
            faults.add(Fault.at(
                    "#/roomId",
                    "is a room of residents, and the animal's quarantine was not ended",
                    "a room for quarantine; a quarantine is ended by a release decision"));
        } else if (!wanted.residentAlready() || wanted.reason().isEmpty()) {
            faults.add(Fault.at(
                    "#/residentAlready",
                    "the room is one of residents",
                    "true, where the animal lived here before anything was recorded, and the reason; a newcomer goes"
                            + " to a room for quarantine"));
        }
    }

    private boolean isAmongResidents(PlacementRow last) {
        if (last.roomId == null) {
            return Because.RELEASED.code().equals(last.because);
        }
        return rooms.findById(new RowKey(last.key.organisationId(), last.roomId))
                .filter(RoomRow::isOfResidents)
                .isPresent();
    }

    private static void checkDay(Faults faults, PlacementRow last, LocalDate on) {
        if (on.isBefore(last.onDay)) {
            faults.add(Fault.at(
                    "#/on",
                    "is before " + last.onDay + ", when it was last moved",
                    "that day or later; a later move that was a mistake is withdrawn first"));
        }
    }

    private Arrival arrival(
            EventWriter.By by, Animals.Newcomer animal, RoomRow room, LocalDate on, UUID placement, LocalDate today) {
        UUID organisation = by.organisationId();
        List<KeptLook> seen = looks.list(organisation, animal.id());
        Stay stay = new Stay(placement, room.id(), on, Optional.empty());
        List<KeptLook> counting = new ArrayList<>();
        LookOccurrences.lastUpTo(seen, on).ifPresent(counting::add);
        seen.stream().filter(look -> look.localDate().isAfter(on)).forEach(counting::add);
        MinimumStay needs = room.isOfResidents()
                ? new MinimumStay(0, 0, false, List.of(new MinimumStay.Reason(0, "it is a resident", "")))
                : stays.needs(organisation, animal, counting);
        List<ClockEventRow> happened = new ArrayList<>();
        happened.add(writer.placed(by, room.id(), on, animal.id(), needs, placement));
        List<LookOccurrences.Sign> signs = LookOccurrences.list(policy, seen, List.of(stay));
        signs.stream()
                .filter(sign -> !follower.wasNothing(organisation, animal.id(), sign))
                .map(sign -> follower.event(by, animal.id(), sign))
                .forEach(happened::add);
        Set<String> causes =
                signs.stream().map(LookOccurrences.Sign::cause).collect(Collectors.toCollection(HashSet::new));
        List<ClockEventRow> carried = carriedAlong(by, animal.id(), room, on, placement, causes);
        carried.forEach(event -> causes.add(Objects.requireNonNull(event.cause)));
        happened.addAll(carried);
        happened.addAll(foundBefore(by, animal.id(), room, on, placement, causes));
        Placement effect = books.open(organisation, room.id(), on)
                .ifHappened(happened, animal.id(), today.isAfter(on) ? today : on);
        return new Arrival(room, needs, happened, effect);
    }

    /** What the room where it stood still waits for on its account. */
    private List<ClockEventRow> carriedAlong(
            EventWriter.By by, UUID animal, RoomRow room, LocalDate on, UUID placement, Set<String> already) {
        Optional<RoomRow> before =
                roomOf(by.organisationId(), animal).filter(old -> !old.id().equals(room.id()));
        if (before.isEmpty()) {
            return List.of();
        }
        RoomBook book = books.open(by.organisationId(), before.get().id(), on);
        ClockReading reading = book.read(on);
        Stream<UUID> waits = reading.standing()
                .fold(empty -> Stream.<UUID>empty(), running -> Stream.empty(), held -> held.waitingFor().stream());
        return Stream.concat(waits, reading.openQuestions().stream())
                .distinct()
                .flatMap(event -> book.find(event).stream())
                .filter(event -> animal.equals(event.animalId) && !already.contains(event.cause))
                .map(event -> writer.occurred(
                        by,
                        room.id(),
                        on,
                        animal,
                        Objects.requireNonNull(event.cause),
                        policy.says().carriedAlong(),
                        new EventSource(EventSource.Kind.PLACEMENT, placement, Optional.of("from:" + event.id()))))
                .toList();
    }

    /** What samples found before it stood in any room, unless a later one was negative. */
    private List<ClockEventRow> foundBefore(
            EventWriter.By by, UUID animal, RoomRow room, LocalDate on, UUID placement, Set<String> already) {
        if (roomOf(by.organisationId(), animal).isPresent()) {
            return List.of();
        }
        Map<String, KeptSample> found = new LinkedHashMap<>();
        for (KeptSample sample : samples.list(by.organisationId(), animal)) {
            if (sample.takenOn().isAfter(on)) {
                continue;
            }
            if (sample.outcome() == KeptSample.Outcome.NEGATIVE) {
                found.clear();
            }
            sample.agents().stream()
                    .sorted()
                    .forEach(
                            agent -> found.put(policy.causeOfAgent(agent, false).id(), sample));
        }
        List<ClockEventRow> events = new ArrayList<>();
        found.forEach((cause, sample) -> {
            if (!already.contains(cause)) {
                events.add(writer.occurred(
                        by,
                        room.id(),
                        on,
                        animal,
                        cause,
                        policy.getCause(cause).label() + ", in a sample taken on " + Why.words(sample.takenOn()),
                        new EventSource(EventSource.Kind.PLACEMENT, placement, Optional.of("sample:" + sample.id()))));
            }
        });
        return events;
    }

    private Optional<RoomRow> roomOf(UUID organisation, UUID animal) {
        return whereabouts
                .findLast(organisation, animal)
                .flatMap(row -> Optional.ofNullable(row.roomId))
                .flatMap(room -> rooms.findById(new RowKey(organisation, room)));
    }

    private PlacementRow row(EventWriter.By by, UUID animal, String kind, LocalDate on) {
        UUID person = Objects.requireNonNull(by.person(), "a person moves animals");
        return new PlacementRow(new RowKey(by.organisationId(), ids.next()), animal, kind, on, person, by.at());
    }

    private static ProblemException fault(String pointer, String wrong, String right) {
        return new ProblemException(
                ProblemType.INVALID_REQUEST,
                "One thing is wrong with the request.",
                List.of(Fault.at(pointer, wrong, right)));
    }
}
