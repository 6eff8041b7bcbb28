package varanid.intake.demo;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.stereotype.Component;
import varanid.intake.platform.start.CannotStart;

/**
 * Removes the demo's organisation: every row, in every table, that names it.
 *
 * <p>The service itself can remove no append-only row. This works as the role that owns the tables and, within one
 * transaction, switches off the triggers that guard them. Nobody else ever sees them off: the tables are locked against
 * writing before that and until the transaction ends, and where it fails everything is as it was.
 */
@Component
class DemoRemover {

    private static final String TABLES = """
            SELECT c.oid::bigint, quote_ident(c.relname),
                   EXISTS (SELECT FROM pg_trigger t WHERE t.tgrelid = c.oid AND t.tgname = 'append_only')
            FROM pg_class c
            JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'organisation_id' AND NOT a.attisdropped
            WHERE c.relnamespace = current_schema()::regnamespace AND c.relkind = 'r'
            ORDER BY c.relname""";

    private static final String REFERENCES = """
            SELECT conrelid::bigint, confrelid::bigint FROM pg_constraint
            WHERE contype = 'f' AND conrelid <> confrelid""";

    private final FlywayConnectionDetails owner;

    DemoRemover(FlywayConnectionDetails owner) {
        this.owner = owner;
    }

    /** How many rows were removed; nothing where there was no demo. */
    Optional<Integer> remove() {
        try (Connection connection =
                DriverManager.getConnection(owner.getJdbcUrl(), owner.getUsername(), owner.getPassword())) {
            connection.setAutoCommit(false);
            run(connection, "SELECT pg_advisory_xact_lock(" + Demo.LOCK + ")");
            Optional<UUID> demo = findDemo(connection);
            if (demo.isEmpty()) {
                return Optional.empty();
            }
            // Another process on the same database may be in the middle of something: then better not at all.
            run(connection, "SET LOCAL lock_timeout = '10s'");
            int removed = remove(connection, demo.get());
            connection.commit();
            return Optional.of(removed);
        } catch (SQLException e) {
            throw new CannotStart(
                    "The demo could not be removed: " + e.getMessage(),
                    "Nothing was changed. Stop other processes of the service that use the database and try again.",
                    e);
        }
    }

    private static int remove(Connection connection, UUID organisation) throws SQLException {
        List<Table> tables = childrenFirst(listTables(connection), listReferences(connection));
        for (Table table : tables) {
            if (table.appendOnly()) {
                run(connection, "ALTER TABLE " + table.name() + " DISABLE TRIGGER append_only");
            }
        }
        int removed = 0;
        for (Table table : tables) {
            try (PreparedStatement delete =
                    connection.prepareStatement("DELETE FROM " + table.name() + " WHERE organisation_id = ?")) {
                delete.setObject(1, organisation);
                removed += delete.executeUpdate();
            }
        }
        for (Table table : tables) {
            if (table.appendOnly()) {
                run(connection, "ALTER TABLE " + table.name() + " ENABLE TRIGGER append_only");
            }
        }
        return removed;
    }

    private static Optional<UUID> findDemo(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT organisation_id FROM demo_organisation")) {
            return row.next() ? Optional.of(row.getObject(1, UUID.class)) : Optional.empty();
        }
    }

    private static List<Table> listTables(Connection connection) throws SQLException {
        List<Table> tables = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(TABLES)) {
            while (row.next()) {
                tables.add(new Table(row.getLong(1), row.getString(2), row.getBoolean(3)));
            }
        }
        return tables;
    }

    private static Set<Reference> listReferences(Connection connection) throws SQLException {
        Set<Reference> references = new HashSet<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(REFERENCES)) {
            while (row.next()) {
                references.add(new Reference(row.getLong(1), row.getLong(2)));
            }
        }
        return references;
    }

    /** A table after all those that refer to it. */
    private static List<Table> childrenFirst(List<Table> tables, Set<Reference> references) {
        List<Table> left = new ArrayList<>(tables);
        List<Table> ordered = new ArrayList<>();
        while (!left.isEmpty()) {
            Table next = left.stream()
                    .filter(table -> left.stream()
                            .noneMatch(other -> references.contains(new Reference(other.id(), table.id()))))
                    .findFirst()
                    .orElseThrow(() -> new IllegalStateException("tables refer to each other in a circle: " + left));
            left.remove(next);
            ordered.add(next);
        }
        return ordered;
    }

    private static void run(Connection connection, String command) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(command);
        }
    }

    private record Table(long id, String name, boolean appendOnly) {}

    private record Reference(long from, long to) {}
}
