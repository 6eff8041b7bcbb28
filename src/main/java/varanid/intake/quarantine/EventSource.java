package varanid.intake.quarantine;

import java.util.Locale;
import java.util.Optional;
import java.util.UUID;

/**
 * The record that an event follows from. Such an event is not withdrawn by itself: that record is corrected.
 *
 * @param part which part of the record, such as the finding of a look
 */
record EventSource(Kind kind, UUID id, Optional<String> part) {

    /** What sort of record. */
    enum Kind {
        PLACEMENT,
        ASSESSMENT,
        RESULT,
        VET_ANSWER;

        /** The word for it in data and replies. */
        String code() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    static EventSource answer(UUID id) {
        return new EventSource(Kind.VET_ANSWER, id, Optional.empty());
    }

    static EventSource placement(UUID id) {
        return new EventSource(Kind.PLACEMENT, id, Optional.empty());
    }
}
