package varanid.intake.account;

import java.time.ZoneId;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.IfMatch;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Role;

/** The organisation itself: what it is called, where it is, and whom to call. */
@Service
public class OwnOrganisation {

    private final Organisations organisations;

    OwnOrganisation(Organisations organisations) {
        this.organisations = organisations;
    }

    /**
     * What others may know of it.
     *
     * @param zone IANA name: dates are meant there
     * @param phone as it is dialled
     * @param version to be named where it is changed
     */
    public record Known(String name, String zone, Optional<String> phone, long version) {

        /** Whom to call and how, in one line; empty where nobody has said. */
        public Optional<String> toCall() {
            return phone.map(number -> name + ", " + number);
        }
    }

    /** Empty where there is none of that id. */
    @Transactional(readOnly = true)
    public Optional<Known> find(UUID organisationId) {
        return organisations
                .findById(organisationId)
                .map(row -> new Known(
                        row.name(),
                        row.zone(),
                        Optional.ofNullable(row.phone()),
                        Optional.ofNullable(row.version()).orElse(0L)));
    }

    /**
     * Changes all of it; what is left out is gone.
     *
     * @throws ProblemException 403 for who is no administrator, 412 where it was changed in between, 422 with every fault
     *     of the request
     */
    @Transactional
    public void change(Caller caller, IfMatch ifMatch, JsonRequest request) {
        changed(caller, ifMatch, request);
    }

    @Transactional
    OrganisationRow changed(Caller caller, IfMatch ifMatch, JsonRequest request) {
        caller.require(Role.ADMINISTRATOR);
        OrganisationController.OrganisationRequest change =
                request.read(OrganisationController.OrganisationRequest::reader);
        OrganisationRow row = get(caller);
        ifMatch.require(row.version());
        row.change(change.name(), ZoneId.of(change.zone()), change.phone());
        return organisations.saveAndFlush(row);
    }

    @Transactional(readOnly = true)
    OrganisationRow get(Caller caller) {
        return organisations
                .findById(caller.organisationId())
                .orElseThrow(() -> ProblemException.notFound("organisation"));
    }
}
