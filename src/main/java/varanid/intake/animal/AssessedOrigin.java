package varanid.intake.animal;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** Where the evidence says an animal comes from, from least wild to most. No legal finding. */
public enum AssessedOrigin {
    CAPTIVE_LIKELY,
    UNDETERMINED,
    WILD_LIKELY;

    @JsonValue
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
