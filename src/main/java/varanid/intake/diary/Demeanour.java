package varanid.intake.diary;

import com.fasterxml.jackson.annotation.JsonValue;

/** How it bears people, from calm to frantic; and dull, which is a sign to look at and not a good thing. */
public enum Demeanour {
    CALM("calm"),
    WATCHFUL("watchful"),
    UNEASY("uneasy"),
    FEARFUL("fearful"),
    FRANTIC("frantic"),
    /** Takes little notice of anything. Not on the scale. */
    DULL("dull");

    private final String code;

    Demeanour(String code) {
        this.code = code;
    }

    @JsonValue
    public String code() {
        return code;
    }

    /** Whether it says something about fear. */
    public boolean isOnScale() {
        return this != DULL;
    }

    /** Whether it is at least as fearful as the other; both are on the scale. */
    boolean isAtLeast(Demeanour other) {
        return ordinal() >= other.ordinal();
    }
}
