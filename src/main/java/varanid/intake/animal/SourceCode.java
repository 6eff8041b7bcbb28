package varanid.intake.animal;

/**
 * A CITES source code and what it says about a live monitor.
 *
 * @param code one capital letter
 * @param use whether an animal can have it
 * @param risk how wild an animal so declared is to be treated
 * @param points what the declaration adds to the evidence of a wild origin, zero or more
 * @param meaning in plain words
 */
record SourceCode(String code, Use use, OriginRisk risk, int points, String meaning) {

    /** Whether a live monitor can have the code. */
    enum Use {
        PLAUSIBLE,
        IMPLAUSIBLE,
        APPENDIX_I_ONLY,
        PLANTS_ONLY
    }

    SourceCode {
        if (points < 0) {
            throw new IllegalArgumentException("a declared captive origin is no evidence of one: " + code);
        }
    }
}
