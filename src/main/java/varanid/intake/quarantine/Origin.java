package varanid.intake.quarantine;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Where a newcomer comes from, as far as it steers a quarantine: the riskier of what was declared and assessed. */
public enum Origin {
    CAPTIVE_SINGLE_SOURCE,
    CAPTIVE,
    FARMED,
    RANCHED,
    UNKNOWN,
    SEIZED,
    WILD;

    /** The word for it in data and requests. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<Origin> find(String code) {
        return Arrays.stream(values()).filter(each -> each.code().equals(code)).findFirst();
    }

    @Override
    public String toString() {
        return code();
    }
}
