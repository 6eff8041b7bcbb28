package varanid.intake.animal;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

enum Sex {
    FEMALE,
    MALE,
    UNKNOWN;

    @JsonValue
    String code() {
        return name().toLowerCase(Locale.ROOT);
    }
}
