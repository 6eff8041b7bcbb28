package varanid.intake.platform.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.stream.Stream;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The real migrations, with a trial table of each kind added to them. */
class AppendOnlyIT {

    private static final TestDatabase TWO_ROLES = TestDatabase.create();
    private static final TestDatabase ONE_ROLE = TestDatabase.create();

    @BeforeAll
    static void migrate(@TempDir Path folder) throws IOException {
        try (Stream<Path> files = Files.list(Path.of("migrations"))) {
            for (Path file : (Iterable<Path>) files::iterator) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
        Files.writeString(
                folder.resolve("V9000__trial.sql"),
                "CREATE TABLE trial_append (n int UNIQUE); CREATE TABLE trial_edit (n int); CREATE TABLE trial_none (n int);");
        Path rights = folder.resolve("afterMigrate.sql");
        Files.writeString(
                rights,
                withLine(withLine(Files.readString(rights), "append_only", "trial_append"), "editable", "trial_edit"));
        migrate(folder, TWO_ROLES.access(), TWO_ROLES.access().service());
        migrate(folder, ONE_ROLE.access(), ONE_ROLE.access().owner());
    }

    /** Adds a table to a list: the one line that a new table takes. */
    private static String withLine(String sql, String list, String table) {
        String start = list + " CONSTANT text[] := ARRAY[";
        int from = sql.indexOf(start) + start.length();
        int to = sql.indexOf(']', from);
        assertThat(sql).contains(start);
        String comma = sql.substring(from, to).contains("'") ? ", " : "";
        return sql.substring(0, to) + comma + "'" + table + "'" + sql.substring(to);
    }

    private static void migrate(Path folder, DatabaseAccess access, Login service) {
        Migration.run(Flyway.configure()
                .dataSource(access.url(), access.owner().role(), access.owner().password())
                .locations("filesystem:" + folder)
                .placeholders(Map.of("service_role", service.role()))
                .load());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "UPDATE trial_append SET n = n",
                "DELETE FROM trial_append",
                "TRUNCATE trial_append",
                "INSERT INTO trial_append VALUES (1) ON CONFLICT (n) DO UPDATE SET n = 2",
                "ALTER TABLE trial_append DISABLE TRIGGER ALL",
                "DROP TABLE trial_append"
            })
    void theServiceHasNoRightToChangeAppendOnlyRows(String change) throws SQLException {
        try (Connection service = TWO_ROLES.connectAsService()) {
            run(service, "INSERT INTO trial_append VALUES (DEFAULT)");
            // 42501: insufficient privilege
            assertThatExceptionOfType(SQLException.class)
                    .isThrownBy(() -> run(service, change))
                    .satisfies(refused -> assertThat(refused.getSQLState()).isEqualTo("42501"))
                    .withMessageNotContaining("append-only");
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "UPDATE trial_append SET n = n",
                "UPDATE trial_append SET n = n WHERE false",
                "DELETE FROM trial_append",
                "TRUNCATE trial_append",
                "INSERT INTO trial_append VALUES (1) ON CONFLICT (n) DO UPDATE SET n = 2"
            })
    void theTriggerGuardsWhereTheServiceOwnsTheTables(String change) throws SQLException {
        try (Connection owner = ONE_ROLE.connectAsOwner()) {
            run(owner, "INSERT INTO trial_append VALUES (DEFAULT)");
            assertThatExceptionOfType(SQLException.class)
                    .isThrownBy(() -> run(owner, change))
                    .satisfies(refused -> assertThat(refused.getSQLState()).isEqualTo("42501"))
                    .withMessageContaining("table \"trial_append\" is append-only");
        }
    }

    @Test
    void theServiceMayChangeTheRowsOfOtherTablesButNotTheTables() throws SQLException {
        try (Connection service = TWO_ROLES.connectAsService()) {
            run(service, "INSERT INTO trial_edit VALUES (1)");
            run(service, "UPDATE trial_edit SET n = 2");
            run(service, "DELETE FROM trial_edit");
            assertThatExceptionOfType(SQLException.class).isThrownBy(() -> run(service, "DROP TABLE trial_edit"));
        }
    }

    @Test
    void aTableInNeitherListIsClosedToTheService() throws SQLException {
        try (Connection service = TWO_ROLES.connectAsService()) {
            assertThatExceptionOfType(SQLException.class)
                    .isThrownBy(() -> run(service, "SELECT * FROM trial_none"))
                    .satisfies(refused -> assertThat(refused.getSQLState()).isEqualTo("42501"));
        }
    }

    private static void run(Connection connection, String command) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(command);
        }
    }
}
