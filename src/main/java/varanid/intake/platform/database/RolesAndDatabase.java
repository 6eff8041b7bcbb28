package varanid.intake.platform.database;

import java.io.IOException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.postgresql.PGConnection;
import varanid.intake.platform.start.CannotStart;

/** Gives the embedded server its two roles and its database. Does what is missing, so it may be cut off anywhere. */
final class RolesAndDatabase {

    static final String DATABASE = "varanid_intake";

    private RolesAndDatabase() {}

    static void ensure(int port, Passwords passwords) throws IOException {
        try (Connection connection = connect(port, "postgres", passwords.superuser())) {
            ensureRole(connection, passwords.owner());
            ensureRole(connection, passwords.service());
            createDatabase(connection, DATABASE, passwords);
        } catch (SQLException e) {
            if ("28P01".equals(e.getSQLState())) {
                throw new CannotStart(
                        "The file %s does not fit the database in its folder: its password is refused."
                                .formatted(Passwords.FILE),
                        "Put both back from the same backup. Nothing was changed.",
                        e);
            }
            throw new IOException("the embedded database refused its preparation: " + e.getMessage(), e);
        }
    }

    static String url(int port, String database) {
        return "jdbc:postgresql://127.0.0.1:%d/%s".formatted(port, database);
    }

    static Connection connect(int port, String database, Login login) throws SQLException {
        return DriverManager.getConnection(url(port, database), login.role(), login.password());
    }

    /** Makes a database of the owner that nobody else but the service role may enter, where there is none. */
    static void createDatabase(Connection superuser, String database, Passwords passwords) throws SQLException {
        try (Statement statement = superuser.createStatement()) {
            if (!exists(superuser, "SELECT 1 FROM pg_database WHERE datname = ?", database)) {
                statement.execute("CREATE DATABASE %s OWNER %s"
                        .formatted(database, passwords.owner().role()));
            }
            statement.execute("REVOKE ALL ON DATABASE %s FROM PUBLIC".formatted(database));
            statement.execute("GRANT CONNECT ON DATABASE %s TO %s"
                    .formatted(database, passwords.service().role()));
        }
    }

    private static void ensureRole(Connection superuser, Login login) throws SQLException {
        if (!exists(superuser, "SELECT 1 FROM pg_roles WHERE rolname = ?", login.role())) {
            try (Statement statement = superuser.createStatement()) {
                statement.execute("CREATE ROLE " + login.role() + " LOGIN");
            }
        }
        // The driver hashes the password before it is sent, so that the server never sees or logs it.
        superuser
                .unwrap(PGConnection.class)
                .alterUserPassword(login.role(), login.password().toCharArray(), "scram-sha-256");
    }

    private static boolean exists(Connection connection, String query, String name) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(query)) {
            statement.setString(1, name);
            try (ResultSet result = statement.executeQuery()) {
                return result.next();
            }
        }
    }
}
