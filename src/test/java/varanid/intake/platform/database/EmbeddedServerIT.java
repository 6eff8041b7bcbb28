package varanid.intake.platform.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import varanid.intake.platform.start.CannotStart;
import varanid.intake.platform.start.HomeFolder;

/** The embedded server as the service runs it. */
@TestInstance(Lifecycle.PER_CLASS)
class EmbeddedServerIT {

    private final HomeFolder home;
    private final EmbeddedServer.Running server;

    EmbeddedServerIT(@TempDir Path folder) {
        home = HomeFolder.open(folder);
        server = EmbeddedServer.start(home, new ServerSettings(TestDatabase.PROGRAMS, 0, true));
    }

    @AfterAll
    void stop() {
        server.close();
    }

    @ParameterizedTest
    @CsvSource({
        "fsync, on",
        "synchronous_commit, on",
        "full_page_writes, on",
        "data_checksums, on",
        "listen_addresses, 127.0.0.1",
        "unix_socket_directories, ''",
        "password_encryption, scram-sha-256",
        "server_encoding, UTF8",
        "log_timezone, UTC"
    })
    void keepsEveryCommitAndListensOnThisMachineOnly(String setting, String value) throws SQLException {
        assertThat(ask("SHOW " + setting)).isEqualTo(value);
    }

    @Test
    void asksEveryRoleForItsPasswordOnEveryWayIn() throws SQLException {
        assertThat(ask("SELECT string_agg(DISTINCT auth_method, ' ') FROM pg_hba_file_rules"))
                .isEqualTo("scram-sha-256");
        assertThat(ask("SELECT bool_and(rolpassword LIKE 'SCRAM-SHA-256$%') FROM pg_authid WHERE rolcanlogin"))
                .isEqualTo("t");
    }

    @Test
    void letsNobodyInWithoutThePassword() {
        Passwords passwords = server.passwords();
        for (Login login : new Login[] {passwords.superuser(), passwords.owner(), passwords.service()}) {
            assertThatExceptionOfType(SQLException.class)
                    .isThrownBy(() -> connect(new Login(login.role(), "wrong")))
                    .satisfies(refused -> assertThat(refused.getSQLState()).isEqualTo("28P01"));
            // 08004: the driver itself stops where the server asks for a password and there is none.
            assertThatExceptionOfType(SQLException.class)
                    .isThrownBy(() -> connect(new Login(login.role(), "")))
                    .satisfies(refused -> assertThat(refused.getSQLState()).isIn("08004", "28P01"));
        }
    }

    @Test
    void givesTheOwnerAndTheServiceNoPowerOverTheServer() throws SQLException {
        assertThat(ask("SELECT string_agg(rolname, ' ') FROM pg_roles WHERE rolcanlogin"
                        + " AND (rolsuper OR rolcreaterole OR rolcreatedb OR rolreplication OR rolbypassrls)"))
                .isEqualTo("postgres");
    }

    @Test
    void refusesASecondStartOnTheSameFolder() {
        assertThatExceptionOfType(CannotStart.class)
                .isThrownBy(() -> EmbeddedServer.start(home, new ServerSettings(TestDatabase.PROGRAMS, 0, true)))
                .withMessage(
                        "Varanid Intake is already running on the folder %s (process %d).",
                        home, ProcessHandle.current().pid());
    }

    private Connection connect(Login login) throws SQLException {
        return RolesAndDatabase.connect(server.port(), RolesAndDatabase.DATABASE, login);
    }

    private String ask(String query) throws SQLException {
        try (Connection connection = connect(server.passwords().superuser());
                Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(query)) {
            assertThat(result.next()).isTrue();
            return result.getString(1);
        }
    }
}
