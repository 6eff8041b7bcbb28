package varanid.intake.share;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Keeps openings of a link and its revocation apart: many open it at once, and a revocation waits for them and lets none
 * follow. Of the database, because the service's role may lock no row of a table that it only adds to.
 */
@Component
@Transactional(propagation = Propagation.MANDATORY)
class LinkLocks {

    private final JdbcClient jdbc;

    LinkLocks(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Together with others, to the end of the transaction. */
    void holdToOpen(UUID linkId) {
        hold("SELECT pg_advisory_xact_lock_shared(hashtextextended(?, 0))", linkId);
    }

    /** Alone, to the end of the transaction. */
    void holdToRevoke(UUID linkId) {
        hold("SELECT pg_advisory_xact_lock(hashtextextended(?, 0))", linkId);
    }

    private void hold(String lock, UUID linkId) {
        jdbc.sql(lock)
                .param("openings of " + linkId)
                .query((row, number) -> number)
                .list();
    }
}
