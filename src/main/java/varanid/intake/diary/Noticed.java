package varanid.intake.diary;

import com.fasterxml.jackson.annotation.JsonValue;

/** Whether a thing happened, as far as somebody could tell. */
public enum Noticed {
    YES("yes"),
    NO("no"),
    /** Nobody could tell; never counts as no. */
    NOT_SEEN("not-seen");

    private final String code;

    Noticed(String code) {
        this.code = code;
    }

    @JsonValue
    public String code() {
        return code;
    }
}
