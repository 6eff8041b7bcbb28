package varanid.intake.quarantine;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Where an animal stands in the order of the rounds, first to last. */
public enum WorkPlace {
    RESIDENTS,
    NEWCOMERS_WITHOUT_SIGNS,
    SUSPECT,
    SICK;

    /** The word for it in data and requests. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<WorkPlace> find(String code) {
        return Arrays.stream(values()).filter(each -> each.code().equals(code)).findFirst();
    }

    @Override
    public String toString() {
        return code();
    }
}
