package varanid.intake.report;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.platform.web.Caller;

/** The people of reports: kept beside them, and removed when somebody asks for it. */
@Component
class ReportPeople {

    private final JdbcClient jdbc;
    private final JsonMapper json;

    ReportPeople(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    /** @param removed when and by whom they were removed, if they were */
    record Found(Told.People people, @Nullable Removed removed) {

        /** A report in which nobody is named. */
        static final Found NOBODY = new Found(Told.People.NOBODY, null);
    }

    record Removed(Instant at, UUID by) {}

    void keep(UUID organisationId, UUID reportId, Told.People people) {
        jdbc.sql("INSERT INTO report_people (organisation_id, report_id, said) VALUES (?, ?, ?::jsonb)")
                .params(organisationId, reportId, json.writeValueAsString(people))
                .update();
    }

    /** By report; a report without an entry never named anybody. */
    Map<UUID, Found> list(UUID organisationId, List<UUID> reportIds) {
        Map<UUID, Found> found = new HashMap<>();
        if (reportIds.isEmpty()) {
            return found;
        }
        jdbc.sql("""
                        SELECT report_id, said, removed_at, removed_by FROM report_people
                        WHERE organisation_id = :organisation AND report_id IN (:reports)""")
                .param("organisation", organisationId)
                .param("reports", reportIds)
                .query((row, number) -> Map.entry(row.getObject(1, UUID.class), found(row)))
                .list()
                .forEach(each -> found.put(each.getKey(), each.getValue()));
        return found;
    }

    private Found found(ResultSet row) throws SQLException {
        @Nullable String said = row.getString(2);
        if (said != null) {
            return new Found(json.readValue(said, Told.People.class), null);
        }
        return new Found(
                Told.People.NOBODY,
                new Removed(row.getObject(3, OffsetDateTime.class).toInstant(), row.getObject(4, UUID.class)));
    }

    /** For good; what was removed before stays as it was. */
    void remove(Caller caller, UUID reportId, Instant now) {
        jdbc.sql("""
                        UPDATE report_people SET said = NULL, removed_at = ?, removed_by = ?
                        WHERE organisation_id = ? AND report_id = ? AND said IS NOT NULL""")
                .params(
                        OffsetDateTime.ofInstant(now, ZoneOffset.UTC),
                        caller.personId(),
                        caller.organisationId(),
                        reportId)
                .update();
    }
}
