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
        MINIMUM_STAY("the days are over"),
        VETS_WORD("a vet has spoken about everything that was asked"),
        STOOL_NEGATIVE("stool samples were negative"),
        MITE_FREE("no mites for long enough"),
        LAST_LOOK("a look lately, without signs"),
        WEIGHT("its weight holds"),
        TREATMENT_ENDED("no treatment goes on"),
        VET_APPROVAL("a vet approves"),
        NOTHING_NEW_SINCE_VET("nothing new since the vet's answer"),
        NO_LEGAL_HOLD("no authority holds it");

        private final String label;

        Id(String label) {
            this.label = label;
        }

        /** What is to be so, in words. */
        public String label() {
            return label;
        }

        /** The word for it in data and requests. */
        public String code() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }
}
