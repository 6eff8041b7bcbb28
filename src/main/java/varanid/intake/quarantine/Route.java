package varanid.intake.quarantine;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How something contagious travels. */
public enum Route {
    AIR,
    CONTACT;

    /** The word for it in data and requests. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<Route> find(String code) {
        return Arrays.stream(values()).filter(each -> each.code().equals(code)).findFirst();
    }

    @Override
    public String toString() {
        return code();
    }
}
