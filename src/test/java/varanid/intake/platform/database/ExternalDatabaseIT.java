package varanid.intake.platform.database;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import org.assertj.core.api.ThrowableAssertAlternative;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import varanid.intake.platform.start.CannotStart;

/** What a person is told when the database that they named cannot be used. */
class ExternalDatabaseIT {

    private final TestDatabase database = TestDatabase.create();
    private final DatabaseAccess access = database.access();

    @Test
    void isUsedWhereBothRolesGetIn() {
        assertThatCode(() -> ExternalDatabase.check(access)).doesNotThrowAnyException();
    }

    @Test
    void tellsAWrongPassword() {
        refused(new DatabaseAccess(access.url(), access.owner(), new Login("varanid_service", "wrong")))
                .withMessageContaining("refuses the login of varanid_service");
        refused(new DatabaseAccess(access.url(), new Login("nobody_known", "x"), access.service()))
                .withMessageContaining("refuses the login of nobody_known");
    }

    @Test
    void tellsAMissingDatabase() {
        refused(new DatabaseAccess(access.url() + "_absent", access.owner(), access.service()))
                .withMessageContaining("has no such database");
    }

    @Test
    void tellsAServerThatDoesNotAnswer() throws IOException {
        try (ServerSocket closed = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            int port = closed.getLocalPort();
            closed.close();
            refused(new DatabaseAccess(RolesAndDatabase.url(port, "intake"), access.owner(), access.service()))
                    .withMessageContaining("127.0.0.1:%d/intake cannot be reached", port);
        }
    }

    @Test
    void tellsAnUnknownHost() {
        refused(new DatabaseAccess("jdbc:postgresql://host.invalid/intake", access.owner(), access.service()))
                .withMessageContaining("cannot be reached");
    }

    @Test
    void refusesTablesOfANewerProgramAndLeavesThemAlone() throws SQLException {
        Migration.run(flyway());
        try (Connection owner = database.connectAsOwner();
                Statement statement = owner.createStatement()) {
            statement.execute(
                    "INSERT INTO flyway_schema_history SELECT 1 + max(installed_rank), '9001', 'of the future',"
                            + " 'SQL', 'V9001__of_the_future.sql', 1, 'owner', now(), 1, true FROM flyway_schema_history");
        }
        assertThatExceptionOfType(CannotStart.class)
                .isThrownBy(() -> Migration.run(flyway()))
                .withMessageStartingWith("The database was used by a newer version of Varanid Intake: its tables have"
                        + " version 9001, this program knows versions up to ");
    }

    @Test
    void refusesAMigrationThatWasEditedAfterwards() throws SQLException {
        Migration.run(flyway());
        try (Connection owner = database.connectAsOwner();
                Statement statement = owner.createStatement()) {
            statement.execute("UPDATE flyway_schema_history SET checksum = 1 WHERE version = '1'");
        }
        assertThatExceptionOfType(CannotStart.class)
                .isThrownBy(() -> Migration.run(flyway()))
                .withMessageContaining("Migration checksum mismatch for migration version 1");
    }

    private Flyway flyway() {
        return Flyway.configure()
                .dataSource(access.url(), access.owner().role(), access.owner().password())
                .locations("classpath:migrations")
                .placeholders(Map.of("service_role", access.service().role()))
                .load();
    }

    private static ThrowableAssertAlternative<CannotStart> refused(DatabaseAccess access) {
        return assertThatExceptionOfType(CannotStart.class).isThrownBy(() -> ExternalDatabase.check(access));
    }
}
