package varanid.intake.platform.web;

/** Writes a refusal as a page, for people in a browser; the feature that knows how pages look implements it. */
public interface ErrorPage {

    /** A whole page, in UTF-8. */
    byte[] write(ProblemException problem);
}
