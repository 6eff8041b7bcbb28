package varanid.intake.quarantine;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** The events of one space, told day by day; day 0 is 1 January 2027. */
final class Room {

    static final QuarantinePolicy POLICY = PolicyFile.read();
    static final LocalDate DAY_0 = LocalDate.of(2027, 1, 1);

    final List<ClockEvent> events = new ArrayList<>();

    static LocalDate day(int day) {
        return DAY_0.plusDays(day);
    }

    static UUID id(String name) {
        return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
    }

    static MinimumStay sixty() {
        return POLICY.minimumStay(Origin.CAPTIVE_SINGLE_SOURCE, Isolation.STANDARD, Set.of());
    }

    static MinimumStay ninety() {
        return POLICY.minimumStay(Origin.CAPTIVE, Isolation.STANDARD, Set.of());
    }

    static ClockEvent.Placed placing(int day, String animal, MinimumStay needs) {
        return new ClockEvent.Placed(id("place " + animal + day), day(day), id(animal), needs);
    }

    Room place(int day, String animal, MinimumStay needs) {
        return add(placing(day, animal, needs));
    }

    Room leave(int day, String animal) {
        return add(new ClockEvent.Left(id("leave " + animal + day), day(day), id(animal)));
    }

    Room occur(int day, String name, String cause) {
        return add(new ClockEvent.Occurred(id(name), day(day), cause, Optional.empty()));
    }

    Room vet(int day, String about, ClockEvent.Ruling ruling) {
        return add(new ClockEvent.VetSpoke(id("vet " + about + day), day(day), id(about), ruling, true));
    }

    Room treated(int day, String about) {
        return add(new ClockEvent.TreatmentEnded(id("treated " + about + day), day(day), id(about)));
    }

    Room lengthen(int day, int days) {
        return add(new ClockEvent.Lengthened(id("lengthen " + day), day(day), days, "rule of the house"));
    }

    Room decide(int day, int days) {
        return add(
                new ClockEvent.VetDecided(id("decide " + day), day(day), days, "as the vet sees it", Optional.empty()));
    }

    Room add(ClockEvent event) {
        events.add(event);
        return this;
    }

    QuarantineClock clock() {
        return new QuarantineClock(POLICY, events);
    }

    ClockReading read(int day) {
        return clock().read(day(day));
    }
}
