package varanid.intake.platform.web;

/** Finds out who a bearer token belongs to; the feature that knows people implements it. */
public interface CallerLookup {

    /** What became of a token. */
    sealed interface Result {}

    /** It is good, and this is who it is. */
    record Known(Caller caller) implements Result {}

    /** It is not, and why, in a sentence that gives away nothing to who does not hold the token. */
    record Refused(String why) implements Result {}

    /** Looks the token up, whatever it looks like, doing the same work for any. */
    Result find(String token);
}
