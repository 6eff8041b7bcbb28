package varanid.intake.quarantine;

import java.util.List;
import java.util.Locale;

/** One condition of release, and how it stands. */
public sealed interface ReleaseCondition {

    /** Its code: stays the same, so that an override can name it. */
    Id id();

    /** What speaks for that, in words. */
    List<String> evidence();

    /** It is met. */
    record Met(Id id, List<String> evidence) implements ReleaseCondition {
        public Met {
            evidence = List.copyOf(evidence);
        }
    }

    /**
     * It is not met.
     *
     * @param missing what is missing
     */
    record Unmet(Id id, List<String> evidence, String missing) implements ReleaseCondition {
        public Unmet {
            evidence = List.copyOf(evidence);
        }
    }

    /**
     * Nobody knows.
     *
     * @param findOut what to find out
     */
    record Unknown(Id id, List<String> evidence, String findOut) implements ReleaseCondition {
        public Unknown {
            evidence = List.copyOf(evidence);
        }
    }

    /** The conditions there are, in the order they are listed. */
    enum Id {
        MINIMUM_STAY,
        VETS_WORD,
        STOOL_NEGATIVE,
        MITE_FREE,
        LAST_LOOK,
        WEIGHT,
        TREATMENT_ENDED,
        VET_APPROVAL,
        NO_LEGAL_HOLD;

        /** The word for it in data and requests. */
        public String code() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }
}
