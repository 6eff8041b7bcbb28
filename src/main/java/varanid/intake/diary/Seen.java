package varanid.intake.diary;

import com.fasterxml.jackson.annotation.JsonValue;

/** How it was found. */
public enum Seen {
    ACTIVE("active"),
    BASKING("basking"),
    HIDING("hiding"),
    IN_WATER("in-water"),
    NOT_SEEN("not-seen");

    private final String code;

    Seen(String code) {
        this.code = code;
    }

    @JsonValue
    public String code() {
        return code;
    }
}
