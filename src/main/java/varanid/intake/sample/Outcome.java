package varanid.intake.sample;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.Locale;

/** What one method found, and what a sample comes to. */
enum Outcome {
    /** No result yet: never a method's. */
    PENDING,
    NEGATIVE,
    POSITIVE,
    /** The laboratory could not tell: never counts as negative. */
    EQUIVOCAL,
    UNUSABLE;

    /** The code in requests, replies and the database. */
    @JsonValue
    String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** @throws IllegalArgumentException for what is no such code */
    static Outcome get(String code) {
        return Arrays.stream(values())
                .filter(each -> each.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no such code: " + code));
    }
}
