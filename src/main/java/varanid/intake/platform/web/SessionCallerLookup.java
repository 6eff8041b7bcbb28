package varanid.intake.platform.web;

import java.util.Optional;
import java.util.UUID;

/**
 * Finds out who a signed-in person is now, at each request: what they may do can have changed, and whether they are
 * still of the organisation. The feature that knows people implements it.
 */
public interface SessionCallerLookup {

    /**
     * @param signInId of this sign-in, in place of a token's id
     * @param key the browser's secret, in place of a token
     * @return nothing where they are no active person of the organisation
     */
    Optional<Caller> find(UUID organisationId, UUID personId, UUID signInId, Secret key);
}
