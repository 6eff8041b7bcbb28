package varanid.intake.visit;

import java.util.Locale;

/** The parts of a summary, in the order a clinician thinks. */
enum Part {
    /** Which animal, and why it is shown now. */
    WHO_AND_WHY,
    /** What a vet answered before, in the vet's words. */
    VETS_ANSWERS,
    /** What was seen at the last look; what could not be seen; what was looked for and is absent. */
    FINDINGS,
    /** Weights, what they changed by, condition. */
    WEIGHT,
    /** Last meal, stool, urate, drink. */
    INTAKE_AND_OUTPUT,
    /** Treatments already given, as reported. */
    TREATMENTS,
    SURROUNDINGS,
    /** Where it comes from, its papers, what it was exposed to. */
    ORIGIN,
    SAMPLES,
    /** How it is handled safely, who was bitten, who is vulnerable. */
    HANDLING,
    /** Isolation, quarantine, what has been done and what has not. */
    DONE_AND_NOT_DONE,
    /** What the checklist works out, and why. */
    RECOMMENDATION,
    /** The questions of those who care for it. */
    QUESTIONS,
    /** Who decides, who pays, whether an authority holds it, whom to call. */
    CONSENT_AND_CONTACT,
    /** What was before: earlier looks, diary, every weighing. For a second page. */
    HISTORY;

    /** The word for it in files and replies. */
    String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Whether it may stand on a second page. */
    boolean isForLater() {
        return this == HISTORY;
    }
}
