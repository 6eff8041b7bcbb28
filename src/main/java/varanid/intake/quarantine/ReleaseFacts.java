package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What is known of one animal when somebody asks whether its quarantine could end.
 *
 * @param asOf the local day of asking
 * @param clock the clock of its space, read on that day
 * @param samples stool samples of this animal, in any order
 * @param miteLooks every look for mites at this animal or the others of its space, in any order
 * @param lastLook the last answered checklist
 * @param weight what the weighings say
 * @param treatmentOpen a treatment that has begun and not ended, in words, for what it was; empty where none is
 * @param vetObjection who of the vets objects to the release; empty where none does. The last word of a vet counts
 * @param vetApproval who of the vets approved the release on which day; empty where nobody has
 * @param answers what vets answered, where any did
 * @param legalHold whether the animal is held by an authority; empty where nobody has said
 * @param seized whether its origin is a seizure, so that a hold must be ruled out
 */
public record ReleaseFacts(
        LocalDate asOf,
        ClockReading clock,
        List<StoolSample> samples,
        List<MiteLook> miteLooks,
        Optional<Look> lastLook,
        Weight weight,
        Optional<String> treatmentOpen,
        Optional<Approval> vetApproval,
        Optional<Approval> vetObjection,
        Optional<Answers> answers,
        Optional<Boolean> legalHold,
        boolean seized) {

    public ReleaseFacts {
        samples = List.copyOf(samples);
        miteLooks = List.copyOf(miteLooks);
    }

    /**
     * A stool sample.
     *
     * @param takenOn local day
     * @param freshHours how old it was when looked at or sent; empty where nobody wrote it down
     * @param result what came of it
     */
    public record StoolSample(LocalDate takenOn, Optional<Integer> freshHours, Result result) {}

    /** What came of a sample. */
    public enum Result {
        NEGATIVE,
        POSITIVE,
        PENDING,
        UNUSABLE
    }

    /** Somebody looked for mites. */
    public record MiteLook(LocalDate on, boolean seen) {}

    /**
     * The last answered checklist.
     *
     * @param on local day
     * @param signs labels of the findings that were not as they should be; empty where there were none
     * @param unseen labels of findings that must be seen and were not
     */
    public record Look(LocalDate on, List<String> signs, List<String> unseen) {
        public Look {
            signs = List.copyOf(signs);
            unseen = List.copyOf(unseen);
        }
    }

    /** What the weighings say. */
    public enum Weight {
        NOT_FALLING,
        /** A growing animal that surely has not gained. */
        NOT_GAINING,
        FALLING,
        CANNOT_TELL
    }

    /**
     * What vets answered.
     *
     * @param standing the answer that stands, in words; empty where none is confirmed
     * @param newSince what its writer had not seen and a vet is to be called for, in words
     * @param unconfirmed answers after it that nobody has confirmed, in words
     */
    public record Answers(Optional<String> standing, List<String> newSince, List<String> unconfirmed) {
        public Answers {
            newSince = List.copyOf(newSince);
            unconfirmed = List.copyOf(unconfirmed);
        }
    }

    /** What a vet said of the release, for or against it. */
    public record Approval(String by, LocalDate on) {}
}
