package varanid.intake.platform.web;

import java.util.Optional;

/** A request whose effect happens once, where it has an Idempotency-Key. */
public sealed interface KeyedRequest permits JsonRequest, FileRequest {

    /** The Idempotency-Key. */
    Optional<String> key();

    /** SHA-256 of everything that makes it this request: method, path with query, and what was sent. */
    byte[] hash();
}
