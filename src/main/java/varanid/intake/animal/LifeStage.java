package varanid.intake.animal;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** How grown an animal is. */
public enum LifeStage {
    HATCHLING,
    JUVENILE,
    SUBADULT,
    ADULT,
    UNKNOWN;

    @JsonValue
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }
}
