package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;

/** Something that happened in one space and that its clock may have to do with. */
public sealed interface ClockEvent {

    /** Its own id, by which others speak of it. */
    UUID id();

    /** The local day of the organisation on which it happened. */
    LocalDate on();

    /** An animal came to stand in the space. What it brings restarts the days of all. */
    record Placed(UUID id, LocalDate on, UUID animal, MinimumStay needs) implements ClockEvent {}

    /** An animal no longer stands in the space: moved, released or dead. A death is an {@link Occurred} besides. */
    record Left(UUID id, LocalDate on, UUID animal) implements ClockEvent {}

    /**
     * One of the causes that the policy names: a sign, an agent found, a death, a slip.
     *
     * @param cause its code in the policy
     * @param animal which animal, where it was one
     */
    record Occurred(UUID id, LocalDate on, String cause, Optional<UUID> animal) implements ClockEvent {}

    /**
     * A vet has spoken about something that occurred.
     *
     * @param about its id
     * @param confirmed whether it is certain that a vet has: otherwise it may begin the days again, and ends nothing that
     *     is waited for
     */
    record VetSpoke(UUID id, LocalDate on, UUID about, Ruling ruling, boolean confirmed) implements ClockEvent {}

    /**
     * The treatment for something that occurred has ended. Where another course follows, the later end counts.
     *
     * @param about its id
     */
    record TreatmentEnded(UUID id, LocalDate on, UUID about) implements ClockEvent {}

    /**
     * The organisation keeps all that stand there longer.
     *
     * @param days at least so many from the start; fewer than they need anyway changes nothing
     */
    record Lengthened(UUID id, LocalDate on, int days, String reason) implements ClockEvent {
        public Lengthened {
            requireDays(days);
        }
    }

    /**
     * A vet decides how many days those that stand there need, longer or shorter, below the floor too. It also settles
     * the days without mites that were running. Later causes and later arrivals bring their own needs again.
     *
     * @param days from the start
     * @param reason as the vet gave it
     * @param animal the only one it is about; of others that stand there it changes neither the need nor the days without
     *     mites. All of them where there is none
     */
    record VetDecided(UUID id, LocalDate on, int days, String reason, Optional<UUID> animal) implements ClockEvent {
        public VetDecided {
            requireDays(days);
        }
    }

    /** What a vet says about an occurrence. */
    enum Ruling {
        /** The days begin again on the day the vet spoke. */
        RESTARTS,
        /** The days begin again when the treatment for it has ended, and wait until then. */
        RESTARTS_AFTER_TREATMENT,
        /** The days go on; those of the pause stay uncounted. */
        GOES_ON,
        /** It was nothing: as though it had not occurred. */
        WAS_NOTHING;

        /** The word for it in data and requests. */
        public String code() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }

        /** @throws IllegalArgumentException for no such word */
        public static Ruling get(String code) {
            return Arrays.stream(values())
                    .filter(each -> each.code().equals(code))
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("no ruling: " + code));
        }
    }

    private static void requireDays(int days) {
        if (days < 0 || days > MinimumStay.MOST_DAYS) {
            throw new IllegalArgumentException("from 0 to " + MinimumStay.MOST_DAYS + " days, not " + days);
        }
    }
}
