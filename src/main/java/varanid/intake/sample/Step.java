package varanid.intake.sample;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.Locale;

/** What became of a sample. */
enum Step {
    SENT,
    RECEIVED,
    /** It never arrived, or nobody finds it. */
    LOST,
    /** It arrived, but nothing can be found out from it. */
    UNUSABLE;

    /** The code in requests, replies and the database. */
    @JsonValue
    String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** @throws IllegalArgumentException for what is no such code */
    static Step get(String code) {
        return Arrays.stream(values())
                .filter(each -> each.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no such code: " + code));
    }
}
