package varanid.intake.quarantine;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

/** The events of one room since it was last empty before some day, and the clock that is read from them. */
final class RoomBook {

    private final QuarantinePolicy policy;
    private final JsonMapper json;
    private final UUID roomId;
    private final List<ClockEventRow> rows;
    private final Map<UUID, ClockEventRow> withdrawals = new HashMap<>();
    private final Map<UUID, ClockEventRow> counting = new HashMap<>();
    private final QuarantineClock clock;

    /**
     * @param rows by day, those of one day in the order they were recorded
     * @throws IllegalArgumentException naming every event that makes no sense
     */
    RoomBook(QuarantinePolicy policy, JsonMapper json, UUID roomId, List<ClockEventRow> rows) {
        this.policy = policy;
        this.json = json;
        this.roomId = roomId;
        this.rows = List.copyOf(rows);
        for (ClockEventRow row : rows) {
            if (row.is(EventKind.WITHDRAWN) && row.about != null) {
                withdrawals.put(row.about, row);
            }
        }
        for (ClockEventRow row : rows) {
            if (!row.is(EventKind.WITHDRAWN) && !withdrawals.containsKey(row.id()) && isAboutWhatCounts(row)) {
                counting.put(row.id(), row);
            }
        }
        this.clock = new QuarantineClock(
                policy, rows.stream().filter(this::counts).map(this::event).toList());
    }

    /** What a vet said about an occurrence that was withdrawn since counts no more than that does. */
    private boolean isAboutWhatCounts(ClockEventRow row) {
        if (row.about == null) {
            return true;
        }
        return rows.stream()
                .anyMatch(each -> each.id().equals(row.about)
                        && each.is(EventKind.OCCURRED)
                        && !withdrawals.containsKey(each.id())
                        && !each.onDay.isAfter(row.onDay));
    }

    UUID roomId() {
        return roomId;
    }

    boolean counts(ClockEventRow row) {
        return counting.containsKey(row.id());
    }

    /** The event of that id that counts. */
    Optional<ClockEventRow> find(UUID event) {
        return Optional.ofNullable(counting.get(event));
    }

    /** The placing of an animal that counts. */
    Optional<ClockEventRow> findPlaced(UUID animal, UUID placement) {
        return rows.stream()
                .filter(row -> row.is(EventKind.PLACED)
                        && counts(row)
                        && animal.equals(row.animalId)
                        && placement.equals(row.sourceId))
                .findFirst();
    }

    /** What withdrew it. */
    Optional<ClockEventRow> findWithdrawal(UUID event) {
        return Optional.ofNullable(withdrawals.get(event));
    }

    /** Events up to that day that count for nothing, withdrawals left out. */
    List<ClockEventRow> listWithoutEffect(LocalDate asOf) {
        return rows.stream()
                .filter(row -> !row.is(EventKind.WITHDRAWN) && !counts(row) && !row.onDay.isAfter(asOf))
                .toList();
    }

    /** Whether an animal came or something occurred on a day up to that, and was recorded later than that moment. */
    boolean happenedSince(Instant moment, LocalDate upTo) {
        return rows.stream()
                .anyMatch(row -> (row.is(EventKind.PLACED) || row.is(EventKind.OCCURRED))
                        && counts(row)
                        && row.recordedAt.isAfter(moment)
                        && !row.onDay.isAfter(upTo));
    }

    ClockReading read(LocalDate asOf) {
        return clock.read(asOf);
    }

    /** Who stands there at the end of the day, and who stood there at its beginning. */
    Set<UUID> animalsOn(LocalDate day) {
        Set<UUID> animals = read(day).animals().stream().collect(Collectors.toSet());
        animals.addAll(read(day.minusDays(1)).animals());
        return animals;
    }

    /** Who stands there after all that is recorded. */
    Set<UUID> lastAnimals() {
        return rows.isEmpty() ? Set.of() : read(rows.get(rows.size() - 1).onDay).animals();
    }

    /** What these would do, read on a day. */
    Placement ifHappened(List<ClockEventRow> more, UUID newcomer, LocalDate asOf) {
        return clock.ifHappened(more.stream().map(this::event).toList(), newcomer, asOf);
    }

    /** The same book with more in it. */
    RoomBook with(List<ClockEventRow> more) {
        List<ClockEventRow> all = new ArrayList<>(rows);
        all.addAll(more);
        all.sort(Comparator.comparing((ClockEventRow row) -> row.onDay)
                .thenComparing(row -> row.id().toString()));
        return new RoomBook(policy, json, roomId, all);
    }

    private ClockEvent event(ClockEventRow row) {
        Optional<UUID> about = Optional.ofNullable(row.about);
        return switch (EventKind.get(row.kind)) {
            case PLACED -> new ClockEvent.Placed(row.id(), row.onDay, needed(row.animalId), needs(row));
            case LEFT -> new ClockEvent.Left(row.id(), row.onDay, needed(row.animalId));
            case OCCURRED -> new ClockEvent.Occurred(row.id(), row.onDay, needed(row.cause), row.animal());
            case VET_SPOKE ->
                new ClockEvent.VetSpoke(
                        row.id(),
                        row.onDay,
                        about.orElseThrow(),
                        ClockEvent.Ruling.get(needed(row.ruling)),
                        !row.unconfirmed);
            case TREATMENT_ENDED -> new ClockEvent.TreatmentEnded(row.id(), row.onDay, about.orElseThrow());
            case LENGTHENED -> new ClockEvent.Lengthened(row.id(), row.onDay, needed(row.days), needed(row.reason));
            case VET_DECIDED ->
                new ClockEvent.VetDecided(row.id(), row.onDay, needed(row.days), needed(row.reason), row.animal());
            case WITHDRAWN -> throw new IllegalArgumentException("counts for nothing: " + row.id());
        };
    }

    MinimumStay needs(ClockEventRow row) {
        return json.readValue(needed(row.minimumStay), MinimumStay.class);
    }

    private static <T> T needed(@Nullable T value) {
        return Objects.requireNonNull(value, "the table has it");
    }
}
