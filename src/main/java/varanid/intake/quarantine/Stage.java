package varanid.intake.quarantine;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How grown an animal is, in the order of the rounds; an unknown stage counts as the youngest. */
public enum Stage {
    UNKNOWN,
    HATCHLING,
    JUVENILE,
    SUBADULT,
    ADULT;

    /** The word for it in data and requests. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<Stage> find(String code) {
        return Arrays.stream(values()).filter(each -> each.code().equals(code)).findFirst();
    }

    @Override
    public String toString() {
        return code();
    }
}
