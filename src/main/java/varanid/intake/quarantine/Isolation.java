package varanid.intake.quarantine;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How strictly apart, from less to more. */
public enum Isolation {
    STANDARD,
    STRICT;

    /** The word for it in data and requests. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<Isolation> find(String code) {
        return Arrays.stream(values()).filter(each -> each.code().equals(code)).findFirst();
    }

    @Override
    public String toString() {
        return code();
    }
}
