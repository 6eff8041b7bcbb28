package varanid.intake.platform.web;

import java.time.ZoneId;
import java.util.Set;
import java.util.UUID;
import varanid.intake.platform.id.RowKey;

/**
 * Who sends the request. A controller takes it as a parameter; everything it reads or writes is in this organisation.
 *
 * @param organisationId the organisation that everything belongs to
 * @param personId the person
 * @param tokenId the token the request was sent with; of a session, its sign-in
 * @param roles what the person may do
 * @param zone the organisation's zone: dates are meant there
 * @param secret the token itself, or the key of the session: nothing but its hash is stored of either
 */
public record Caller(UUID organisationId, UUID personId, UUID tokenId, Set<Role> roles, ZoneId zone, Secret secret) {

    public Caller {
        roles = Set.copyOf(roles);
    }

    /** The key of one of the organisation's rows. */
    public RowKey key(UUID id) {
        return new RowKey(organisationId, id);
    }

    public boolean may(Role role) {
        return role.isGrantedBy(roles);
    }

    /** Whether the person cares for animals, as a keeper or as a clinician. */
    public boolean isKeeperOrClinician() {
        return may(Role.KEEPER) || may(Role.CLINICIAN);
    }

    /** @throws ProblemException 403 where the person is neither */
    public void requireKeeperOrClinician() {
        if (!may(Role.CLINICIAN)) {
            require(Role.KEEPER);
        }
    }

    /** @throws ProblemException 403 where the person has not that role's rights */
    public void require(Role role) {
        if (!may(role)) {
            throw ProblemException.forbidden("This needs the role " + role.code() + ".");
        }
    }
}
