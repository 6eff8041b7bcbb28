package varanid.intake.platform.database;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * One change of an organisation's animals at a time. What is worked out from many records (a clock, a work list) is
 * then worked out from all of them: whoever gets the lock sees everything that was done before.
 *
 * <p>It is one lock and not one for each animal, because one event can touch every animal of a room; with a single lock
 * nobody can wait for each other in a circle.
 */
@Component
public class OrganisationLock {

    private final JdbcClient jdbc;

    OrganisationLock(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Waits for it, and holds it to the end of the transaction. To be called before anything is read to decide by. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void hold(UUID organisationId) {
        jdbc.sql("SELECT pg_advisory_xact_lock(hashtextextended(?, 0))")
                .param("animals of " + organisationId)
                .query((row, number) -> number)
                .list();
    }
}
