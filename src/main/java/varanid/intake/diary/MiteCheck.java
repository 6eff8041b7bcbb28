package varanid.intake.diary;

import com.fasterxml.jackson.annotation.JsonValue;

/** What a look for mites found. */
public enum MiteCheck {
    NONE_SEEN("none-seen"),
    SEEN("seen"),
    /** Nobody said that they looked. */
    NOT_LOOKED("not-looked");

    private final String code;

    MiteCheck(String code) {
        this.code = code;
    }

    @JsonValue
    public String code() {
        return code;
    }
}
