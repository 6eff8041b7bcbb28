package varanid.intake.sample;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.Locale;

/** What was taken. */
enum SampleKind {
    STOOL,
    URATE,
    ORAL_SWAB,
    CLOACAL_SWAB,
    BLOOD,
    SKIN_SCRAPING,
    SHED_SKIN,
    PARASITE,
    OTHER;

    /** The code in requests, replies and the database. */
    @JsonValue
    String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** @throws IllegalArgumentException for what is no such code */
    static SampleKind get(String code) {
        return Arrays.stream(values())
                .filter(each -> each.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no such code: " + code));
    }
}
