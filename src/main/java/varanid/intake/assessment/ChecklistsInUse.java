package varanid.intake.assessment;

import java.time.Clock;
import java.time.ZoneOffset;
import java.util.UUID;
import org.springframework.beans.factory.SmartInitializingSingleton;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.checklist.Catalogue;
import varanid.intake.checklist.Edition;
import varanid.intake.platform.start.CannotStart;

/**
 * Holds every checklist version to what it was when it was first used: the same version with other bytes is refused, at
 * start and again before anything is scored by it.
 */
@Component
class ChecklistsInUse implements SmartInitializingSingleton {

    private final JdbcClient jdbc;
    private final Catalogue catalogue;
    private final Clock clock;

    ChecklistsInUse(JdbcClient jdbc, Catalogue catalogue, Clock clock) {
        this.jdbc = jdbc;
        this.catalogue = catalogue;
        this.clock = clock;
    }

    @Override
    public void afterSingletonsInstantiated() {
        jdbc.sql("SELECT DISTINCT checklist_id, checklist_version, checklist_sha256 FROM checklist_in_use")
                .query((row, number) -> new Used(row.getString(1), row.getInt(2), row.getString(3)))
                .list()
                .forEach(used -> catalogue
                        .find(used.id(), used.version())
                        .filter(edition -> !edition.sha256().equals(used.sha256()))
                        .ifPresent(edition -> {
                            throw new CannotStart(
                                    "The checklist %s version %d is not the one that this database has used: its digest is %s, not %s."
                                            .formatted(used.id(), used.version(), edition.sha256(), used.sha256()),
                                    "Put the file back as it was, and make changes as a new version.");
                        }));
    }

    /** Keeps the file at first use. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void hold(UUID organisationId, Edition edition) {
        jdbc.sql("""
                        INSERT INTO checklist_in_use
                        (organisation_id, checklist_id, checklist_version, checklist_sha256, file, first_used_at)
                        VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING""")
                .params(
                        organisationId,
                        edition.id(),
                        edition.version(),
                        edition.sha256(),
                        edition.file(),
                        clock.instant().atOffset(ZoneOffset.UTC))
                .update();
        String used = jdbc.sql("""
                        SELECT checklist_sha256 FROM checklist_in_use
                        WHERE organisation_id = ? AND checklist_id = ? AND checklist_version = ?""")
                .params(organisationId, edition.id(), edition.version())
                .query(String.class)
                .single();
        if (!edition.sha256().equals(used)) {
            throw new IllegalStateException(
                    "checklist " + edition.id() + " version " + edition.version() + " was used as " + used);
        }
    }

    private record Used(String id, int version, String sha256) {}
}
