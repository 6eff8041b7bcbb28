package varanid.intake.quarantine;

import static org.assertj.core.api.Assertions.assertThat;
import static varanid.intake.quarantine.Room.day;
import static varanid.intake.quarantine.Room.id;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Laws, tried on seeded random histories of one space. */
class QuarantineClockLawsTest {

    private static final int CASES = Integer.getInteger("clock.cases", 2000);
    private static final int DAYS = 60;

    /** No event of these histories is later. */
    private static final LocalDate LAST_DAY = day(DAYS + 12);

    @Test
    void oneMoreCauseOrArrivalNeverMakesReleaseEarlier() {
        for (int seed = 0; seed < CASES; seed++) {
            Random random = new Random(seed);
            List<ClockEvent> events = history(random);
            List<ClockEvent> more = new ArrayList<>(events);
            more.add(random.nextInt(3) == 0 ? placed(random, id("one more")) : occurred(random, id("one more")));
            LocalDate asOf = day(20 + random.nextInt(DAYS));
            Optional<LocalDate> before = earliest(events, asOf);
            if (before.isPresent()) {
                assertThat(earliest(more, asOf).orElseThrow())
                        .as("seed %d, one more: %s", seed, more.get(more.size() - 1))
                        .isAfterOrEqualTo(before.get());
            }
        }
    }

    @Test
    void lengtheningOnlyLengthens() {
        for (int seed = 0; seed < CASES; seed++) {
            Random random = new Random(seed);
            List<ClockEvent> events = history(random);
            List<ClockEvent> more = new ArrayList<>(events);
            more.add(new ClockEvent.Lengthened(
                    id("one more"), day(random.nextInt(DAYS)), random.nextInt(200), "rule of the house"));
            LocalDate asOf = day(20 + random.nextInt(DAYS));
            Optional<LocalDate> before = earliest(events, asOf);
            assertThat(earliest(more, asOf).isPresent()).isEqualTo(before.isPresent());
            before.ifPresent(
                    date -> assertThat(earliest(more, asOf).orElseThrow()).isAfterOrEqualTo(date));
        }
    }

    /** But for two of a vet's decisions, or two of his words on one thing, on one day: there the later written stands. */
    @Test
    void theOrderInWhichEventsAreToldIsIrrelevant() {
        for (int seed = 0; seed < CASES; seed++) {
            Random random = new Random(seed);
            List<ClockEvent> events = history(random);
            ClockReading told = new QuarantineClock(Room.POLICY, events).read(LAST_DAY);
            List<ClockEvent> shuffled = new ArrayList<>(events);
            Collections.shuffle(shuffled, random);
            ClockReading retold = new QuarantineClock(Room.POLICY, shuffled).read(LAST_DAY);
            assertThat(retold.standing()).as("seed %d", seed).satisfies(standing -> {
                assertThat(standing.getClass()).isEqualTo(told.standing().getClass());
                assertThat(standing.earliest()).isEqualTo(told.standing().earliest());
            });
            assertThat(retold.animals()).isEqualTo(told.animals());
            assertThat(retold.neededDays()).isEqualTo(told.neededDays());
            assertThat(retold.openQuestions()).containsExactlyInAnyOrderElementsOf(told.openQuestions());
        }
    }

    @Test
    void releaseIsNeverBeforeTheStartAndTheDaysNeeded() {
        for (int seed = 0; seed < CASES; seed++) {
            ClockReading reading = new QuarantineClock(Room.POLICY, history(new Random(seed))).read(LAST_DAY);
            reading.standing()
                    .<Optional<LocalDate>>fold(
                            empty -> Optional.empty(),
                            running -> Optional.of(running.start()),
                            held -> Optional.of(held.start()))
                    .ifPresent(start -> assertThat(reading.standing().earliest().orElseThrow())
                            .isAfterOrEqualTo(start.plusDays(reading.neededDays())));
            assertThat(reading.standing() instanceof Standing.Empty)
                    .isEqualTo(reading.animals().isEmpty());
        }
    }

    @Test
    void waitingOneMoreDayNeverBringsReleaseNearer() {
        for (int seed = 0; seed < CASES; seed++) {
            QuarantineClock clock = new QuarantineClock(Room.POLICY, history(new Random(seed)));
            Optional<LocalDate> today = clock.read(LAST_DAY).standing().earliest();
            Optional<LocalDate> tomorrow =
                    clock.read(LAST_DAY.plusDays(1)).standing().earliest();
            assertThat(tomorrow.isPresent()).isEqualTo(today.isPresent());
            today.ifPresent(date -> assertThat(tomorrow.orElseThrow()).isAfterOrEqualTo(date));
        }
    }

    /** Whoever is not confirmed may let the days begin again or make them more, and ends nothing that is waited for. */
    @Test
    void anUnconfirmedAnswerNeverMakesReleaseEarlierOrAnswersAQuestion() {
        int later = 0;
        for (int seed = 0; seed < CASES; seed++) {
            Random random = new Random(seed);
            List<ClockEvent> events = history(random);
            List<ClockEvent> more = new ArrayList<>(events);
            for (ClockEvent event : events) {
                if (event instanceof ClockEvent.Occurred what && random.nextBoolean()) {
                    more.add(new ClockEvent.VetSpoke(
                            id("unconfirmed " + what.id()),
                            later(random, what.on()),
                            what.id(),
                            pick(random, ClockEvent.Ruling.values()),
                            false));
                }
            }
            for (int ahead : List.of(0, 1, 50, 400)) {
                LocalDate asOf = LAST_DAY.plusDays(ahead);
                ClockReading before = new QuarantineClock(Room.POLICY, events).read(asOf);
                ClockReading after = new QuarantineClock(Room.POLICY, more).read(asOf);
                assertThat(after.openQuestions()).as("seed " + seed).containsAll(before.openQuestions());
                if (before.standing() instanceof Standing.Held) {
                    assertThat(after.standing()).as("seed " + seed).isInstanceOf(Standing.Held.class);
                }
                if (before.standing().earliest().isPresent()) {
                    LocalDate then = after.standing().earliest().orElseThrow();
                    assertThat(then)
                            .as("seed " + seed)
                            .isAfterOrEqualTo(before.standing().earliest().get());
                    later += then.isAfter(before.standing().earliest().get()) ? 1 : 0;
                }
            }
        }
        assertThat(later).isPositive();
    }

    /** Plans are made up to that date, so that no task moves because somebody is waited for. */
    @Test
    void theDateWithoutWaitingDoesNotMoveByWaiting() {
        int held = 0;
        for (int seed = 0; seed < CASES; seed++) {
            QuarantineClock clock = new QuarantineClock(Room.POLICY, history(new Random(seed)));
            if (clock.read(LAST_DAY).standing() instanceof Standing.Held today) {
                held++;
                assertThat(today.withoutWaiting()).isBetween(today.start(), today.notBefore());
                for (int day : List.of(1, 2, 30, 300)) {
                    assertThat(clock.read(LAST_DAY.plusDays(day)).standing())
                            .isInstanceOfSatisfying(
                                    Standing.Held.class,
                                    later -> assertThat(later.withoutWaiting()).isEqualTo(today.withoutWaiting()));
                }
            }
        }
        assertThat(held).isGreaterThan(CASES / 10);
    }

    @Test
    void everyPlanLiesWithinItsSpan() {
        for (int seed = 0; seed < CASES; seed++) {
            Random random = new Random(seed);
            Origin origin = pick(random, Origin.values());
            Isolation isolation = pick(random, Isolation.values());
            MinimumStay stay = Room.POLICY.minimumStay(origin, isolation, Set.of());
            LocalDate start = day(random.nextInt(400));
            LocalDate release = start.plusDays(random.nextInt(400));
            QuarantinePlan plan = QuarantinePlan.make(
                    Room.POLICY,
                    new QuarantinePlan.Newcomer(
                            pick(random, Stage.values()), isolation, Set.of(), WorkPlace.SUSPECT, stay),
                    start,
                    release);
            assertThat(plan.tasks()).allSatisfy(task -> {
                assertThat(task.due()).isAfterOrEqualTo(start).isBeforeOrEqualTo(task.latest());
                assertThat(task.latest()).isBeforeOrEqualTo(release);
            });
            assertThat(plan.tasks().stream()
                            .map(task -> task.kind() + " " + task.ordinal())
                            .distinct())
                    .hasSameSizeAs(plan.tasks());
        }
    }

    private static Optional<LocalDate> earliest(List<ClockEvent> events, LocalDate asOf) {
        return new QuarantineClock(Room.POLICY, events).read(asOf).standing().earliest();
    }

    private static List<ClockEvent> history(Random random) {
        List<ClockEvent> events = new ArrayList<>();
        List<ClockEvent.Occurred> occurred = new ArrayList<>();
        List<LocalDate> decidedOn = new ArrayList<>();
        int length = 1 + random.nextInt(10);
        for (int i = 0; i < length; i++) {
            UUID id = id("event " + i);
            switch (random.nextInt(8)) {
                case 0, 1 -> events.add(placed(random, id));
                case 2, 3 -> {
                    ClockEvent.Occurred what = occurred(random, id);
                    occurred.add(what);
                    events.add(what);
                }
                case 4 -> {
                    if (!occurred.isEmpty()) {
                        // Each occurrence is spoken of once, so that the order of telling cannot matter.
                        ClockEvent.Occurred about = occurred.remove(random.nextInt(occurred.size()));
                        events.add(new ClockEvent.VetSpoke(
                                id,
                                later(random, about.on()),
                                about.id(),
                                pick(random, ClockEvent.Ruling.values()),
                                true));
                        if (random.nextBoolean()) {
                            events.add(new ClockEvent.TreatmentEnded(
                                    id("end " + i), later(random, about.on()), about.id()));
                        }
                    }
                }
                case 5 -> {
                    if (!occurred.isEmpty()) {
                        ClockEvent.Occurred about = pick(random, occurred.toArray(ClockEvent.Occurred[]::new));
                        events.add(new ClockEvent.TreatmentEnded(id, later(random, about.on()), about.id()));
                    }
                }
                case 6 -> {
                    LocalDate on = day(random.nextInt(DAYS));
                    if (random.nextBoolean() && !decidedOn.contains(on)) {
                        decidedOn.add(on);
                        events.add(new ClockEvent.VetDecided(
                                id, on, random.nextInt(150), "as the vet sees it", Optional.empty()));
                    } else {
                        events.add(new ClockEvent.Lengthened(id, on, random.nextInt(150), "rule of the house"));
                    }
                }
                default ->
                    events.add(new ClockEvent.Left(id, day(random.nextInt(DAYS)), id("animal " + random.nextInt(3))));
            }
        }
        return events;
    }

    private static ClockEvent.Placed placed(Random random, UUID id) {
        return new ClockEvent.Placed(
                id,
                day(random.nextInt(DAYS)),
                id("animal " + random.nextInt(3)),
                random.nextBoolean() ? Room.sixty() : Room.ninety());
    }

    private static ClockEvent.Occurred occurred(Random random, UUID id) {
        List<String> causes = Room.POLICY.causes().stream()
                .map(QuarantinePolicy.Cause::id)
                .filter(cause -> !cause.equals(QuarantinePolicy.NEW_ANIMAL))
                .toList();
        return new ClockEvent.Occurred(
                id, day(random.nextInt(DAYS)), causes.get(random.nextInt(causes.size())), Optional.empty());
    }

    private static LocalDate later(Random random, LocalDate than) {
        return than.plusDays(random.nextInt(12));
    }

    private static <T> T pick(Random random, T[] values) {
        return values[random.nextInt(values.length)];
    }
}
