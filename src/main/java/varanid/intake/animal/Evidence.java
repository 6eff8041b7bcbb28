package varanid.intake.animal;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** An answer to a question about origin. Unknown is the same as not answered. */
public enum Evidence {
    YES,
    NO,
    UNKNOWN;

    @JsonValue
    String code() {
        return name().toLowerCase(Locale.ROOT);
    }
}
