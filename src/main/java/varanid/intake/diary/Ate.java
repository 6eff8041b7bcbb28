package varanid.intake.diary;

import com.fasterxml.jackson.annotation.JsonValue;

/** What became of its food. */
public enum Ate {
    ALL("all"),
    SOME("some"),
    /** Offered and refused. */
    NONE("none"),
    NOT_OFFERED("not-offered");

    private final String code;

    Ate(String code) {
        this.code = code;
    }

    @JsonValue
    public String code() {
        return code;
    }
}
