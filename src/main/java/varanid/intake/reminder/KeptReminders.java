package varanid.intake.reminder;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** What calendars were told so far. */
@Component
@Transactional(propagation = Propagation.MANDATORY)
class KeptReminders {

    private static final String FIND = """
            SELECT animal_id, case_id, kind, ordinal, due_on, latest_on, summary, description, priority,
                   state, sequence, changed_at
            FROM calendar_reminder
            WHERE organisation_id = ? AND (uid = ANY (?) OR (%s AND (state = 'planned' OR changed_at >= ?)))""";

    private static final String SAVE = """
            INSERT INTO calendar_reminder (organisation_id, uid, animal_id, case_id, kind, ordinal, due_on, latest_on,
                summary, description, priority, state, sequence, changed_at)
            VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
            ON CONFLICT (organisation_id, uid) DO UPDATE SET
                animal_id = EXCLUDED.animal_id, due_on = EXCLUDED.due_on, latest_on = EXCLUDED.latest_on,
                summary = EXCLUDED.summary, description = EXCLUDED.description, priority = EXCLUDED.priority,
                state = EXCLUDED.state, sequence = EXCLUDED.sequence, changed_at = EXCLUDED.changed_at""";

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;

    KeptReminders(JdbcClient jdbc, JdbcTemplate batches) {
        this.jdbc = jdbc;
        this.batches = batches;
    }

    private record Kept(UUID animalId, Reminder reminder) {}

    /**
     * Brings what is kept in line with what is planned, and writes only what changed. To be called under the
     * organisation's lock.
     *
     * @param animalId whose tasks were told; empty: those of all animals. Reminders of others are left alone
     * @param told all their tasks
     * @param shownSince reminders that are told no more and were not changed since then are left out
     * @return what a feed is to show
     */
    List<Reminder> revise(
            UUID organisationId, Optional<UUID> animalId, List<PlannedTask> told, Instant now, Instant shownSince) {
        List<Kept> before = find(organisationId, animalId, told, shownSince);
        Map<String, UUID> animals = new HashMap<>();
        Map<String, Reminder> known = new HashMap<>();
        for (Kept kept : before) {
            animals.put(kept.reminder().task().uid(), kept.animalId());
            known.put(kept.reminder().task().uid(), kept.reminder());
        }
        for (PlannedTask planned : told) {
            animals.put(planned.task().uid(), planned.animalId());
        }
        List<Reminder> after =
                Reminder.revise(before.stream().map(Kept::reminder).toList(), told, now);
        List<Object[]> changed = after.stream()
                .filter(reminder -> !reminder.equals(known.get(reminder.task().uid())))
                .map(reminder -> columns(
                        organisationId,
                        Objects.requireNonNull(animals.get(reminder.task().uid())),
                        reminder))
                .toList();
        if (!changed.isEmpty()) {
            batches.batchUpdate(SAVE, changed);
        }
        return after;
    }

    private List<Kept> find(UUID organisationId, Optional<UUID> animalId, List<PlannedTask> told, Instant shownSince) {
        String[] uids = told.stream().map(planned -> planned.task().uid()).toArray(String[]::new);
        JdbcClient.StatementSpec statement = jdbc.sql(FIND.formatted(animalId.isPresent() ? "animal_id = ?" : "true"))
                .param(organisationId)
                .param(uids);
        animalId.ifPresent(statement::param);
        return statement
                .param(shownSince.atOffset(ZoneOffset.UTC))
                .query((row, number) -> read(row))
                .list();
    }

    private static Kept read(ResultSet row) throws SQLException {
        CalendarTask task = new CalendarTask(
                row.getObject("case_id", UUID.class),
                row.getString("kind"),
                row.getInt("ordinal"),
                row.getObject("due_on", LocalDate.class),
                row.getObject("latest_on", LocalDate.class),
                row.getString("summary"),
                row.getString("description"),
                row.getInt("priority"));
        return new Kept(
                row.getObject("animal_id", UUID.class),
                new Reminder(
                        task,
                        Reminder.State.valueOf(row.getString("state").toUpperCase(Locale.ROOT)),
                        row.getInt("sequence"),
                        row.getObject("changed_at", OffsetDateTime.class).toInstant()));
    }

    private static Object[] columns(UUID organisationId, UUID animalId, Reminder reminder) {
        CalendarTask task = reminder.task();
        return new Object[] {
            organisationId,
            task.uid(),
            animalId,
            task.caseId(),
            task.kind(),
            task.ordinal(),
            task.due(),
            task.latest(),
            task.summary(),
            task.description(),
            task.priority(),
            reminder.state().name().toLowerCase(Locale.ROOT),
            reminder.sequence(),
            reminder.changedAt().atOffset(ZoneOffset.UTC)
        };
    }
}
