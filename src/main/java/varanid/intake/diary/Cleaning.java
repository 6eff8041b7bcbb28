package varanid.intake.diary;

import com.fasterxml.jackson.annotation.JsonValue;

/** What was cleaned. */
public enum Cleaning {
    SPOT_CLEAN("spot-clean"),
    FULL_CLEAN("full-clean"),
    /** Nothing was said of cleaning. */
    NONE("none");

    private final String code;

    Cleaning(String code) {
        this.code = code;
    }

    @JsonValue
    public String code() {
        return code;
    }
}
