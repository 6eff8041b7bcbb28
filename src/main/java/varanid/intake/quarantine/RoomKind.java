package varanid.intake.quarantine;

import java.util.Locale;

/** Who stands in a room. */
enum RoomKind {
    /** Newcomers, who are kept apart. */
    QUARANTINE,
    /** Animals whose quarantine was ended, or that never were newcomers here. */
    RESIDENTS;

    /** The word for it in data and requests. */
    String code() {
        return name().toLowerCase(Locale.ROOT);
    }
}
