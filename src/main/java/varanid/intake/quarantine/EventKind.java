package varanid.intake.quarantine;

import java.util.Arrays;
import java.util.Locale;

/** What sort of event a clock is read from. */
enum EventKind {
    PLACED,
    LEFT,
    OCCURRED,
    VET_SPOKE,
    TREATMENT_ENDED,
    LENGTHENED,
    VET_DECIDED,
    /** Another was a mistake and counts for nothing. */
    WITHDRAWN;

    /** The word for it in data and requests. */
    String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** @throws IllegalArgumentException for no such word */
    static EventKind get(String code) {
        return Arrays.stream(values())
                .filter(each -> each.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no kind of event: " + code));
    }
}
