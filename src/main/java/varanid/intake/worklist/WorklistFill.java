package varanid.intake.worklist;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.http.HttpHeaders;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import varanid.intake.platform.database.OrganisationLock;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;

/**
 * Makes the entries of animals that were there before entries were kept, or kept in this {@link Entry#FORM form}: in the
 * background after a start, in small transactions, in the order of ids. How far it came is stored with each of them, so
 * that the next start goes on from there; an organisation that is complete is never looked through again.
 *
 * <p>A list with somebody missing would be worse than none: until an organisation is complete its lists are refused.
 */
@Component
class WorklistFill implements DisposableBean {

    /** How many animals in one transaction: others of the organisation who write wait as long. */
    static final int BATCH = 50;

    static final ProblemType NOT_READY =
            new ProblemType("worklist-not-ready", 503, "The work list is still being made");

    private static final Logger LOG = LoggerFactory.getLogger(WorklistFill.class);

    private static final UUID BEFORE_ALL = new UUID(0, 0);

    private final WorklistKeeper keeper;
    private final OrganisationLock lock;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final Set<UUID> complete = ConcurrentHashMap.newKeySet();
    private volatile boolean stopping;

    WorklistFill(
            WorklistKeeper keeper, OrganisationLock lock, JdbcClient jdbc, PlatformTransactionManager transactions) {
        this.keeper = keeper;
        this.lock = lock;
        this.jdbc = jdbc;
        this.transaction = new TransactionTemplate(transactions);
    }

    @EventListener(ApplicationReadyEvent.class)
    void start() {
        if (keeper.canKeep()) {
            Thread thread = new Thread(this::fillAll, "worklist-fill");
            thread.setDaemon(true);
            thread.start();
        }
    }

    @Override
    public void destroy() {
        stopping = true;
    }

    /**
     * Sees to it that every animal of the organisation has its entry; does one batch of what is missing itself.
     *
     * @throws ProblemException 503 where more is missing
     */
    void require(UUID organisationId) {
        if (keeper.canKeep() && !fill(organisationId)) {
            throw new ProblemException(
                    NOT_READY,
                    "Entries are being made for animals that were recorded before there was a work list. Ask again.",
                    List.of(),
                    Map.of(HttpHeaders.RETRY_AFTER, "1"));
        }
    }

    private void fillAll() {
        try {
            for (UUID organisationId : incomplete()) {
                while (!stopping && !fill(organisationId)) {
                    LOG.debug("Another batch of entries was made for {}.", organisationId);
                }
            }
        } catch (RuntimeException e) {
            if (!stopping) {
                LOG.error(
                        "Work lists could not be completed; the next request for one, or the next start, goes on.", e);
            }
        }
    }

    private List<UUID> incomplete() {
        return jdbc.sql("""
                        SELECT organisation_id FROM organisation o WHERE NOT EXISTS (
                            SELECT FROM worklist_fill f
                            WHERE f.organisation_id = o.organisation_id AND f.form >= ? AND f.complete)
                        ORDER BY organisation_id""").param(Entry.FORM).query(UUID.class).list();
    }

    /** Makes at most a batch of the entries that are missing. @return whether none is missing any more */
    boolean fill(UUID organisationId) {
        if (complete.contains(organisationId)) {
            return true;
        }
        boolean now = Boolean.TRUE.equals(transaction.execute(status -> batch(organisationId)));
        if (now) {
            complete.add(organisationId);
        }
        return now;
    }

    private boolean batch(UUID organisationId) {
        // Or an animal could be registered, changed or leave between being read and being written.
        lock.hold(organisationId);
        Progress progress = progress(organisationId);
        if (progress.complete()) {
            return true;
        }
        List<UUID> missing = jdbc.sql("""
                        SELECT id FROM animal a WHERE organisation_id = :organisationId AND id > :after
                        AND NOT EXISTS (
                            SELECT FROM worklist_entry e WHERE e.organisation_id = a.organisation_id
                            AND e.animal_id = a.id AND e.form >= :form)
                        ORDER BY id LIMIT :batch""")
                .param("organisationId", organisationId)
                .param("after", progress.upTo())
                .param("form", Entry.FORM)
                .param("batch", BATCH)
                .query(UUID.class)
                .list();
        missing.forEach(animalId -> keeper.keep(organisationId, animalId));
        boolean last = missing.size() < BATCH;
        jdbc.sql("""
                        INSERT INTO worklist_fill (organisation_id, form, filled_up_to, complete)
                        VALUES (:organisationId, :form, :upTo, :complete)
                        ON CONFLICT (organisation_id) DO UPDATE SET
                            form = excluded.form, filled_up_to = excluded.filled_up_to, complete = excluded.complete""")
                .param("organisationId", organisationId)
                .param("form", Entry.FORM)
                .param("upTo", last ? progress.upTo() : missing.get(missing.size() - 1))
                .param("complete", last)
                .update();
        return last;
    }

    private Progress progress(UUID organisationId) {
        return jdbc.sql("SELECT filled_up_to, complete FROM worklist_fill WHERE organisation_id = ? AND form >= ?")
                .param(organisationId)
                .param(Entry.FORM)
                .query((row, number) ->
                        new Progress(row.getObject("filled_up_to", UUID.class), row.getBoolean("complete")))
                .optional()
                .orElse(new Progress(BEFORE_ALL, false));
    }

    private record Progress(UUID upTo, boolean complete) {}
}
