package varanid.intake.quarantine;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What is done on certain days. */
public enum TaskKind {
    WEIGHING,
    RE_LOOK,
    MITE_CHECK,
    FULL_CLEAN,
    FAECAL_SAMPLE,
    RELEASE_REVIEW,
    VET_VISIT;

    /** The word for it in data and requests. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<TaskKind> find(String code) {
        return Arrays.stream(values()).filter(each -> each.code().equals(code)).findFirst();
    }

    @Override
    public String toString() {
        return code();
    }
}
