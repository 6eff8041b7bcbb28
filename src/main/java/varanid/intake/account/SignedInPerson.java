package varanid.intake.account;

import java.util.UUID;

/** Who has shown who they are. */
public record SignedInPerson(UUID organisationId, UUID personId) {}
