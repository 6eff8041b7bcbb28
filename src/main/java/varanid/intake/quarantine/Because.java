package varanid.intake.quarantine;

import java.util.List;
import java.util.Locale;

/** Why an animal stands in no room any more. */
enum Because {
    DIED,
    /** To another keeper or organisation. */
    MOVED_ON,
    RETURNED_TO_OWNER,
    TAKEN_BY_AUTHORITY,
    ESCAPED,
    /** Its quarantine was ended by a decision; it is still kept here, in no room that is recorded. */
    RELEASED;

    /** Those that can be recorded as a departure: a release is a decision of its own. */
    static final List<Because> DEPARTURES = List.of(DIED, MOVED_ON, RETURNED_TO_OWNER, TAKEN_BY_AUTHORITY, ESCAPED);

    /** The word for it in data and requests. */
    String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
