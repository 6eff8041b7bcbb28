package varanid.intake.platform.database;

import java.util.Arrays;
import java.util.Optional;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationVersion;
import varanid.intake.platform.start.CannotStart;

/** Brings the tables up to date; refuses tables that are ahead of this program, which Flyway alone would accept. */
final class Migration {

    private Migration() {}

    static void run(Flyway flyway) {
        try {
            refuseNewer(flyway.info().all());
            flyway.migrate();
        } catch (FlywayException e) {
            throw new CannotStart(
                    "The tables of the database could not be brought up to date: " + e.getMessage(),
                    "What was stored is unharmed: each step is done whole or not at all. Start the version of Varanid"
                            + " Intake that ran before, or report this message.",
                    e);
        }
    }

    private static void refuseNewer(MigrationInfo[] migrations) {
        Optional<MigrationVersion> newer = Arrays.stream(migrations)
                .filter(migration -> migration.getState().isApplied()
                        && !migration.getState().isResolved())
                .map(MigrationInfo::getVersion)
                .filter(version -> version != null)
                .max(MigrationVersion::compareTo);
        if (newer.isPresent()) {
            String known = Arrays.stream(migrations)
                    .filter(migration -> migration.getState().isResolved() && migration.getVersion() != null)
                    .map(MigrationInfo::getVersion)
                    .max(MigrationVersion::compareTo)
                    .map(MigrationVersion::getVersion)
                    .orElse("none");
            throw new CannotStart(
                    "The database was used by a newer version of Varanid Intake: its tables have version %s, this"
                                    .formatted(newer.get().getVersion())
                            + " program knows versions up to %s.".formatted(known),
                    "Start the newer version, or restore the backup from before it. Nothing was changed.");
        }
    }
}
