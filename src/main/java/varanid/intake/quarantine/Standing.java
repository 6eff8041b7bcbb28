package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;

/** How a clock stands. */
public sealed interface Standing {

    /** Nobody stands there: no clock. */
    record Empty() implements Standing {}

    /**
     * The days count.
     *
     * @param start day 0
     * @param earliestRelease the first day on which a person may end it; may lie in the past
     */
    record Running(LocalDate start, LocalDate earliestRelease) implements Standing {}

    /**
     * The days wait for a vet or for the end of a treatment.
     *
     * @param start day 0 as it is now
     * @param notBefore the earliest release if what it waits for came today; moves on with each day of waiting
     * @param withoutWaiting the same if each waiting had ended on the day it began: does not move by waiting, and so is
     *     what plans are made up to
     * @param waitingFor the occurrences it waits for, never none
     */
    record Held(LocalDate start, LocalDate notBefore, LocalDate withoutWaiting, List<UUID> waitingFor)
            implements Standing {
        public Held {
            waitingFor = List.copyOf(waitingFor);
        }
    }

    /** Does for each what is asked. */
    default <T> T fold(Function<Empty, T> empty, Function<Running, T> running, Function<Held, T> held) {
        if (this instanceof Running each) {
            return running.apply(each);
        }
        if (this instanceof Held each) {
            return held.apply(each);
        }
        return empty.apply((Empty) this);
    }

    /** The first day a release can be thought of, as things stand; nothing for an empty space. */
    default Optional<LocalDate> earliest() {
        return fold(
                empty -> Optional.empty(),
                running -> Optional.of(running.earliestRelease()),
                held -> Optional.of(held.notBefore()));
    }
}
