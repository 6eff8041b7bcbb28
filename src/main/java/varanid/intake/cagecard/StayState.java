package varanid.intake.cagecard;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import varanid.intake.quarantine.FollowUp;
import varanid.intake.quarantine.Standing;

/** How a quarantine stands, as a card says it. */
enum StayState {
    /** It stands in no room yet. */
    NOT_STARTED,
    RUNNING,
    /** The days wait for a vet, or for the end of a treatment. */
    HELD,
    /** It stands with residents, and nothing of its room is waited for. */
    RESIDENTS,
    GONE;

    /** The word for it in data and replies. */
    String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * The state and its days.
     *
     * @param start day 0
     * @param notBefore the first day on which a person may end it, as things stand
     */
    record Days(
            StayState state,
            @Nullable LocalDate start,
            @Nullable LocalDate notBefore) {}

    /**
     * By where it is and how the clock of its room stands.
     *
     * @param clock of that room, if it stands in one
     */
    static Days of(FollowUp.Where where, Optional<Standing> clock, LocalDate today) {
        return switch (where) {
            case GONE -> new Days(GONE, null, null);
            case NOT_PLACED -> new Days(NOT_STARTED, null, null);
            case IN_QUARANTINE -> clock.map(StayState::of).orElse(new Days(NOT_STARTED, null, null));
            // A room of residents has days of its own when something broke out in it.
            case RESIDENT ->
                clock.map(StayState::of)
                        .filter(days -> days.state() == HELD
                                || days.notBefore() != null && days.notBefore().isAfter(today))
                        .orElse(new Days(RESIDENTS, null, null));
        };
    }

    private static Days of(Standing clock) {
        return clock.fold(
                empty -> new Days(NOT_STARTED, null, null),
                running -> new Days(RUNNING, running.start(), running.earliestRelease()),
                held -> new Days(HELD, held.start(), held.notBefore()));
    }
}
