package varanid.intake.account;

import jakarta.persistence.LockModeType;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.Lock;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

interface Organisations extends Repository<OrganisationRow, UUID> {

    OrganisationRow save(OrganisationRow row);

    OrganisationRow saveAndFlush(OrganisationRow row);

    Optional<OrganisationRow> findById(UUID organisationId);

    Optional<OrganisationRow> findByMadeAtFirstStartTrue();

    /** Whoever holds it is alone in changing who belongs to the organisation. */
    @Lock(LockModeType.PESSIMISTIC_WRITE)
    @Query("select o from OrganisationRow o where o.organisationId = :organisationId")
    Optional<OrganisationRow> lock(UUID organisationId);
}
