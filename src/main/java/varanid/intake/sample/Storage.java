package varanid.intake.sample;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.Locale;

/** How a sample was kept until it was looked at. */
enum Storage {
    COOL,
    ROOM,
    FROZEN,
    PRESERVED;

    /** The code in requests, replies and the database. */
    @JsonValue
    String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** @throws IllegalArgumentException for what is no such code */
    static Storage get(String code) {
        return Arrays.stream(values())
                .filter(each -> each.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no such code: " + code));
    }
}
