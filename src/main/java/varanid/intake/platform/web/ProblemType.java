package varanid.intake.platform.web;

import java.net.URI;

/**
 * A kind of problem (RFC 9457): the same type always has the same title and status. A feature may have its own.
 *
 * @param name the last part of the type's URI reference {@code /problems/…}
 * @param status the HTTP status
 * @param title what kind of problem it is, the same every time
 */
public record ProblemType(String name, int status, String title) {

    public static final ProblemType MALFORMED_REQUEST =
            new ProblemType("malformed-request", 400, "The request cannot be read");
    public static final ProblemType UNAUTHENTICATED =
            new ProblemType("unauthenticated", 401, "A valid token is needed");
    public static final ProblemType FORBIDDEN = new ProblemType("forbidden", 403, "The token's person may not do this");
    public static final ProblemType NOT_FROM_OUR_PAGE = new ProblemType(
            "not-from-our-page", 403, "The request does not show that it comes from this service's page");
    public static final ProblemType NOT_FOUND = new ProblemType("not-found", 404, "There is nothing here");
    public static final ProblemType METHOD_NOT_ALLOWED =
            new ProblemType("method-not-allowed", 405, "The method is not possible here");
    public static final ProblemType NOT_ACCEPTABLE =
            new ProblemType("not-acceptable", 406, "No such representation is available");
    public static final ProblemType CONFLICT =
            new ProblemType("conflict", 409, "The request clashes with what is already there");
    public static final ProblemType IN_FLIGHT =
            new ProblemType("request-in-flight", 409, "A request with the same key is still being worked on");
    public static final ProblemType STALE =
            new ProblemType("changed-meanwhile", 412, "It was changed since it was read");
    public static final ProblemType TOO_LARGE = new ProblemType("too-large", 413, "The request is too large");
    public static final ProblemType UNSUPPORTED_MEDIA_TYPE =
            new ProblemType("unsupported-media-type", 415, "The body is of another media type");
    public static final ProblemType INVALID_REQUEST =
            new ProblemType("invalid-request", 422, "The request can be read but not accepted");
    public static final ProblemType KEY_REUSED =
            new ProblemType("idempotency-key-reused", 422, "The key was used for another request");
    public static final ProblemType PRECONDITION_REQUIRED =
            new ProblemType("precondition-required", 428, "Say which version is to be changed");
    public static final ProblemType TOO_MANY_REQUESTS =
            new ProblemType("too-many-requests", 429, "Too many requests in a short time");
    public static final ProblemType INTERNAL =
            new ProblemType("internal-error", 500, "The service failed; the request may be repeated");
    public static final ProblemType UNAVAILABLE =
            new ProblemType("unavailable", 503, "The database cannot be reached at the moment");

    /** The relative type URI. */
    public URI uri() {
        return URI.create("/problems/" + name);
    }
}
