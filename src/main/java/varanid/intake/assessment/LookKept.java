package varanid.intake.assessment;

import java.util.Optional;
import java.util.UUID;

/**
 * A look was kept. Published within the transaction that keeps it, after its row was flushed and while the
 * organisation's lock is held; {@link varanid.intake.animal.AnimalChanged} follows.
 *
 * @param supersedes the look that this one corrects, which counts for nothing from now on
 */
public record LookKept(UUID organisationId, KeptLook look, Optional<UUID> supersedes) {}
